package trayward.controller.station;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import trayward.controller.event.TrayEvent;
import trayward.controller.scan.EventBox;

/**
 * The newest events, numbered from 1 since power-up, for a host that asks again and again. One
 * lock.
 */
final class EventTail {

  /** Slots: a host asks four times a second, and no two scans' events are more than these. */
  static final int SLOTS = 16;

  private final EventBox box;
  private final Deque<Numbered> newest = new ArrayDeque<>();
  private long count;

  EventTail(EventBox box) {
    this.box = box;
  }

  /** An event and its number. */
  record Numbered(long number, TrayEvent event) {}

  /** The events of a moment: how many there were, and the newest of them, oldest first. */
  record Tail(long count, List<Numbered> newest) {

    /** The event in a slot: number n stands in slot n modulo the slots. */
    Optional<Numbered> slot(int slot) {
      return newest.stream().filter(e -> e.number() % SLOTS == slot).findFirst();
    }
  }

  synchronized Tail now() {
    for (TrayEvent event : box.take()) {
      count++;
      newest.addLast(new Numbered(count, event));
      if (newest.size() > SLOTS) {
        newest.removeFirst();
      }
    }
    return new Tail(count, List.copyOf(newest));
  }
}
