package trayward.controller.scan;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.atomic.AtomicLong;
import trayward.controller.event.AlarmStep;

/**
 * Steps of alarms on their way from the scan thread to the alarm record, apart from the events so
 * that neither reader takes from the other. Bounded: the oldest are dropped and counted, because a
 * scan never waits.
 */
public final class AlarmBox {

  /**
   * Every alarm there is through its whole life several times over: a person makes no more while a
   * card hangs for minutes. A reader empties it ten times a second.
   */
  private static final int CAPACITY = 512;

  private final ArrayBlockingQueue<AlarmStep> queue = new ArrayBlockingQueue<>(CAPACITY);
  private final AtomicLong dropped = new AtomicLong();

  void put(AlarmStep step) {
    while (!queue.offer(step)) {
      if (queue.poll() != null) {
        dropped.incrementAndGet();
      }
    }
  }

  /** Takes all waiting steps, oldest first. One reader. */
  public List<AlarmStep> take() {
    List<AlarmStep> steps = new ArrayList<>();
    queue.drainTo(steps);
    return steps;
  }

  /** How many steps nobody took in time. */
  public long dropped() {
    return dropped.get();
  }
}
