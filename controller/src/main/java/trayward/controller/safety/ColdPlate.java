package trayward.controller.safety;

import org.jspecify.annotations.Nullable;
import trayward.controller.event.TripCause;

/** Names why a plate is colder than the commanded heat allows. Pure. */
final class ColdPlate {

  /** A bath that follows the plate rises faster than this, K/s; a resting reading does not. */
  private static final double FOLLOWS = 0.004;

  /** A value that stands this long while the plate must move is frozen, s. */
  private static final double FROZEN_S = 20;

  /** A live probe in a plate that cools steps more often than this, s. */
  private static final double LIVE_S = 5;

  /** A plate this far above the room moves when heat fails, K. */
  private static final double WARM_K = 3;

  /** Rooms go to 30 °C, and probes read half a kelvin high. */
  private static final double ROOM_MAX_C = 32;

  /** Plate and bath this close may both rest in a room warmer than believed, K. */
  private static final double APART_K = 1.5;

  /**
   * Near the room a plate without heat stands still, and one with a frozen probe seems to. For so
   * much time of heat the bath, or the habit of the probe, may tell, s: SR-10 leaves a minute.
   */
  private static final double UNSURE_S = 52;

  private ColdPlate() {}

  /**
   * The cause; null while it cannot be told yet.
   *
   * @param plateC plate reading, °C
   * @param bathC bath reading, °C
   * @param airC room air as believed, °C
   * @param bathSlope slope of the bath reading, K/s
   * @param plate how long the plate reading has stood still
   * @param bath the same of the bath
   */
  static @Nullable TripCause cause(
      double plateC,
      double bathC,
      double airC,
      double bathSlope,
      ConstantSpan plate,
      ConstantSpan bath) {
    if (bath.outlasts()) {
      return TripCause.BATH_PROBE_BAD; // the plate cools towards a bath colder than it says
    }
    // Hanging in the air of the room a live probe may stand still as well, but by its own habit.
    boolean follows = bathSlope > FOLLOWS && plate.usualS() == 0;
    boolean apart = Math.abs(plateC - bathC) > APART_K;
    boolean warm = plateC > ROOM_MAX_C || (plateC > airC + WARM_K && apart);
    boolean mustMove = warm || plate.outlasts() || follows;
    if (plate.ageS() >= FROZEN_S && mustMove) {
      return TripCause.PLATE_PROBE_BAD;
    }
    boolean stands = plate.ageS() >= LIVE_S;
    return stands && plate.dutyS() < UNSURE_S ? null : TripCause.HEAT_NOT_ARRIVING;
  }
}
