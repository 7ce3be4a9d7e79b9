package trayward.controller.app;

import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import trayward.controller.keep.UpkeepDesk;
import trayward.controller.scan.Snapshot;

/**
 * Counts hours of use for the due dates (SR-23) from the snapshots, once a second, on a thread of
 * its own: the scan neither waits for the disk nor knows of it.
 */
final class UpkeepThread implements AutoCloseable {

  private static final long PERIOD_MS = 1000;

  private final UpkeepDesk desk;
  private final Supplier<@Nullable Snapshot> latest;
  private final double warmC;
  private final Beat beat = new Beat("upkeep", PERIOD_MS, this::count);

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
    beat.start();
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
    beat.close();
    desk.save();
  }
}
