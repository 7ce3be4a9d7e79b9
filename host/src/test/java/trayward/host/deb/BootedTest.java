package trayward.host.deb;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import trayward.host.Verifies;
import trayward.host.Verifies.Side;

/**
 * The package installed in a booted system, its two services run by systemd: their rights, their
 * watchdog, their end. It needs root, systemd-nspawn, curl, and {@code mvn package} before it.
 */
@Tag("full")
@Timeout(value = 300, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class BootedTest {

  private static final Path PACKAGE = Path.of("target", "trayward.deb").toAbsolutePath();
  private static final String CONTROLLER = "trayward-controller";
  private static final String HOST = "trayward-host";
  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir private static Path memory;
  private static @Nullable BootedSystem booted;

  private static BootedSystem system() {
    assumeTrue(booted != null, "nothing was booted");
    return Objects.requireNonNull(booted);
  }

  @BeforeAll
  static void installInABootedSystem() throws Exception {
    assumeTrue(Files.exists(PACKAGE), "mvn package has not been run");
    assumeTrue(BootedSystem.possible() && TestRoot.has("curl"), "no root, systemd-nspawn or curl");
    booted = BootedSystem.boot(memory, PACKAGE);
    booted.run("dpkg", "--install", "/root/trayward.deb");
    booted.run("systemctl", "enable", CONTROLLER, HOST);
  }

  @AfterAll
  static void powerOff() throws Exception {
    if (booted != null) {
      booted.powerOff();
    }
  }

  @BeforeEach
  void bothRun() throws Exception {
    system().run("systemctl", "reset-failed");
    system().run("systemctl", "restart", CONTROLLER, HOST);
    awaitState("OFF");
  }

  private static JsonNode status() throws Exception {
    return JSON.readTree(system().said("curl", "-s", "http://127.0.0.1:8467/api/status"));
  }

  private static void awaitState(String state) throws Exception {
    while (!status().path("state").asText().equals(state)) { // the test's own time-out bounds it
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(200));
    }
  }

  private static void start() throws Exception {
    String start = "http://127.0.0.1:8467/api/commands/start";
    system().run("curl", "-s", "--fail", "-X", "POST", start);
    awaitState("PROVING");
  }

  private static String pid(String service) throws Exception {
    return system().property(service, "MainPID");
  }

  @Test
  void eachRunsAsItsOwnUserWithoutRightsAndTheControllerBeforeEverythingElse() throws Exception {
    String controller = pid(CONTROLLER);
    for (String service : List.of(CONTROLLER, HOST)) {
      String pid = pid(service);
      assertEquals(service, system().run("ps", "-o", "user:32=", "-p", pid).strip());
      String status = system().run("cat", "/proc/" + pid + "/status");
      assertTrue(status.contains("CapEff:\t0000000000000000"), status);
      assertTrue(status.contains("CapBnd:\t0000000000000000"), status);
      assertTrue(status.contains("NoNewPrivs:\t1"), status);
      assertTrue(status.contains("Seccomp:\t2"), status);
      String said = system().said("nsenter", "-t", pid, "-m", "touch", "/etc/trayward/x");
      assertTrue(said.contains("Read-only file system"), said);
    }
    String scheduled = system().run("chrt", "-p", controller);
    assertTrue(scheduled.contains("SCHED_FIFO") && scheduled.contains(": 20"), scheduled);
  }

  @Test
  @Verifies(value = "SR-18", side = Side.WITHHOLDS)
  @Verifies(value = "SR-13", side = Side.WITHHOLDS)
  void aFrozenControllerIsEndedByItsWatchdogAndComesBackToOff() throws Exception {
    comesBackToOffAfter("-STOP");
    assertTrue(system().run("journalctl", "-u", CONTROLLER).contains("Watchdog timeout"));
  }

  @Test
  @Verifies(value = "SR-13", side = Side.WITHHOLDS)
  void aKilledControllerComesBackToOff() throws Exception {
    comesBackToOffAfter("-KILL");
  }

  private static void comesBackToOffAfter(String signal) throws Exception {
    start();
    String before = pid(CONTROLLER);
    system().run("kill", signal, before);
    String now = before;
    while (now.equals(before) || now.equals("0")) { // the test's own time-out bounds it
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(200));
      now = pid(CONTROLLER);
    }
    awaitState("OFF");
    assertFalse(status().path("heater_on").asBoolean());
  }

  @Test
  @Verifies(value = "SR-18", side = Side.ALLOWS)
  @Verifies(value = "SR-13", side = Side.ALLOWS)
  void aHealthyRunIsLeftAloneByTheWatchdogAndAHostThatIsStoppedStopsNoHeat() throws Exception {
    start();
    String before = pid(CONTROLLER);
    system().run("systemctl", "stop", HOST);
    assertEquals("inactive", system().property(HOST, "ActiveState"));
    system().run("systemctl", "start", HOST);
    // Proving and purge take a minute and more, many times the five seconds of the watchdog.
    awaitState("HEATING");
    assertEquals(before, pid(CONTROLLER));
    assertEquals("0", system().property(CONTROLLER, "NRestarts"));
  }

  @Test
  @Verifies(value = "SR-19", side = Side.WITHHOLDS)
  void aRefusedConfigurationEndsTheServiceWithItsReasonAndIsNotTriedAgain() throws Exception {
    Path config = system().at("/etc/trayward/controller.toml");
    String good = Files.readString(config);
    Files.writeString(config, good.replace("purge_s = 60", "purge_hours = 1"));
    try {
      system().said("systemctl", "restart", CONTROLLER);
      assertEquals("failed", system().property(CONTROLLER, "ActiveState"));
      assertEquals("2", system().property(CONTROLLER, "ExecMainStatus"));
      assertTrue(system().run("journalctl", "-u", CONTROLLER).contains("purge_hours"));
    } finally {
      Files.writeString(config, good);
    }
  }

  @Test
  @Verifies(value = "SR-19", side = Side.ALLOWS)
  void anUpgradeLeavesWhatRunsAndARestartTakesTheNewOneWithItsData() throws Exception {
    String before = pid(CONTROLLER);
    system().run("dpkg", "--install", "/root/trayward.deb");
    assertEquals(before, pid(CONTROLLER), "a hot bath is not let go");
    system().run("systemctl", "restart", CONTROLLER, HOST);
    awaitState("OFF");
    assertNotEquals(before, pid(CONTROLLER));
    for (String service : List.of(HOST, CONTROLLER)) {
      system().run("systemctl", "stop", service);
      assertEquals("inactive", system().property(service, "ActiveState"), "ended in order");
    }
  }
}
