package trayward.controller.safety;

import org.jspecify.annotations.Nullable;
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
 * @param look heat is held off; null where it is not
 * @param restS time until the next look, s
 * @param soundSlope slope under heat that the last look found to be arriving, K/s
 * @param failed a look ended and no heat was missed
 * @param heated it ended, and the bath was warm and did not cool: heat came all the while
 */
record BlindLook(
    Blocks bath,
    HeatMissed heat,
    double neededShare,
    @Nullable BathLook look,
    double restS,
    double soundSlope,
    boolean failed,
    boolean heated) {

  static final BlindLook START =
      new BlindLook(
          Blocks.START, HeatMissed.START, 0, null, 0, Double.NEGATIVE_INFINITY, false, false);

  /** Time over which heat needed of late is remembered, s. */
  private static final Lag NEEDED = Lag.of(300);

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

  /** Evaporation may be twice the believed one, and the liquid a fifth less. */
  private static final double LOSS_MAX = 2;

  private static final double LIQUID_MIN = 0.8;

  /** After a look that heat was seen to be missed in, s: the next is in six minutes. */
  private static final double REST_S = 360;

  /** Unless the bath then falls faster than it did before that look, K/s. */
  private static final double WORSE_K_PER_S = 0.003;

  boolean looking() {
    return look != null;
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
            neededShare + (u - neededShare) * NEEDED.share(dt),
            look,
            Math.max(0, restS - dt),
            soundSlope,
            failed,
            heated);
    if (!now.bath.filled()) {
      return now;
    }
    if (look != null) {
      return now.looked(look, model, room);
    }
    return wanted && now.bath.count() >= MINUTE ? now.begun(model, room) : now;
  }

  private BlindLook begun(TrayModel model, RoomModel room) {
    if (!should(bath.slope(0, MINUTE), model, room)) {
      return this;
    }
    int back = straightBack();
    BathLook begins = BathLook.begin(bath, back, heat.least(model, back));
    return begins.ends(model, room) ? with(begins) : this;
  }

  private BlindLook with(BathLook now) {
    return new BlindLook(bath, heat, neededShare, now, restS, soundSlope, failed, heated);
  }

  /** How many blocks the course has been straight: two minutes, or one. */
  private int straightBack() {
    boolean both =
        bath.count() >= 2 * MINUTE
            && Math.abs(bath.slope(0, MINUTE) - bath.slope(MINUTE, 2 * MINUTE))
                < STRAIGHTER_K_PER_S;
    return both ? 2 * MINUTE : MINUTE;
  }

  private boolean should(double slope, TrayModel model, RoomModel room) {
    double bent = bath.slope(0, MINUTE / 2) - bath.slope(MINUTE / 2, MINUTE);
    boolean rests = restS > 0 && slope > soundSlope - WORSE_K_PER_S;
    return !rests
        && Math.abs(bent) < STRAIGHT_K_PER_S
        && !poured(slope, model, room)
        && (idle(slope) || falls(slope));
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
    double mostW = LOSS_MAX * model.bathLossW(bath.mean(0, MINUTE), room);
    double leastJPerK = LIQUID_MIN * TrayModel.LITRE_J_PER_K * model.liquidL();
    return slope < -mostW / leastJPerK - STRAIGHT_K_PER_S;
  }

  private BlindLook looked(BathLook before, TrayModel model, RoomModel room) {
    double c = bath.mean(0, 2);
    BathLook now = before.next(c, model, room);
    return switch (now.answer(c)) {
      case OPEN -> with(now);
      case MISSED -> ended(REST_S, before.slope(), false, false);
      case UNCLEAR -> ended(0, soundSlope, false, false);
      case NOT_MISSED -> ended(0, soundSlope, true, false);
      case HEATED -> ended(0, soundSlope, false, true);
    };
  }

  private BlindLook ended(double rest, double sound, boolean fails, boolean heats) {
    return new BlindLook(Blocks.START, heat.anew(), neededShare, null, rest, sound, fails, heats);
  }
}
