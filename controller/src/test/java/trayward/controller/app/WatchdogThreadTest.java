package trayward.controller.app;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.port.OutsideWatchdog;

/** SR-18 beside the pulse line: watchdogs hear of new complete scans and of nothing else. */
@Timeout(60)
class WatchdogThreadTest {

  @TempDir private Path folder;

  /** Remembers what it was told; may be out of order. One thread. */
  private static final class Told implements OutsideWatchdog {
    final List<String> words = new ArrayList<>();
    boolean broken;

    @Override
    public String name() {
      return "told";
    }

    @Override
    public long periodMs() {
      return 1;
    }

    @Override
    public void feed(String status) throws IOException {
      words.add(status);
      if (broken) {
        throw new IOException("out of order");
      }
    }

    @Override
    public void end(boolean orderly) {
      words.add(orderly ? "orderly" : "not orderly");
    }
  }

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

  private static long scan(ControllerRuntime runtime) {
    return Objects.requireNonNull(runtime.latest()).scan();
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
  @Verifies(value = "SR-18", side = Side.WITHHOLDS)
  void aNewScanIsToldOfOnceAndNothingElseIs() throws Exception {
    FreezingClock clock = new FreezingClock();
    try (ControllerRuntime runtime =
        new ControllerRuntime(settings("[watchdog]\nsystemd='off'\n"), clock, () -> 0, e -> {})) {
      Told told = new Told();
      WatchdogThread thread = new WatchdogThread(told, runtime::latest);
      thread.look();
      assertEquals(List.of(), told.words, "no scan, no word");
      runtime.start();
      thread.look();
      assertEquals(List.of("OFF"), told.words);
      long scan = scan(runtime);
      await(() -> scan(runtime) > scan);
      thread.look();
      assertEquals(List.of("OFF", "OFF"), told.words);
      clock.frozen = true;
      await(() -> clock.hanging);
      thread.look();
      int before = told.words.size();
      for (int i = 0; i < 100; i++) {
        thread.look();
      }
      assertEquals(before, told.words.size(), "the scans stand still");
      told.broken = true;
      clock.frozen = false;
      clock.thaw.countDown();
      long stood = scan(runtime);
      await(() -> scan(runtime) > stood);
      thread.look();
      assertEquals(before + 1, told.words.size());
      thread.end(true);
      assertEquals("orderly", told.words.get(before + 1));
    }
  }

  @Test
  @Verifies(value = "SR-18", side = Side.WITHHOLDS)
  void aFrozenScanThreadLeavesTheDeviceUnfedAndAnEndThenDoesNotDisarmIt() throws Exception {
    Path device = Files.createFile(folder.resolve("watchdog"));
    FreezingClock clock = new FreezingClock();
    ControllerRuntime runtime =
        new ControllerRuntime(settings(device(device)), clock, () -> 0, e -> {});
    AtomicInteger looks = new AtomicInteger();
    Told beside = new Told();
    WatchdogThread counting =
        new WatchdogThread(
            beside,
            () -> {
              looks.incrementAndGet();
              return runtime.latest();
            });
    runtime.start();
    counting.start();
    await(() -> size(device) >= 2);
    clock.frozen = true;
    await(() -> clock.hanging);
    int looked = looks.get();
    await(() -> looks.get() > looked + 2000); // looks a millisecond apart: two beats of the device
    long unfed = size(device);
    int more = looks.get();
    await(() -> looks.get() > more + 3000);
    assertEquals(unfed, size(device));
    runtime.close();
    counting.end(false);
    assertEquals(".".repeat((int) unfed), Files.readString(device), "no magic close");
    clock.thaw.countDown();
  }

  @Test
  @Verifies(value = "SR-19", side = Side.WITHHOLDS)
  void whatCannotBeArmedRefusesTheStartInOneSentence() throws Exception {
    Path gone = folder.resolve("gone");
    String line;
    try (ControllerRuntime runtime =
        new ControllerRuntime(settings(device(gone)), System::nanoTime, () -> 0, e -> {})) {
      line = Refused.line(runtime::start);
    }
    Refused.names(line, "watchdog.device", gone.toString(), "no such device");
    WatchdogTable auto = settings("").watchdog();
    Refused.names(
        Refused.line(() -> auto.open(Map.of("NOTIFY_SOCKET", "here"))),
        "watchdog.systemd",
        "NOTIFY_SOCKET",
        "'here'",
        "a path");
    assertEquals(List.of(), auto.open(Map.of()), "systemd did not start it");
    WatchdogTable off = settings("[watchdog]\nsystemd='off'\n").watchdog();
    assertEquals(List.of(), off.open(Map.of("NOTIFY_SOCKET", "here")));
    Refused.names(
        Refused.line(() -> settings("[watchdog]\nsystemd='on'\n")), "watchdog.systemd", "'on'");
    Refused.names(Refused.line(() -> settings("[watchdog]\ndevice=''\n")), "watchdog.device");
  }
}
