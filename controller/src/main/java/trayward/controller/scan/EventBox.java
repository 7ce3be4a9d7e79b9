package trayward.controller.scan;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.atomic.AtomicLong;
import trayward.controller.event.AlarmStep;
import trayward.controller.event.EventKind;
import trayward.controller.event.TrayEvent;

/**
 * Events from the scan thread to whoever records them. Bounded: when nobody listens the oldest are
 * dropped and counted, because a scan never waits.
 */
public final class EventBox {

  /** An hour of the busiest second a person can make; a reader empties it ten times a second. */
  private static final int CAPACITY = 4096;

  private final ArrayBlockingQueue<TrayEvent> queue = new ArrayBlockingQueue<>(CAPACITY);
  private final AtomicLong dropped = new AtomicLong();
  private final AlarmBox alarms = new AlarmBox();

  void put(TrayEvent event) {
    while (!queue.offer(event)) {
      if (queue.poll() != null) {
        dropped.incrementAndGet();
      }
    }
  }

  /** An alarm's step is an event like any other, and goes to the alarm record besides. */
  void put(AlarmStep step) {
    String state = step.state().name();
    put(new TrayEvent(step.atNanos(), EventKind.ALARM, step.cause().name(), state));
    alarms.put(step);
  }

  /** Where the alarm record takes its steps from: a queue with a reader of its own. */
  public AlarmBox alarms() {
    return alarms;
  }

  /** Takes all waiting events, oldest first. One reader. */
  public List<TrayEvent> take() {
    List<TrayEvent> events = new ArrayList<>();
    queue.drainTo(events);
    return events;
  }

  /** How many events nobody took in time. */
  public long dropped() {
    return dropped.get();
  }
}
