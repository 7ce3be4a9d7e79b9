package trayward.controller.safety;

import trayward.controller.quantity.Ages;

/**
 * How long air has been proven, or broken, and how recent the breaks are (SR-02, SR-05). A value.
 *
 * @param provenMs time proven without a break since the scan that first saw it, ms
 * @param brokenMs time since the proof broke, ms; 0 while proven
 * @param lastBreakMs age of the newest break, ms
 * @param olderBreakMs age of the one before it, ms
 * @param breaks breaks within the window, counted at the newest one
 */
public record AirWatch(int provenMs, int brokenMs, int lastBreakMs, int olderBreakMs, int breaks) {

  /** Nothing proven, no break remembered. */
  static final AirWatch START = new AirWatch(0, Ages.MAX_MS, Ages.MAX_MS, Ages.MAX_MS, 0);

  /** After a scan in which air was proven or not. */
  AirWatch next(boolean proven, int elapsedMs, int windowMs) {
    int last = Ages.older(lastBreakMs, elapsedMs);
    int older = Ages.older(olderBreakMs, elapsedMs);
    if (proven) {
      // A proof first seen now may be as young as this scan: what went before does not count.
      int age = brokenMs > 0 ? 0 : Ages.older(provenMs, elapsedMs);
      return new AirWatch(age, 0, last, older, breaks);
    }
    if (brokenMs == 0) {
      int count = 1 + (last < windowMs ? 1 : 0) + (older < windowMs ? 1 : 0);
      return new AirWatch(0, Math.max(1, Ages.older(0, elapsedMs)), 0, last, count);
    }
    return new AirWatch(0, Ages.older(brokenMs, elapsedMs), last, older, breaks);
  }

  /** The same evidence with the breaks forgotten: they count within one run only. */
  AirWatch forgetBreaks() {
    return new AirWatch(provenMs, brokenMs, Ages.MAX_MS, Ages.MAX_MS, 0);
  }
}
