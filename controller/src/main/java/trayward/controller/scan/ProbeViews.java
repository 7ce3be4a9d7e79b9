package trayward.controller.scan;

import trayward.controller.port.ProbeRole;

/**
 * Each probe before and after its correction. Immutable.
 *
 * @param bath the bath probe
 * @param secondBath the second bath probe
 * @param plate the plate probe
 */
public record ProbeViews(ProbeView bath, ProbeView secondBath, ProbeView plate) {

  /** One of them. */
  public ProbeView of(ProbeRole role) {
    return switch (role) {
      case BATH -> bath;
      case SECOND_BATH -> secondBath;
      case PLATE -> plate;
    };
  }
}
