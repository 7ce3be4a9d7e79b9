package trayward.controller.watchdog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;

/** What the kernel's watchdog is written: a file stands in for the device. */
class WatchdogDeviceTest {

  @TempDir private Path folder;

  private WatchdogDevice open() throws IOException {
    return WatchdogDevice.open(Files.createFile(folder.resolve("watchdog")));
  }

  private String written() throws IOException {
    return Files.readString(folder.resolve("watchdog"));
  }

  @Test
  @Verifies(value = "SR-18", side = Side.ALLOWS)
  void aByteForEachFeedAndTheMagicOneAtAnOrderlyEnd() throws Exception {
    WatchdogDevice device = open();
    assertEquals("", written());
    device.feed("OFF");
    device.feed("HEATING");
    assertEquals("..", written());
    device.end(true);
    assertEquals("..V", written());
  }

  @Test
  @Verifies(value = "SR-18", side = Side.WITHHOLDS)
  void anEndOutOfOrderIsClosedWithoutTheMagicSoThatTheComputerRestarts() throws Exception {
    WatchdogDevice device = open();
    device.feed("HEATING");
    device.end(false);
    assertEquals(".", written());
    assertThrows(IOException.class, () -> device.feed("HEATING"), "it is closed");
  }

  @Test
  void aDeviceThatIsNotThereOrIsAFolderIsToldInWordsAndNotMade() {
    Path gone = folder.resolve("gone");
    IOException missing = assertThrows(IOException.class, () -> WatchdogDevice.open(gone));
    assertEquals("there is no such device", missing.getMessage());
    assertEquals(false, Files.exists(gone));
    IOException directory = assertThrows(IOException.class, () -> WatchdogDevice.open(folder));
    assertEquals("Is a directory", directory.getMessage());
  }

  @Test
  void aDeviceThatFailsIsAFailedFeed() throws Exception {
    // The kernel's own device that is always full: full(4).
    WatchdogDevice full = WatchdogDevice.open(Path.of("/dev/full"));
    assertThrows(IOException.class, () -> full.feed("OFF"));
  }
}
