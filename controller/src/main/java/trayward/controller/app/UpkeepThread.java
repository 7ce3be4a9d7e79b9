package trayward.controller.app;

import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import trayward.controller.keep.UpkeepDesk;
import trayward.controller.scan.Snapshot;

/**
 * Counts hours of use for the due dates (SR-23) from the snapshots, once a second, on a thread of
 * its own: the scan neither waits for the disk nor knows of it.
 */
final class UpkeepThread implements AutoCloseable {

  private final UpkeepDesk desk;
  private final Supplier<@Nullable Snapshot> latest;
  private final double warmC;
  private final ScheduledExecutorService executor =
      Executors.newSingleThreadScheduledExecutor(
          task -> {
            Thread thread = new Thread(task, "upkeep");
            thread.setDaemon(true);
            return thread;
          });

  /**
   * A thread that has not begun.
   *
   * @param warmC bath temperature from which there is vapour to breathe, °C
   */
  UpkeepThread(UpkeepDesk desk, Supplier<@Nullable Snapshot> latest, double warmC) {
    this.desk = desk;
    this.latest = latest;
    this.warmC = warmC;
  }

  void start() {
    var unused = executor.scheduleAtFixedRate(this::count, 1, 1, TimeUnit.SECONDS);
  }

  private void count() {
    Snapshot now = latest.get();
    if (now != null) {
      desk.count(now.nowNanos(), vapour(now, warmC), now.fanCommanded());
    }
  }

  /** Heat is in progress, or the bath is warm. */
  static boolean vapour(Snapshot now, double warmC) {
    boolean warm = now.bath().valid() && now.bath().celsius() >= warmC;
    return now.permitted() || warm;
  }

  @Override
  public void close() {
    executor.shutdown();
    try {
      var unused = executor.awaitTermination(2, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    desk.save();
  }
}
