/**
 * Measures what the regulator is meant to reach on random trays it was not tuned for: each beside
 * the physical bound, a plain PID and a thermostat on the same tray.
 */
@NullMarked
package trayward.host.app.goals;

import org.jspecify.annotations.NullMarked;
