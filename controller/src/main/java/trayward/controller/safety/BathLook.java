package trayward.controller.safety;

import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;

/**
 * A bath whose heat is held off, beside the course it had under heat. A value.
 *
 * @param lookS time heat has been held off, s
 * @param fromC the course when it began, °C
 * @param slope the same, K/s
 * @param least what a sound tray misses at least
 * @param bendK how far the course bends by itself, because a colder bath loses less, K
 * @param coolsK how far the best kept bath cools in it without heat, K
 */
record BathLook(
    double lookS, double fromC, double slope, HeatMissed.Least least, double bendK, double coolsK) {

  /** What a look found. */
  enum Answer {
    /** Too early to say. */
    OPEN,
    /** The bath misses the heat: it had been arriving. */
    MISSED,
    /** Something else changed its course. */
    UNCLEAR,
    /** The weakest sound tray would have missed it: nothing arrived. */
    NOT_MISSED,
    /** Nor did a warm bath cool: heat arrived in the look as before, through a contact. */
    HEATED
  }

  /** No look is begun that would not end in this time, s. */
  private static final double ENDS_S = 320;

  /** A look that took longer taught nothing, s. */
  private static final double LONGEST_S = 417;

  /** Lag of a bath probe, 15 s at most, and the age of its reading, s. */
  private static final double PROBE_S = 17;

  /** A bath that falls short by this feels that heat is off, K: three times the doubt. */
  private static final double SHORT_K = 0.15;

  /** A look ends when even the weakest sound tray would be short by this, K. */
  private static final double SURE_K = 0.3;

  /**
   * A fall bends up by itself, because a colder bath loses less: so much less a sound tray would be
   * short. The share is under 1 because the least that it misses counts twice the liquid.
   */
  private static final double BEND_SHARE = 0.5;

  /** A fall that halves by itself was covered, or poured into. */
  private static final double HALVED = 0.5;

  private static final double HALVED_K = 0.1;

  /** Dry losses of 1.5 W/K for 2.5, an eighth more liquid than declared and what was topped up. */
  private static final double LOSS_MIN = 0.6;

  private static final double LIQUID_MAX = 1.25;

  /** A believed room is off by so much, K. */
  private static final double ROOM_DOUBT_K = 5;

  /** A fall that is not to be overlooked, K, and the share under which it did not come. */
  private static final double COOLS_K = 0.2;

  private static final double COOLS_SHARE = 0.5;

  /** Of the course of the last {@code back} blocks, which ends now. */
  static BathLook begin(Blocks bath, int back, HeatMissed.Least least) {
    double slope = bath.slope(0, back);
    double foot = bath.mean(0, back) + slope * back * Blocks.BLOCK_S / 2;
    return new BathLook(0, foot, slope, least, 0, 0);
  }

  /** Whether heat has been passed on long enough for a look to end in time. */
  boolean ends(TrayModel model, RoomModel room) {
    double fallKs = Math.max(0, -slope) * ENDS_S * ENDS_S / 2;
    return sure(ENDS_S + PROBE_S, bendsPerS(fromC, model, room) * fallKs);
  }

  private boolean sure(double timeS, double bend) {
    double missedK = least.kelvin(Math.max(0, timeS - PROBE_S));
    return missedK >= SURE_K + BEND_SHARE * Math.max(0, bend);
  }

  /** After one more block, whose bath had {@code now} °C in its middle and the one before. */
  BathLook next(double now, TrayModel model, RoomModel room) {
    double bend = bendsPerS(now, model, room) * (fromC - now) * Blocks.BLOCK_S;
    double cools = coolsPerS(now, model, room) * Blocks.BLOCK_S;
    return new BathLook(lookS + Blocks.BLOCK_S, fromC, slope, least, bendK + bend, coolsK + cools);
  }

  /** What is known by the mean of the newest two blocks, {@code now} °C. */
  Answer answer(double now) {
    if (lookS < 2 * Blocks.BLOCK_S) {
      return Answer.OPEN;
    }
    double course = slope * (lookS - Blocks.BLOCK_S);
    if (fromC + course - now >= SHORT_K) {
      return Answer.MISSED;
    }
    if (fromC - now < -HALVED * course - HALVED_K || lookS > LONGEST_S) {
      return Answer.UNCLEAR;
    }
    if (!sure(lookS, bendK)) {
      return Answer.OPEN;
    }
    boolean warm = coolsK >= COOLS_K && fromC - now < COOLS_SHARE * coolsK;
    return warm ? Answer.HEATED : Answer.NOT_MISSED;
  }

  /** A covered bath without heat, in a room warmer than believed and fuller than declared, K/s. */
  private static double coolsPerS(double bathC, TrayModel model, RoomModel room) {
    double warmerK = bathC < RoomLimit.MAX_READ_C ? 0 : bathC - room.airC() - ROOM_DOUBT_K;
    double leastW = LOSS_MIN * model.bathLossWPerK() * Math.max(0, warmerK);
    return leastW / (TrayModel.LITRE_J_PER_K * LIQUID_MAX * model.liquidL());
  }

  /** Loss that a bath colder by 1 K saves, over its capacity, 1/s. */
  private static double bendsPerS(double bathC, TrayModel model, RoomModel room) {
    double perK = model.bathLossW(bathC + 0.5, room) - model.bathLossW(bathC - 0.5, room);
    return perK / (TrayModel.LITRE_J_PER_K * model.liquidL());
  }
}
