package trayward.controller.safety;

import org.jspecify.annotations.Nullable;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;

/**
 * What is known beside a run's readings of the plate: how fast it was seen to cool into its bath,
 * whether the bath reading fell as no bath falls, and what one probe said when another began to
 * stand still. A value.
 *
 * @param coolingPerS cooling rate of the plate as an earlier run learned it, 1/s; 0 for none
 * @param fellK how far the bath reading fell of late faster than a bath can, K
 * @param bathThenC bath reading when the plate reading last moved, °C
 * @param secondThenC reading of the second bath probe when the first last moved, °C
 */
record PlateMemory(double coolingPerS, double fellK, double bathThenC, double secondThenC) {

  static final PlateMemory START = new PlateMemory(0, 0, Double.NaN, Double.NaN);

  /** A run has learned its plate when it lasted so long, s: heat comes after some 75 s of it. */
  private static final double LEARNED_S = 120;

  /** A sheet or a jug cools a bath by less at once, K. */
  private static final double FELL_K = 5;

  /** A probe in air has come to rest when a fall is forgotten, s. */
  private static final Lag FORGETS = Lag.of(600);

  /** No bath moves by itself like this without heat, K/s: noise of a slope is 0.03 at most. */
  private static final double BATH_K_PER_S = 0.05;

  /** Nor does a plate rise like this when heat has been off for a while, K/s. */
  private static final double RISES_K_PER_S = 0.05;

  /** A plate 10 K over its bath falls by less where it forgets in 28 s, K/s. */
  private static final double FALLS_K_PER_S = 0.3;

  /** An offset that jumps is more, K: probes within limits are 0.5 K off. */
  private static final double STIRRED_K = 0.5;

  /** A probe in air that has lost 3 K of 4 still falls by 0.01 K/s. */
  private static final double FALLING_K_PER_S = 0.006;

  /** Beyond noise of a slope over 6 s, K/s. */
  private static final double LEAVES_K_PER_S = 0.05;

  /** A bath that was poured into unseen may be this many times as far below its plate. */
  private static final double UNSEEN = 3;

  /** Where none was learned: 700 J/K over 25 W/K, 1/s. */
  private static final double FASTEST_PER_S = 1.0 / 28;

  /** What heat left in a lagging probe has settled, s. */
  private static final double OFF_S = 30;

  /** Noise of both readings, rounded to 1/16 K, is far less, K. */
  private static final double MOVED_K = 0.5;

  PlateMemory next(
      ThermalInput in,
      boolean bathNews,
      ReadingTrail bath,
      ConstantSpan bathSpan,
      ConstantSpan plateSpan,
      @Nullable PlateBank before,
      @Nullable PlateBank now,
      TrayModel model,
      RoomModel room) {
    boolean ends = now == null || now.side() != 0;
    boolean learned = before != null && ends && before.side() == 0 && before.ageS() >= LEARNED_S;
    double cooling = before != null && learned ? before.coolingPerS() : coolingPerS;
    double kept = fellK * (1 - FORGETS.share(in.elapsedS()));
    boolean falls = bathNews && bath.full() && bath.fallsBeyond(model, room);
    double fell = falls ? Math.min(100, kept - bath.slope() * bath.stepS()) : kept;
    boolean plateStands = Double.compare(plateSpan.celsius(), in.plate().celsius()) == 0;
    boolean bathStands = Double.compare(bathSpan.celsius(), in.bath().celsius()) == 0;
    boolean unknown = Double.isNaN(secondThenC);
    return new PlateMemory(
        cooling,
        fell,
        plateStands ? bathThenC : in.bath().celsius(),
        bathStands && !unknown ? secondThenC : in.second().celsius());
  }

  /** How far the bath has risen since the plate reading last moved, K. */
  double bathRoseK(ThermalInput in) {
    return in.bath().celsius() - bathThenC;
  }

  /** The second bath probe has grown warmer while the first gave one value. */
  boolean secondMoved(ThermalInput in) {
    return in.second().celsius() - secondThenC >= MOVED_K;
  }

  /**
   * Whether the plate reading falls as no plate falls towards this bath, nor towards one that was
   * poured into unseen: its probe leaves it.
   */
  boolean leaves(ReadingTrail plate, ReadingTrail bath) {
    double cooling = coolingPerS > 0 ? coolingPerS : FASTEST_PER_S;
    double gapK = Math.max(1, plate.median() - bath.median());
    return plate.slope() < -LEAVES_K_PER_S - UNSEEN * cooling * gapK;
  }

  /**
   * Whether the bath probe is surely in liquid: it reads what no room has, and neither falls nor
   * has fallen as one in air.
   */
  boolean inLiquid(double bathC, ConstantSpan bath) {
    return bathC >= RoomLimit.MAX_READ_C && fellK < STIRRED_K && bath.slope() > -FALLING_K_PER_S;
  }

  /** Whether the bath reading was seen to fall as only a probe out of the liquid falls. */
  boolean bathFell() {
    return fellK >= FELL_K;
  }

  /**
   * Before any heat of a run: a probe is being moved, or comes back from where it was, or a jug is
   * poured. Nothing of the tray is learned from that.
   */
  static boolean restless(HeatLag heat, ReadingTrail bath, ReadingTrail plate) {
    boolean plateMoves =
        heat.offS() >= OFF_S && (plate.slope() > RISES_K_PER_S || plate.slope() < -FALLS_K_PER_S);
    return plateMoves || Math.abs(bath.slope()) > BATH_K_PER_S;
  }
}
