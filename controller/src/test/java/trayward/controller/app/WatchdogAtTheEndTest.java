package trayward.controller.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.port.MonotonicClock;

/**
 * SR-18: the kernel's watchdog is disarmed by an orderly end with heat off, and by nothing else.
 */
@Timeout(60)
class WatchdogAtTheEndTest {

  @TempDir private Path folder;

  private Settings settings(String more) throws Exception {
    String toml = "[log]\nfolder = '" + folder.resolve("data") + "'\n" + more;
    return Settings.read(Files.writeString(folder.resolve("tray.toml"), toml));
  }

  private String device(Path device) {
    return "[watchdog]\ndevice = '" + device + "'\nsystemd = 'off'\n";
  }

  private static void await(BooleanSupplier wanted) {
    while (!wanted.getAsBoolean()) { // the test's own time-out bounds it
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(5));
    }
  }

  private static long size(Path file) {
    try {
      return Files.size(file);
    } catch (IOException e) {
      return -1;
    }
  }

  @Test
  @Verifies(value = "SR-18", side = Side.ALLOWS)
  void anOrderlyEndWithHeatOffDisarmsTheDevice() throws Exception {
    Path device = Files.createFile(folder.resolve("watchdog"));
    try (ControllerRuntime runtime =
        new ControllerRuntime(settings(device(device)), System::nanoTime, () -> 0, e -> {})) {
      runtime.start();
      await(() -> size(device) >= 1);
    }
    assertTrue(Files.readString(device).matches("\\.+V"), Files.readString(device));
  }

  @Test
  void aControllerThatNeverScannedArmsNothing() throws Exception {
    Path device = Files.createFile(folder.resolve("watchdog"));
    new ControllerRuntime(settings(device(device)), System::nanoTime, () -> 0, e -> {}).close();
    assertEquals("", Files.readString(device));
  }

  /** A signal may come while the program begins: what was closed is not started any more. */
  @Test
  @Verifies(value = "SR-18", side = Side.WITHHOLDS)
  void aControllerToldToEndAsItBeginsNeitherScansNorArms() throws Exception {
    Path device = Files.createFile(folder.resolve("watchdog"));
    ControllerRuntime runtime =
        new ControllerRuntime(settings(device(device)), System::nanoTime, () -> 0, e -> {});
    runtime.close();
    runtime.start();
    assertNull(runtime.latest());
    assertEquals("", Files.readString(device));
  }

  @Test
  @Verifies(value = "SR-18", side = Side.WITHHOLDS)
  void aFailedScanDoesNotDisarmTheDevice() throws Exception {
    Path device = Files.createFile(folder.resolve("watchdog"));
    CountDownLatch failed = new CountDownLatch(1);
    AtomicInteger scans = new AtomicInteger();
    MonotonicClock breaking =
        () -> {
          if (Thread.currentThread().getName().equals("scan") && scans.incrementAndGet() > 40) {
            throw new IllegalStateException("the clock is gone");
          }
          return System.nanoTime();
        };
    try (ControllerRuntime runtime =
        new ControllerRuntime(
            settings(device(device)), breaking, () -> 0, e -> failed.countDown())) {
      runtime.start();
      failed.await();
    }
    assertTrue(Files.readString(device).matches("\\.*"), Files.readString(device));
  }
}
