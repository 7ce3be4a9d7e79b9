package trayward.controller.safety;

import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;

/**
 * A look where no plate is seen: a bath that falls, or does not rise, under heat it should feel has
 * its heat held off. What was heated then falls short of its course; where nothing arrived the
 * course goes on: a dry tray, an open heater, a probe out of the liquid (SR-07, SR-10). A value.
 *
 * @param bath course of the reading
 * @param heat what the plate passes on
 * @param neededShare heat needed of late, share of full heat
 * @param lookS time of the look, s; 0 outside of one
 * @param fromC the course before the look, °C when it began
 * @param fromSlope the same, K/s
 * @param least what a sound tray misses at least
 * @param bendK how far the course bends by itself, because a colder bath loses less, K
 * @param restS time until the next look, s
 * @param soundSlope slope under heat that the last look found to be arriving, K/s
 * @param failed the look ended and no heat was missed
 */
record BlindLook(
    Blocks bath,
    HeatMissed heat,
    double neededShare,
    double lookS,
    double fromC,
    double fromSlope,
    HeatMissed.Least least,
    double bendK,
    double restS,
    double soundSlope,
    boolean failed) {

  private static final double NEVER = Double.NEGATIVE_INFINITY;

  static final BlindLook START =
      new BlindLook(
          Blocks.START, HeatMissed.START, 0, 0, 0, 0, HeatMissed.Least.NONE, 0, 0, NEVER, false);

  /** Lag of a bath probe, 15 s at most, and the age of its reading, s. */
  private static final double PROBE_S = 17;

  /** Time over which heat needed of late is remembered, s. */
  private static final double NEEDED_S = 300;

  /** Blocks of a minute: slopes of its halves differ by 0.0016 K/s of noise. */
  private static final int MINUTE = 12;

  private static final double STRAIGHT_K_PER_S = 0.004;

  /** The same for two minutes. */
  private static final double STRAIGHTER_K_PER_S = 0.001;

  /** Full heat, as far as relay pulses tell. */
  private static final double FULL_SHARE = 0.85;

  /** Under full heat a bath that rises less than this does not rise, K/s: 1.8 K in an hour. */
  private static final double RISES_K_PER_S = 0.0005;

  /** Over two minutes a fall beyond noise, K/s: 0.1 K in that time. */
  private static final double FALLS_K_PER_S = -0.0008;

  /** More heat than of late by this, and the bath falls all the same: share of full heat. */
  private static final double MORE_SHARE = 0.12;

  /** A bath that falls short by this feels that heat is off, K: three times the doubt. */
  private static final double SHORT_K = 0.15;

  /** A look ends when even the weakest sound tray would be short by this, K. */
  private static final double SURE_K = 0.3;

  /**
   * A fall bends up by itself, because a colder bath loses less: so much less a sound tray would be
   * short. The share is under 1 because the least that it misses counts twice the liquid.
   */
  private static final double BEND_SHARE = 0.5;

  /** No look is begun that would not end in this time, s. */
  private static final double ENDS_S = 320;

  /** A look that took longer taught nothing, s. */
  private static final double LONGEST_S = 400;

  /** A fall that halves by itself was covered, or poured into: nothing is learned. */
  private static final double HALVED = 0.5;

  private static final double HALVED_K = 0.1;

  /** After a look that heat was seen to be missed in, s: the next is in six minutes. */
  private static final double REST_S = 360;

  /** Unless the bath then falls faster than it did before that look, K/s. */
  private static final double WORSE_K_PER_S = 0.003;

  boolean looking() {
    return lookS > 0;
  }

  /**
   * After one scan.
   *
   * @param wanted whether nothing else is about to decide without a look
   */
  BlindLook next(ThermalInput in, boolean wanted, TrayModel model, RoomModel room) {
    if (!in.bath().known() || in.plate().known() || !in.state().purged()) {
      return START;
    }
    double dt = in.elapsedS();
    double u = in.heatCommanded() ? 1 : 0;
    BlindLook now =
        new BlindLook(
            bath.next(in.bath().celsius(), dt),
            heat.next(in.heatCommanded(), dt),
            neededShare + (u - neededShare) * HeatLag.share(dt, NEEDED_S),
            looking() ? lookS + dt : 0,
            fromC,
            fromSlope,
            least,
            bendK,
            Math.max(0, restS - dt),
            soundSlope,
            failed);
    if (!now.bath.filled()) {
      return now;
    }
    if (looking()) {
      return now.looked(model, room);
    }
    boolean begins = wanted && now.bath.count() >= MINUTE && now.should(model, room);
    return begins ? now.begun(model) : now;
  }

  private BlindLook begun(TrayModel model) {
    int back = straightBack();
    double slope = bath.slope(0, back);
    double foot = bath.mean(0, back) + slope * back * Blocks.BLOCK_S / 2;
    HeatMissed.Least missed = heat.least(model, back);
    return new BlindLook(
        bath, heat, neededShare, 1e-3, foot, slope, missed, 0, 0, soundSlope, false);
  }

  private BlindLook ended(double rest, double sound, boolean fail) {
    return new BlindLook(
        Blocks.START,
        heat.anew(),
        neededShare,
        0,
        0,
        0,
        HeatMissed.Least.NONE,
        0,
        rest,
        sound,
        fail);
  }

  /** How many blocks the course has been straight: two minutes, or one. */
  private int straightBack() {
    boolean both =
        bath.count() >= 2 * MINUTE
            && Math.abs(bath.slope(0, MINUTE) - bath.slope(MINUTE, 2 * MINUTE))
                < STRAIGHTER_K_PER_S;
    return both ? 2 * MINUTE : MINUTE;
  }

  private boolean should(TrayModel model, RoomModel room) {
    double slope = bath.slope(0, MINUTE);
    double bent = bath.slope(0, MINUTE / 2) - bath.slope(MINUTE / 2, MINUTE);
    boolean rests = restS > 0 && slope > soundSlope - WORSE_K_PER_S;
    return !rests
        && Math.abs(bent) < STRAIGHT_K_PER_S
        && !poured(slope, model, room)
        && (idle(slope) || falls(slope))
        && worthwhile(slope, model, room);
  }

  /** Whether heat has been passed on long enough for a look to end in time. */
  private boolean worthwhile(double slope, TrayModel model, RoomModel room) {
    double fallKs = Math.max(0, -slope) * ENDS_S * ENDS_S / 2;
    double bend = bendsPerS(bath.mean(0, MINUTE), model, room) * fallKs;
    return heat.least(model, straightBack()).kelvin(ENDS_S) >= SURE_K + BEND_SHARE * bend;
  }

  /** Full heat, and the bath does not rise. */
  private boolean idle(double slope) {
    return heat.quickNow() >= FULL_SHARE && slope < RISES_K_PER_S;
  }

  /** More heat than of late, and the bath falls. */
  private boolean falls(double slope) {
    return bath.count() >= Blocks.KEPT
        && heat.quickNow() >= neededShare + MORE_SHARE
        && slope < FALLS_K_PER_S
        && bath.slope(0, Blocks.KEPT) < FALLS_K_PER_S;
  }

  /** A bath that no loss cools so fast was poured into: it has yet to settle. */
  private boolean poured(double slope, TrayModel model, RoomModel room) {
    double most = 2 * model.bathLossW(bath.mean(0, MINUTE), room);
    return slope < -most / (0.8 * TrayModel.LITRE_J_PER_K * model.liquidL()) - STRAIGHT_K_PER_S;
  }

  private BlindLook looked(TrayModel model, RoomModel room) {
    if (lookS < 2 * Blocks.BLOCK_S) {
      return this;
    }
    double now = bath.mean(0, 2);
    double at = lookS - Blocks.BLOCK_S;
    double bend = bendK + bendsPerS(now, model, room) * (fromC - now) * Blocks.BLOCK_S;
    double shortK = fromC + fromSlope * at - now;
    double sureK = least.kelvin(Math.max(0, lookS - PROBE_S));
    if (shortK >= SHORT_K) {
      return ended(REST_S, fromSlope, false);
    }
    boolean halved = fromC - now < -HALVED * fromSlope * at - HALVED_K;
    if (halved || lookS > LONGEST_S + PROBE_S) {
      return ended(0, soundSlope, false);
    }
    if (sureK >= SURE_K + BEND_SHARE * Math.max(0, bend)) {
      return ended(0, soundSlope, true);
    }
    return new BlindLook(
        bath, heat, neededShare, lookS, fromC, fromSlope, least, bend, 0, soundSlope, false);
  }

  /** Loss that a bath colder by 1 K saves, over its capacity, 1/s. */
  private static double bendsPerS(double bathC, TrayModel model, RoomModel room) {
    double perK = model.bathLossW(bathC + 0.5, room) - model.bathLossW(bathC - 0.5, room);
    return perK / (TrayModel.LITRE_J_PER_K * model.liquidL());
  }
}
