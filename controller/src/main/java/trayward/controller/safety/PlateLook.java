package trayward.controller.safety;

import org.jspecify.annotations.Nullable;
import trayward.controller.event.TripCause;

/**
 * A look at a plate too hot for the commanded heat: heat is held off for some seconds, and what the
 * plate does then names the cause. A value.
 *
 * @param coolingPerS cooling rate of the plate as learned, 1/s
 * @param bathFalls the bath reading fell faster than a bath can
 * @param bathStands it was begun because the bath reading stood still under heat
 * @param plateStood the plate reading stood still longer than a live one, before or since
 * @param fromC plate when the look began to count, °C; NaN before
 * @param laterC plate at the end of its first part, °C
 * @param countedS time it has counted, s
 */
record PlateLook(
    double coolingPerS,
    boolean bathFalls,
    boolean bathStands,
    boolean plateStood,
    double fromC,
    double laterC,
    double countedS) {

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

  /** The time constant of the slowest plate, with some rounding, 1/s. */
  private static final double SLOWEST_PER_S = 1.001 / PlateGrid.timeS(PlateGrid.TIMES - 1);

  /** Shares of the slowest wet plate's fall: over a minute, and beyond doubt sooner. */
  private static final double WET_SHARE = 0.75;

  private static final double SURE_SHARE = 1.5;

  /** So near to what was learned a plate falls towards this very bath, and no other. */
  private static final double AGREES = 0.85;

  /** A value that stood this long before heat was held off, and since, is frozen, s. */
  private static final double FROZEN_PLATE_S = 10;

  /** A bath reading that stood this long under heat and through the look, s. */
  private static final double STOOD_S = 55;

  /** A wet plate that would fall by less than this is too near its bath to be told, K. */
  private static final double SEEN_K = 0.1;

  /** A dry plate loses heat to the room all the same, 1/s: 0.5 W/K of both faces of 1800 J/K. */
  private static final double DRY_LOSS_PER_S = 0.5 / 1800;

  /** The most: of 700 J/K, in a room a third colder than believed, 1/s. */
  private static final double DRY_MOST_PER_S = 1.33 * 0.5 / 700;

  /** A fall of a dry plate that is not to be overlooked, K. */
  private static final double DRY_FALL_K = 0.25;

  static PlateLook begin(
      double coolingPerS, boolean bathFalls, boolean bathStands, boolean plateStood) {
    double least = 1 / PlateGrid.timeS(PlateGrid.TIMES - 1); // where none lives, the slowest
    double cooling = Math.max(coolingPerS, least);
    return new PlateLook(cooling, bathFalls, bathStands, plateStood, Double.NaN, Double.NaN, 0);
  }

  /**
   * After one scan.
   *
   * @param stands the plate reading stands still longer than a live one does
   */
  PlateLook next(HeatLag heat, double plateC, double dt, boolean stands) {
    boolean stood = plateStood || stands;
    if (heat.offS() < SETTLE_S) {
      return counted(stood, fromC, laterC, countedS);
    }
    if (Double.isNaN(fromC)) {
      return counted(stood, plateC, plateC, 0);
    }
    return counted(stood, fromC, countedS < LOOK_S ? plateC : laterC, countedS + dt);
  }

  private PlateLook counted(boolean stood, double from, double later, double seconds) {
    return new PlateLook(coolingPerS, bathFalls, bathStands, stood, from, later, seconds);
  }

  /** Whether it is over and the plate too near its bath for any name: what follows is judged. */
  boolean tooNear(double bathC) {
    return countedS >= LOOK_S && !bathFalls && !bathStands && DRY_SHARE * wetFall(bathC) < SEEN_K;
  }

  private double wetFall(double bathC) {
    return wetFall(bathC, LOOK_S);
  }

  private double wetFall(double bathC, double seconds) {
    return (fromC - bathC) * -Math.expm1(-coolingPerS * seconds);
  }

  /** Whether nothing is known of this plate: it is reckoned with as the slowest. */
  private boolean slowest() {
    return coolingPerS <= SLOWEST_PER_S;
  }

  /** A wet plate is no slower than the slowest; one that falls clearly faster is surely wet. */
  private boolean surely(double bathC) {
    return fromC - laterC >= SURE_SHARE * wetFall(bathC);
  }

  /** Falls as the slowest wet plate, or faster than any dry one: its bath is not what it says. */
  private boolean follows(double plateC, double bathC, double airC) {
    double wet = WET_SHARE * wetFall(bathC, countedS);
    double dry = DRY_MOST_PER_S * countedS * (plateC - airC);
    return surely(bathC) || fromC - plateC >= Math.min(wet, dry);
  }

  /**
   * What the plate did so far names; null while it must be looked at longer.
   *
   * @param inLiquid the bath probe is surely in liquid: the plate was off it, and is back
   */
  @Nullable TripCause cause(
      double plateC,
      double bathC,
      double airC,
      boolean inLiquid,
      ConstantSpan plate,
      ConstantSpan bath) {
    if (countedS < LOOK_S) {
      return null;
    }
    if (plateStood || plate.ageS() >= SETTLE_S + countedS + FROZEN_PLATE_S) {
      return TripCause.PLATE_PROBE_BAD;
    }
    double change = laterC - fromC;
    if (change >= RISES_K) {
      return TripCause.RELAY_STUCK;
    }
    if (tooNear(bathC)) {
      return null;
    }
    double fall = wetFall(bathC);
    if (!bathFalls && slowest() && !surely(bathC) && countedS < LOOK_S + LONGER_S) {
      return null; // no habit to compare with: only time tells the slowest plate from a dry one
    }
    if (bathFalls || (slowest() ? follows(plateC, bathC, airC) : -change >= DRY_SHARE * fall)) {
      // Where heat was given that no bath could have swallowed, habit need not be asked.
      boolean frozen = bathStands || bath.outlasts() || bath.usualS() == 0;
      if (bath.ageS() >= STOOD_S && frozen) {
        return TripCause.BATH_PROBE_BAD;
      }
      boolean agrees = -change >= AGREES * fall && -change * AGREES <= fall;
      boolean was = inLiquid && !bathFalls && agrees;
      return was ? TripCause.TRAY_DRY : TripCause.HEAT_NOT_ARRIVING;
    }
    if (change > -FLAT_K && countedS < LOOK_S + LONGER_S) {
      return null;
    }
    return change > -FLAT_K && heated(plateC, airC) ? TripCause.RELAY_STUCK : TripCause.TRAY_DRY;
  }

  /** A flat plate that creeps up, or does not even lose what a dry one loses to the room. */
  private boolean heated(double plateC, double airC) {
    double dryFall = DRY_LOSS_PER_S * (plateC - airC) * LONGER_S;
    return plateC - laterC >= FLAT_K || (dryFall >= DRY_FALL_K && laterC - plateC < dryFall / 2);
  }
}
