package trayward.host.link;

import java.util.ArrayList;
import java.util.List;
import trayward.controller.event.EventKind;
import trayward.controller.station.Block;
import trayward.controller.station.Codes;
import trayward.controller.station.EventRegisters;

/**
 * Takes each event once from the controller's slots, oldest first, and says how many it missed.
 * Poll thread only.
 */
final class EventFeed {

  private static final int PER_READ = 2;

  private long seen;
  private boolean first = true;

  /** Reads a block of input registers; null where that failed. */
  @FunctionalInterface
  interface Reading {
    @org.jspecify.annotations.Nullable
    Block read(int address, int words);
  }

  /**
   * What is new.
   *
   * @param count number of the newest event of the controller
   * @param uptimeS its uptime
   * @param reading reads slots
   * @return events not told before, oldest first; fewer where a read failed, the rest comes later
   */
  List<LinkEvent> news(long count, double uptimeS, Reading reading) {
    if (count < seen) {
      seen = 0; // the controller began anew
    }
    List<LinkEvent> events = new ArrayList<>();
    long oldest = Math.max(1, count - EventRegisters.SLOTS + 1);
    if (first && seen == 0 && oldest > 1) {
      seen = oldest - 1; // what was before this host was there is nobody's loss
    } else if (oldest > seen + 1) {
      String missed = oldest - 1 - seen + " events were missed while the link was down";
      events.add(new LinkEvent(uptimeS, EventKind.NOTE.name(), "link", missed));
      seen = oldest - 1;
    }
    first = false;
    while (seen < count && take(count, reading, events)) {
      // until all are taken, at most the slots there are
    }
    return events;
  }

  /** Takes the next slot or two that are read together; false where that failed. */
  private boolean take(long count, Reading reading, List<LinkEvent> events) {
    int slot = (int) ((seen + 1) % EventRegisters.SLOTS);
    int slots = seen + 1 < count && slot + 1 < EventRegisters.SLOTS ? PER_READ : 1;
    Block block =
        reading.read(EventRegisters.BASE + EventRegisters.EACH * slot, EventRegisters.EACH * slots);
    if (block == null) {
      return false;
    }
    for (int i = slot; i < slot + slots; i++) {
      EventRegisters.Slot at = EventRegisters.slot(i);
      if (at.number().number(block) != seen + 1) {
        return false; // overtaken by newer ones: the next round sees what is missing
      }
      seen++;
      events.add(
          new LinkEvent(
              at.uptime().number(block),
              Codes.EVENT.name(at.kind().whole(block)).orElse(EventKind.NOTE).name(),
              at.subject().text(block),
              at.detail().text(block)));
    }
    return true;
  }
}
