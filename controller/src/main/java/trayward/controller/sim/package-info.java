/**
 * The simulated tray: plate, bath, air, probes, fan, relays and their faults. It knows nothing of
 * the controller's verdicts.
 */
@NullMarked
package trayward.controller.sim;

import org.jspecify.annotations.NullMarked;
