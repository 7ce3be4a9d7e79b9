package trayward.host.link;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import trayward.controller.app.ControllerRuntime;
import trayward.controller.app.Settings;
import trayward.controller.app.StationServer;
import trayward.controller.modbus.TcpClient;

/** The link over registers says what the link within one process says, of the same controller. */
@Timeout(value = 60, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class RegisterLinkTest {

  /** 2026-11-25T12:00:00Z. */
  private static final long NOON_S = (20_782L * 24 + 12) * 3600;

  @TempDir private Path folder;
  private ControllerRuntime controller;
  private StationServer station;
  private RegisterLink link;
  private InProcessLink within;

  @BeforeEach
  void start() throws Exception {
    int port;
    try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      port = free.getLocalPort();
    }
    Path file =
        Files.writeString(
            folder.resolve("tray.toml"),
            """
            [link]
            tcp_port = %d
            [log]
            folder = "%s/data"
            [second_bath_probe]
            present = true
            """
                .formatted(port, folder));
    Settings settings = Settings.read(file);
    controller = new ControllerRuntime(settings, System::nanoTime, () -> NOON_S, e -> {});
    station = new StationServer(controller, settings);
    controller.start();
    station.start();
    within = new InProcessLink(controller, System::nanoTime, true, true);
    link = new RegisterLink(new TcpClient(port, StationServer.UNIT, 5000), System::nanoTime);
    link.start();
  }

  @AfterEach
  void close() {
    link.close();
    station.close();
    controller.close();
  }

  private TrayStatus await(Predicate<TrayStatus> wanted) {
    while (true) { // the test's own time-out bounds it
      Optional<TrayStatus> now = link.latest().filter(wanted);
      if (now.isPresent()) {
        return now.get();
      }
      Thread.onSpinWait();
    }
  }

  @Test
  void theStatusIsThatOfTheController() {
    TrayStatus far = await(s -> true);
    TrayStatus near = within.latest().orElseThrow();
    assertTrue(Math.abs(far.uptimeS() - near.uptimeS()) < 30);
    assertEquals(near.state(), far.state());
    assertEquals(near.bathC(), far.bathC(), 0.5);
    assertEquals(near.secondBathC(), far.secondBathC(), 0.5);
    assertEquals(near.plateC(), far.plateC(), 0.5);
    assertEquals(near.bathClass(), far.bathClass());
    assertEquals(near.setC(), far.setC());
    assertEquals(near.alarms(), far.alarms());
    assertEquals(near.withheld(), far.withheld());
    assertEquals(near.withheldWords(), far.withheldWords());
    assertEquals(near.level().level(), far.level().level());
    assertEquals(near.level().litres(), far.level().litres(), 0.001);
    assertEquals(near.uncertainty(), far.uncertainty());
    assertEquals(near.tray().highestHoldC(), far.tray().highestHoldC(), 0.01);
    assertEquals(near.storeWritable(), far.storeWritable());
    assertEquals(-1, far.remainingS());
    assertTrue(link.simulated());
  }

  @Test
  void commandsAreCarriedAnsweredAndSeenInTheStatusAfterThem() {
    await(s -> true);
    assertInstanceOf(LinkAnswer.Done.class, link.setTemperature(37.5));
    assertEquals(37.5, link.latest().orElseThrow().setC());
    assertInstanceOf(LinkAnswer.Done.class, link.start(false));
    assertEquals("PROVING", link.latest().orElseThrow().state());
    assertInstanceOf(LinkAnswer.Done.class, link.send(Command.PRESENCE));
    assertInstanceOf(LinkAnswer.Done.class, link.send(Command.STOP));
    await(s -> s.state().equals("OFF"));
    assertInstanceOf(LinkAnswer.Done.class, link.topUp(0.25));
    assertEquals(1.25, await(s -> s.level().litres() > 1.1).level().litres(), 0.01);
    assertInstanceOf(LinkAnswer.Done.class, link.confirmLevel(OptionalDouble.of(1.0)));
    assertInstanceOf(LinkAnswer.Done.class, link.confirmLevel(OptionalDouble.empty()));
  }

  @Test
  void aCallIsCarriedWithoutAnAnswerAndSilenceIsAnswered() {
    await(s -> true);
    for (Call call : Call.values()) {
      link.call(call);
      within.call(call);
    }
    assertEquals(within.silence("AIR_LOST"), link.silence("AIR_LOST"));
    assertEquals(new LinkAnswer.Refused("it does not sound"), link.silence("AIR_LOST"));
    assertEquals(within.silence("MOON"), link.silence("MOON"));
  }

  @Test
  void aRefusalComesWithItsReasonWordForWord() {
    await(s -> true);
    assertEquals(within.send(Command.RESET), link.send(Command.RESET));
    assertInstanceOf(LinkAnswer.Refused.class, link.send(Command.RESET));
    assertEquals(within.setTemperature(60), link.setTemperature(60));
    assertInstanceOf(LinkAnswer.Refused.class, link.setTemperature(1000));
    assertInstanceOf(LinkAnswer.Refused.class, link.upkeepDone("moon"));
    assertEquals(within.calibrateIce("bath"), refusedStand(link.calibrateIce("bath")));
    assertInstanceOf(LinkAnswer.Refused.class, link.calibrateReference("bath", 37, 0.1));
  }

  /** How long the probe has stood grows from one asking to the next. */
  private LinkAnswer refusedStand(LinkAnswer far) {
    LinkAnswer near = within.calibrateIce("bath");
    String farWords = assertInstanceOf(LinkAnswer.Refused.class, far).reason();
    String nearWords = assertInstanceOf(LinkAnswer.Refused.class, near).reason();
    assertEquals(farWords.replaceAll("\\d+", "n"), nearWords.replaceAll("\\d+", "n"));
    return within.calibrateIce("bath");
  }

  @Test
  void dueDatesProbesAndLearnedTrayComeAcross() {
    await(s -> true);
    while (link.upkeep().items().isEmpty() || link.probes().probes().size() < 3) {
      Thread.onSpinWait();
    }
    assertEquals(within.upkeep(), link.upkeep());
    ProbesView far = link.probes();
    ProbesView near = within.probes();
    assertEquals(near.referenceMinC(), far.referenceMinC());
    assertEquals(near.rests(), far.rests());
    for (int i = 0; i < 3; i++) {
      ProbesView.Probe n = near.probes().get(i);
      ProbesView.Probe f = far.probes().get(i);
      assertEquals(n.role(), f.role());
      assertEquals(n.probe(), f.probe());
      assertEquals(n.readingClass(), f.readingClass());
      assertEquals(n.slope(), f.slope());
      assertEquals(n.uncertaintyK(), f.uncertaintyK(), 0.001);
      assertEquals(n.points(), f.points());
    }
    assertInstanceOf(LinkAnswer.Done.class, link.upkeepDone("breaker-test"));
    assertEquals(
        new TrayLink.TrayCalibrated(true, "the next whole warm-up counts as done with that much"),
        link.calibrateTray(1.0));
  }

  @Test
  void eventsComeOnceAndInOrder() {
    await(s -> true);
    link.start(false);
    link.send(Command.STOP);
    List<String> told = new ArrayList<>();
    while (!told.contains("STATE OFF")) {
      link.takeEvents().forEach(e -> told.add(e.kind() + " " + e.subject()));
      Thread.onSpinWait();
    }
    assertEquals(1, told.stream().filter("POWER_UP"::equals).count() + count(told, "POWER_UP "));
    assertTrue(told.indexOf("DONE START") < told.indexOf("DONE STOP"), told.toString());
    assertEquals(1, count(told, "DONE START"));
    assertEquals(1, count(told, "STATE PROVING"));
  }

  private static long count(List<String> told, String what) {
    return told.stream().filter(t -> t.startsWith(what)).count();
  }

  @Test
  void aControllerThatHasGoneIsNoLongerNowAndACommandSaysSoAtOnce() {
    await(s -> true);
    station.close();
    while (link.latest().isPresent()) {
      Thread.onSpinWait();
    }
    LinkAnswer answer = link.send(Command.STOP);
    String why = assertInstanceOf(LinkAnswer.NotDelivered.class, answer).why();
    assertTrue(why.contains("TCP port"), why);
  }
}
