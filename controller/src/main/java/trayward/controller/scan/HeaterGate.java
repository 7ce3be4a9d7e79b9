package trayward.controller.scan;

import trayward.controller.port.OutputLine;
import trayward.controller.safety.ContactPermit;
import trayward.controller.safety.HeaterPermit;
import trayward.controller.safety.Permission;
import trayward.controller.safety.Relay;

/**
 * The only way to the heater relay: it closes on nothing but a permit minted for this very scan, or
 * on one for its contact test, under which the safety relay is open. Scan thread only.
 */
final class HeaterGate {

  private final OutputLine relay;

  HeaterGate(OutputLine relay) {
    this.relay = relay;
  }

  /**
   * Drives the relay for one scan.
   *
   * @param permission what the interlock said in this scan
   * @param scan number of this scan
   * @param wanted whether the regulator wants heat now
   * @return whether the relay is commanded closed
   */
  boolean drive(Permission permission, long scan, boolean wanted) {
    boolean on =
        permission instanceof HeaterPermit permit
            ? wanted && permit.isFor(scan)
            : permission instanceof ContactPermit test && test.lets(Relay.HEATER, scan);
    relay.write(on);
    return on;
  }

  /** Opens the relay; needs no permit. */
  void open() {
    relay.write(false);
  }
}
