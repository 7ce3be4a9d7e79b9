package trayward.controller.scan;

/**
 * What one scan wrote to the heater's side.
 *
 * @param duty duty under the permit, 0 to 1
 * @param heaterOn heater relay commanded closed
 * @param watchdogLevel level of the watchdog line
 */
record Written(double duty, boolean heaterOn, boolean watchdogLevel) {}
