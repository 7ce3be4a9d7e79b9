package trayward.controller.app;

import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
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

  private static final long PERIOD_MS = 100;

  private final AlarmBox box;
  private final AlarmRecord record;
  private final Supplier<@Nullable Snapshot> latest;
  private final WallClock wallClock;
  private final Beat beat = new Beat("alarm-record", PERIOD_MS, this::write);

  /** A thread that has not begun. */
  AlarmThread(
      AlarmBox box, AlarmRecord record, Supplier<@Nullable Snapshot> latest, WallClock wallClock) {
    this.box = box;
    this.record = record;
    this.latest = latest;
    this.wallClock = wallClock;
  }

  void start() {
    beat.start();
  }

  private void write() {
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
    beat.closeWithLast();
  }
}
