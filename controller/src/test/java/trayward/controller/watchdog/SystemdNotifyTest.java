package trayward.controller.watchdog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;

/** What goes over the wire, against the manual pages sd_notify(3) and sd_watchdog_enabled(3). */
class SystemdNotifyTest {

  private static final long PID = 4711;

  @TempDir private Path folder;

  private static SystemdNotify notify(String... pairs) throws IOException {
    Map<String, String> environment =
        pairs.length == 2
            ? Map.of(pairs[0], pairs[1])
            : Map.of(pairs[0], pairs[1], pairs[2], pairs[3]);
    return SystemdNotify.of(environment, PID).orElseThrow();
  }

  @Test
  @Verifies(value = "SR-18", side = Side.ALLOWS)
  void theFirstScanMakesReadyTheLaterOnesKeepAliveAndAnOrderlyEndSaysStopping() throws Exception {
    String path = folder.resolve("notify").toString();
    try (NotifySocket systemd = NotifySocket.at(path)) {
      SystemdNotify notify = notify("NOTIFY_SOCKET", path, "WATCHDOG_USEC", "5000000");
      assertEquals("", systemd.next(), "nothing before a scan");
      notify.feed("OFF");
      assertEquals("READY=1\nWATCHDOG=1\nSTATUS=OFF\n", systemd.next());
      notify.feed("OFF");
      assertEquals("WATCHDOG=1\n", systemd.next());
      notify.feed("PROVING");
      assertEquals("WATCHDOG=1\nSTATUS=PROVING\n", systemd.next());
      notify.end(true);
      assertEquals("STOPPING=1\nSTATUS=heat is off\n", systemd.next());
      assertEquals("", systemd.next());
    }
  }

  @Test
  void aNameInTheAbstractNamespaceIsReachedToo() throws Exception {
    String name = "@trayward-test-" + ProcessHandle.current().pid();
    try (NotifySocket systemd = NotifySocket.at(name)) {
      notify("NOTIFY_SOCKET", name, "WATCHDOG_USEC", "5000000").feed("OFF");
      assertEquals("READY=1\nWATCHDOG=1\nSTATUS=OFF\n", systemd.next());
    }
  }

  @Test
  @Verifies(value = "SR-18", side = Side.WITHHOLDS)
  void anEndOutOfOrderIsNotCalledStopping() throws Exception {
    String path = folder.resolve("notify").toString();
    try (NotifySocket systemd = NotifySocket.at(path)) {
      SystemdNotify notify = notify("NOTIFY_SOCKET", path, "WATCHDOG_USEC", "5000000");
      notify.end(false);
      assertEquals("", systemd.next());
    }
  }

  @Test
  void readyIsSaidAgainUntilItWasHeard() throws Exception {
    String path = folder.resolve("notify").toString();
    SystemdNotify notify = notify("NOTIFY_SOCKET", path);
    assertThrows(IOException.class, () -> notify.feed("OFF"));
    try (NotifySocket systemd = NotifySocket.at(path)) {
      notify.feed("OFF");
      assertEquals("READY=1\nSTATUS=OFF\n", systemd.next());
      notify.feed("OFF");
      assertEquals("", systemd.next(), "systemd does not watch: nothing new, nothing said");
    }
  }

  @Test
  void aReaderThatTakesNothingIsAFailedFeedAndNoWait() throws Exception {
    String path = folder.resolve("notify").toString();
    try (NotifySocket systemd = NotifySocket.at(path)) {
      SystemdNotify notify = notify("NOTIFY_SOCKET", path, "WATCHDOG_USEC", "5000000");
      assertThrows(
          IOException.class,
          () -> {
            for (int i = 0; i < 100_000; i++) { // any queue is shorter
              notify.feed("OFF");
            }
          });
      assertEquals("READY=1\nWATCHDOG=1\nSTATUS=OFF\n", systemd.next());
    }
  }

  @ParameterizedTest
  @CsvSource({"30000000,1000", "3000000,1000", "1500000,500", "200000,100"})
  void itFeedsThreeTimesWithinSystemdsTimeButNotOftenerThanAScan(String us, long periodMs)
      throws Exception {
    String path = folder.resolve("notify").toString();
    assertEquals(periodMs, notify("NOTIFY_SOCKET", path, "WATCHDOG_USEC", us).periodMs());
  }

  @Test
  void aWatchdogForAnotherProcessIsNotFed() throws Exception {
    String path = folder.resolve("notify").toString();
    Map<String, String> other =
        Map.of("NOTIFY_SOCKET", path, "WATCHDOG_USEC", "5000000", "WATCHDOG_PID", "1");
    Map<String, String> ours =
        Map.of("NOTIFY_SOCKET", path, "WATCHDOG_USEC", "5000000", "WATCHDOG_PID", "" + PID);
    try (NotifySocket systemd = NotifySocket.at(path)) {
      SystemdNotify.of(other, PID).orElseThrow().feed("OFF");
      assertEquals("READY=1\nSTATUS=OFF\n", systemd.next());
      SystemdNotify.of(ours, PID).orElseThrow().feed("OFF");
      assertEquals("READY=1\nWATCHDOG=1\nSTATUS=OFF\n", systemd.next());
    }
  }

  @Test
  void whereSystemdDidNotStartItNobodyIsTold() throws Exception {
    assertEquals(Optional.empty(), SystemdNotify.of(Map.of("WATCHDOG_USEC", "1000000"), PID));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "@", "/", "notify", "vsock:2:1234"})
  void anAddressThatIsNoLocalSocketIsRefusedInWords(String name) {
    IOException refused = assertThrows(IOException.class, () -> notify("NOTIFY_SOCKET", name));
    assertTrue(("" + refused.getMessage()).contains("NOTIFY_SOCKET: found '" + name + "'"));
    String longest = "/" + "n".repeat(107);
    assertThrows(IOException.class, () -> notify("NOTIFY_SOCKET", longest));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "0", "-1", "soon", "1.5", "99999999999999999999"})
  void aTimeOutThatIsNoNumberOfMicrosecondsIsRefusedInWords(String us) {
    IOException refused =
        assertThrows(IOException.class, () -> notify("NOTIFY_SOCKET", "/x", "WATCHDOG_USEC", us));
    assertTrue(("" + refused.getMessage()).contains("WATCHDOG_USEC: found '" + us + "'"));
  }
}
