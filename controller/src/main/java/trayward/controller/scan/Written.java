package trayward.controller.scan;

import trayward.controller.keep.RelayWear;

/**
 * What one scan wrote to the heater's side.
 *
 * @param duty duty under the permit, 0 to 1
 * @param heaterOn heater relay commanded closed
 * @param safetyOn safety relay commanded closed
 * @param watchdogLevel level of the watchdog line
 * @param wear closings of both relays so far
 */
record Written(
    double duty, boolean heaterOn, boolean safetyOn, boolean watchdogLevel, RelayWear wear) {

  /** Before the first scan. */
  static Written nothing(RelayWear wear) {
    return new Written(0, false, false, false, wear);
  }

  /** Both contacts are to be closed: heat is commanded. */
  boolean heat() {
    return heaterOn && safetyOn;
  }
}
