package trayward.controller.safety;

import trayward.controller.event.TripCause;

/** Names why a plate is colder than the commanded heat allows. Pure. */
final class ColdPlate {

  /** A bath that follows the plate rises faster than this, K/s; a resting reading does not. */
  private static final double FOLLOWS = 0.004;

  /** A value that stands this long while the plate must move is frozen, s. */
  private static final double FROZEN_S = 20;

  /** A plate this far above the room moves when heat fails, K. */
  private static final double WARM_K = 3;

  private ColdPlate() {}

  /**
   * The cause.
   *
   * @param plateC plate reading, °C
   * @param airC room air, °C
   * @param bathSlope slope of the bath reading, K/s
   * @param plate how long the plate reading has stood still
   * @param bath the same of the bath
   */
  static TripCause cause(
      double plateC, double airC, double bathSlope, ConstantSpan plate, ConstantSpan bath) {
    if (bath.outlasts()) {
      return TripCause.BATH_PROBE_BAD; // the plate cools towards a bath colder than it says
    }
    boolean mustMove = bathSlope > FOLLOWS || plate.outlasts() || plateC > airC + WARM_K;
    return plate.ageS() >= FROZEN_S && mustMove
        ? TripCause.PLATE_PROBE_BAD
        : TripCause.HEAT_NOT_ARRIVING;
  }
}
