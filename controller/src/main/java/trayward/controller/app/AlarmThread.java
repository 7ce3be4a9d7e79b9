package trayward.controller.app;

import java.util.List;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import trayward.controller.event.AlarmStep;
import trayward.controller.keep.AlarmEntry;
import trayward.controller.keep.AlarmRecord;
import trayward.controller.port.WallClock;
import trayward.controller.scan.AlarmBox;
import trayward.controller.scan.Snapshot;

/**
 * Takes the steps of alarms from the scan's box and writes them to the alarm record, ten times a
 * second, on a thread of its own: the scan neither waits for the disk nor knows of it. The wall
 * clock is read here and written beside each step, for the record only (SR-22).
 */
final class AlarmThread implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(AlarmThread.class);

  private static final long PERIOD_MS = 100;

  private final AlarmBox box;
  private final AlarmRecord record;
  private final Supplier<@Nullable Snapshot> latest;
  private final WallClock wallClock;
  private final ScheduledExecutorService executor =
      Executors.newSingleThreadScheduledExecutor(
          task -> {
            Thread thread = new Thread(task, "alarm-record");
            thread.setDaemon(true);
            return thread;
          });

  /** A thread that has not begun. */
  AlarmThread(
      AlarmBox box, AlarmRecord record, Supplier<@Nullable Snapshot> latest, WallClock wallClock) {
    this.box = box;
    this.record = record;
    this.latest = latest;
    this.wallClock = wallClock;
  }

  void start() {
    var unused =
        executor.scheduleWithFixedDelay(this::write, PERIOD_MS, PERIOD_MS, TimeUnit.MILLISECONDS);
  }

  private void write() {
    try {
      writeWaiting();
    } catch (RuntimeException e) { // else the executor would fall silent for good
      LOG.error("the alarm record missed a beat", e);
    }
  }

  private void writeWaiting() {
    Snapshot now = latest.get();
    if (now == null) {
      return; // uptime counts from the first scan
    }
    List<AlarmStep> steps = box.take();
    long wallS = steps.isEmpty() ? 0 : wallClock.epochSeconds();
    record.missed(box.dropped());
    record.add(steps.stream().map(step -> entry(step, now, wallS)).toList());
  }

  /** A step that waited for a slow disk bears the time at which it happened. */
  static AlarmEntry entry(AlarmStep step, Snapshot now, long wallS) {
    double agoS = (now.nowNanos() - step.atNanos()) / 1e9;
    return new AlarmEntry(
        wallS - Math.round(agoS),
        Math.max(0, now.uptimeMs() / 1000.0 - agoS),
        step.cause().name(),
        step.state(),
        step.detail());
  }

  @Override
  public void close() {
    executor.shutdown();
    try {
      if (executor.awaitTermination(2, TimeUnit.SECONDS)) {
        write(); // the last steps, where the disk does not hang
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
