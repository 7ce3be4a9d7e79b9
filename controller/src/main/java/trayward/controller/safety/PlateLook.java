package trayward.controller.safety;

import org.jspecify.annotations.Nullable;
import trayward.controller.event.TripCause;

/**
 * A look at a plate too hot for the commanded heat: heat is held off for some seconds, and what the
 * plate does then names the cause. A value.
 *
 * @param coolingPerS cooling rate of the plate as learned, 1/s
 * @param bathFalls the bath reading fell faster than a bath can
 * @param fromC plate when the look began to count, °C; NaN before
 * @param laterC plate at the end of its first part, °C
 * @param countedS time it has counted, s
 */
record PlateLook(
    double coolingPerS, boolean bathFalls, double fromC, double laterC, double countedS) {

  /** Through a lag of 8 s a dry plate of 0.6 K/s still climbs for a while: 0.3 K after this, s. */
  private static final double SETTLE_S = 20;

  /** A wet plate of the reference tray loses a quarter of its gap in this time, s. */
  private static final double LOOK_S = 16;

  /** Steps and noise of a median of readings, K. */
  private static final double RISES_K = 0.3;

  private static final double FLAT_K = 0.1;

  /**
   * A plate that neither rises nor falls is dry, or heated through a welded contact and at rest
   * already: for this much longer, s, the one creeps down and the other up with its bath.
   */
  private static final double LONGER_S = 40;

  /** Share of a wet plate's fall under which it is not wet. */
  private static final double DRY_SHARE = 0.35;

  /** A value that stood this long before heat was held off, and since, is frozen, s. */
  private static final double FROZEN_PLATE_S = 10;

  /** A bath reading that stood this long under heat and through the look, s. */
  private static final double STOOD_S = 55;

  static PlateLook begin(double coolingPerS, boolean bathFalls) {
    double least = 1 / PlateGrid.timeS(PlateGrid.TIMES - 1); // where none lives, the slowest
    return new PlateLook(Math.max(coolingPerS, least), bathFalls, Double.NaN, Double.NaN, 0);
  }

  PlateLook next(HeatLag heat, double plateC, double dt) {
    if (heat.offS() < SETTLE_S) {
      return this;
    }
    if (Double.isNaN(fromC)) {
      return new PlateLook(coolingPerS, bathFalls, plateC, plateC, 0);
    }
    double later = countedS < LOOK_S ? plateC : laterC;
    return new PlateLook(coolingPerS, bathFalls, fromC, later, countedS + dt);
  }

  /** What the plate did so far names; null while it must be looked at longer. */
  @Nullable TripCause cause(double plateC, double bathC, ConstantSpan plate, ConstantSpan bath) {
    if (countedS < LOOK_S) {
      return null;
    }
    if (plate.ageS() >= SETTLE_S + countedS + FROZEN_PLATE_S) {
      return TripCause.PLATE_PROBE_BAD;
    }
    double change = laterC - fromC;
    if (change >= RISES_K) {
      return TripCause.RELAY_STUCK;
    }
    double wetFall = (fromC - bathC) * -Math.expm1(-coolingPerS * LOOK_S);
    if (bathFalls || -change >= DRY_SHARE * wetFall) {
      return bath.ageS() >= STOOD_S && (bath.outlasts() || bath.usualS() == 0)
          ? TripCause.BATH_PROBE_BAD
          : TripCause.HEAT_NOT_ARRIVING;
    }
    if (change > -FLAT_K && countedS < LOOK_S + LONGER_S) {
      return null;
    }
    return change > -FLAT_K && plateC - laterC >= FLAT_K
        ? TripCause.RELAY_STUCK
        : TripCause.TRAY_DRY;
  }
}
