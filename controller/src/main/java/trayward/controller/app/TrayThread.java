package trayward.controller.app;

import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import trayward.controller.scan.Snapshot;

/**
 * Brings lessons from the snapshots to the desk that remembers them, once a second, on a thread of
 * its own: the scan neither waits for the disk nor knows of it.
 */
final class TrayThread implements AutoCloseable {

  private static final long PERIOD_MS = 1000;

  private final TrayDesk desk;
  private final Supplier<@Nullable Snapshot> latest;
  private final Beat beat = new Beat("lessons", PERIOD_MS, this::look);

  TrayThread(TrayDesk desk, Supplier<@Nullable Snapshot> latest) {
    this.desk = desk;
    this.latest = latest;
  }

  void start() {
    beat.start();
  }

  private void look() {
    Snapshot now = latest.get();
    if (now != null) {
      now.tray().lesson().ifPresent(desk::see);
    }
  }

  @Override
  public void close() {
    beat.close();
  }
}
