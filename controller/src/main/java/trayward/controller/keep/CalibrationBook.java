package trayward.controller.keep;

import java.util.EnumMap;
import java.util.Map;
import trayward.controller.calibrate.Calibration;
import trayward.controller.port.ProbeRole;

/**
 * What is on record of each probe that was compared. Immutable.
 *
 * @param byRole one calibration at most for each place
 */
record CalibrationBook(Map<ProbeRole, Calibration> byRole) {

  static final CalibrationBook EMPTY = new CalibrationBook(Map.of());

  CalibrationBook {
    byRole = Map.copyOf(byRole);
  }

  /** What is known of this probe in this place; a probe that was exchanged inherits nothing. */
  Calibration of(ProbeRole role, String probe) {
    Calibration found = byRole.get(role);
    return found != null && found.probe().equalsIgnoreCase(probe) ? found : Calibration.none(probe);
  }

  /** Whether what is on record for a place belongs to another probe. */
  boolean ofAnother(ProbeRole role, String probe) {
    Calibration found = byRole.get(role);
    return found != null && !found.probe().equalsIgnoreCase(probe);
  }

  /** With this in place of what was there; one that says nothing takes its place away. */
  CalibrationBook with(ProbeRole role, Calibration calibration) {
    Map<ProbeRole, Calibration> next = new EnumMap<>(ProbeRole.class);
    next.putAll(byRole);
    if (calibration.known()) {
      next.put(role, calibration);
    } else {
      next.remove(role);
    }
    return new CalibrationBook(next);
  }
}
