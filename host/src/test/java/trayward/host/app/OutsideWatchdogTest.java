package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.LongPredicate;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import trayward.host.Verifies;
import trayward.host.Verifies.Side;

/** The real program and a file in place of the kernel's watchdog device (SR-18). */
@Timeout(120)
class OutsideWatchdogTest {

  @TempDir private Path folder;
  private Path device;
  private Path config;

  @BeforeEach
  void aSimulatedTrayWithAWatchdog() throws IOException {
    device = Files.createFile(folder.resolve("watchdog"));
    config =
        Files.writeString(
            folder.resolve("tray.toml"),
            """
            [watchdog]
            device = "%1$s/watchdog"
            [server]
            port = 0
            [log]
            folder = "%1$s/data"
            """
                .formatted(folder));
  }

  private long awaitSize(LongPredicate wanted) throws IOException {
    long size = Files.size(device);
    while (!wanted.test(size)) { // the test's own time-out bounds it
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(5));
      size = Files.size(device);
    }
    return size;
  }

  /** The size after so many seconds: nothing can be waited for where nothing is to come. */
  private long sizeAfter(double seconds) throws IOException {
    long until = System.nanoTime() + (long) (seconds * 1e9);
    while (System.nanoTime() < until) {
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(50));
    }
    return Files.size(device);
  }

  @Test
  @Verifies(value = "SR-18", side = Side.WITHHOLDS)
  @Verifies(value = "SR-18", side = Side.ALLOWS)
  void aFrozenScanThreadFeedsNoDeviceAlthoughTheRestOfTheProgramLives() throws Exception {
    try (RunningTrayward program = RunningTrayward.start(config, RunningTrayward.TAMED);
        Tamed tamed = Tamed.attach(program)) {
      awaitSize(size -> size >= 2);
      tamed.freeze("scan");
      long last = sizeAfter(1.5); // a scan of just before may have been told of in between
      assertEquals(200, program.send("GET", "/", "").statusCode(), "the page lives");
      assertEquals(last, sizeAfter(3), "it was fed without a scan");
      tamed.thaw();
      awaitSize(size -> size > last);
    }
  }

  @Test
  @Verifies(value = "SR-18", side = Side.ALLOWS)
  void anOrderlyEndDisarmsTheDevice() throws Exception {
    try (RunningTrayward program = RunningTrayward.start(config)) {
      awaitSize(size -> size >= 1);
      String said = program.endPolitely();
      assertTrue(said.contains("Heat is off"), said);
      assertTrue(Files.readString(device).matches("\\.+V"), Files.readString(device));
    }
  }

  @Test
  @Verifies(value = "SR-18", side = Side.WITHHOLDS)
  void aKilledProgramLeavesTheDeviceArmed() throws Exception {
    try (RunningTrayward program = RunningTrayward.start(config)) {
      awaitSize(size -> size >= 1);
      program.signal("KILL");
      assertTrue(program.exitCode(10).isPresent());
      assertTrue(Files.readString(device).matches("\\.+"), Files.readString(device));
    }
  }

  @Test
  void aDeviceThatIsNotThereRefusesTheStartInOneSentence() throws Exception {
    Files.delete(device);
    Process program = RunningTrayward.process("run", "--config", config.toString());
    String said = new String(program.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(2, program.waitFor(), said);
    assertTrue(said.contains("watchdog.device: found '" + device + "', accepted is"), said);
    assertTrue(said.contains("there is no such device"), said);
    assertTrue(said.contains("Heat is off"), said);
  }
}
