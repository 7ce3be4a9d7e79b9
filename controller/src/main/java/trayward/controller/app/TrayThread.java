package trayward.controller.app;

import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import trayward.controller.scan.Snapshot;

/**
 * Brings lessons from the snapshots to the desk that remembers them, once a second, on a thread of
 * its own: the scan neither waits for the disk nor knows of it.
 */
final class TrayThread implements AutoCloseable {

  private final TrayDesk desk;
  private final Supplier<@Nullable Snapshot> latest;
  private final ScheduledExecutorService executor =
      Executors.newSingleThreadScheduledExecutor(
          task -> {
            Thread thread = new Thread(task, "lessons");
            thread.setDaemon(true);
            return thread;
          });

  TrayThread(TrayDesk desk, Supplier<@Nullable Snapshot> latest) {
    this.desk = desk;
    this.latest = latest;
  }

  void start() {
    var unused = executor.scheduleAtFixedRate(this::look, 1, 1, TimeUnit.SECONDS);
  }

  private void look() {
    Snapshot now = latest.get();
    if (now != null) {
      now.tray().lesson().ifPresent(desk::see);
    }
  }

  @Override
  public void close() {
    executor.shutdown();
    try {
      var unused = executor.awaitTermination(2, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
