package trayward.controller.safety;

import org.jspecify.annotations.Nullable;
import trayward.controller.event.TripCause;

/** Names why a plate is colder than the commanded heat allows. Pure. */
final class ColdPlate {

  /** The slowest plate within limits, 1800 J/K at 12 W/K, follows its bath with this lag, s. */
  private static final double FOLLOWS_S = 150;

  /**
   * A plate that followed its bath by so much cannot read as before, K: a step of 1/16 K, half a
   * step of the bath reading and its noise.
   */
  private static final double FOLLOWED_K = 0.12;

  /** A plate within this of its bath cannot be what makes the bath turn, K. */
  private static final double NEAR_K = 2;

  /** The longest such a turn is taken for, s. */
  private static final double TURNS_S = 120;

  /** From one reading to the next no plate short of heat rises so much, K. */
  private static final double LEAP_K = 1.5;

  /** A value that stands this long while the plate must move is frozen, s. */
  private static final double FROZEN_S = 20;

  /** A live probe in a plate that cools steps more often than this, s. */
  private static final double LIVE_S = 5;

  /** A plate this far above the room moves when heat fails, K. */
  private static final double WARM_K = 3;

  /** Plate and bath this close may both rest in a room warmer than believed, K. */
  private static final double APART_K = 1.5;

  /**
   * Near the room a plate without heat stands still, and one with a frozen probe seems to: the
   * habit of a quiet probe tells nothing there, because its noise dies away between two steps. For
   * so much time of heat the bath may tell, s: SR-10 leaves a minute.
   */
  private static final double UNSURE_S = 52;

  /**
   * With heat held off then, what the plate holds still goes into the bath for so long, s: two lags
   * of the slowest.
   */
  private static final double AFTER_S = 300;

  /** Two lags of an ordinary plate without heat: it has followed its bath, s. */
  private static final double UNASKED_S = 120;

  /** A bath whose plate moves does not stand so long, s. */
  private static final double STOOD_S = 300;

  private ColdPlate() {}

  /**
   * The cause; null while it cannot be told yet.
   *
   * @param plateC plate reading, °C
   * @param bathC bath reading, °C
   * @param airC room air as believed, °C
   * @param offS time since heat was last commanded, s
   * @param leaves the plate reading falls faster than any plate
   * @param plate how long the plate reading has stood still, and what the bath did meanwhile
   * @param bath how long the bath reading has stood still
   */
  static @Nullable TripCause cause(
      double plateC,
      double bathC,
      double airC,
      double offS,
      boolean leaves,
      ConstantSpan plate,
      ConstantSpan bath) {
    // At rest near the room a quiet bath reading stands as well, whatever the plate does.
    boolean stops = bath.stoppedDead();
    // Where it turns from cooling to warming it stands for a while too, with the plate well above
    // it.
    boolean turns = plateC > bathC + NEAR_K && bath.ageS() < TURNS_S;
    if (plate.lastK() >= LEAP_K) {
      return TripCause.PLATE_PROBE_BAD; // too cold, and it leaps: it thaws, or is put back
    }
    // Where nothing is asked of the heater, its plate cools with a bath that says what it was.
    boolean unasked = offS >= UNASKED_S && bath.ageS() >= STOOD_S;
    if (!leaves && (unasked || (bath.outlasts() && stops && !turns))) {
      return TripCause.BATH_PROBE_BAD; // the plate cools towards a bath colder than it says
    }
    boolean apart = Math.abs(plateC - bathC) > APART_K;
    boolean warm = plateC > RoomLimit.MAX_READ_C || (plateC > airC + WARM_K && apart);
    boolean mute = Math.abs(plate.followed(FOLLOWS_S)) >= FOLLOWED_K; // a live one moves
    if (mute || (warm && plate.ageS() >= FROZEN_S)) {
      return TripCause.PLATE_PROBE_BAD;
    }
    boolean open = plate.dutyS() < UNSURE_S || offS < AFTER_S;
    return stands(plate) && open ? null : TripCause.HEAT_NOT_ARRIVING;
  }

  /** Whether the plate reading does not move. */
  static boolean stands(ConstantSpan plate) {
    return plate.ageS() >= LIVE_S;
  }

  /** Whether a cold plate has had all the heat it may have before it is named: heat is held off. */
  static boolean holdsOff(ConstantSpan plate) {
    return plate.dutyS() >= UNSURE_S;
  }
}
