package trayward.controller.safety;

import trayward.controller.regulate.TrayModel;

/**
 * Commanded heat as the quickest and the slowest plate pass it on to the bath, and what a bath
 * falls short of its course when it is taken away. A value.
 *
 * <p>The tray is linear in its heat. A course seen while the plate passed on {@code F} of the power
 * {@code P}, and {@code E} of it at the end, is missed after {@code t} without heat by
 *
 * <pre>
 *   P / Cb (F t - E T (1 - exp(-t / T)))
 * </pre>
 *
 * <p>T is the plate's capacity over its coupling. With the least P, the most Cb and both ends of T
 * this is the least that a sound tray can show.
 *
 * @param quick share of full heat through the quickest plate, in blocks
 * @param slow the same through the slowest
 * @param quickNow the same now
 * @param slowNow the same now
 */
record HeatMissed(Blocks quick, Blocks slow, double quickNow, double slowNow) {

  static final HeatMissed START = new HeatMissed(Blocks.START, Blocks.START, 0, 0);

  /** A plate passes heat on within capacity over coupling, s: 700 J/K over 25 W/K. */
  private static final Lag QUICK = Lag.of(28);

  /** At most: 1900 J/K over 11 W/K. */
  private static final Lag SLOW = Lag.of(170);

  private static final double POWER_MIN = PlateGrid.POWER_MIN;

  /** Pours may have doubled the liquid, and small trays take a jug or two besides, L. */
  private static final double LIQUID_MAX = 2;

  private static final double JUGS_L = 0.6;

  HeatMissed next(boolean commanded, double dt) {
    double u = commanded ? 1 : 0;
    double q = quickNow + (u - quickNow) * QUICK.share(dt);
    double s = slowNow + (u - slowNow) * SLOW.share(dt);
    return new HeatMissed(quick.next(q, dt), slow.next(s, dt), q, s);
  }

  /** With the same plates and a course that begins anew. */
  HeatMissed anew() {
    return new HeatMissed(Blocks.START, Blocks.START, quickNow, slowNow);
  }

  /** What would be missed of the course of the last {@code back} blocks if heat ended now. */
  Least least(TrayModel model, int back) {
    double most = TrayModel.LITRE_J_PER_K * (LIQUID_MAX * model.liquidL() + JUGS_L);
    return new Least(
        POWER_MIN * model.heaterW() / most,
        quick.mean(0, back),
        quickNow,
        slow.mean(0, back),
        slowNow);
  }

  /**
   * What the weakest sound tray misses.
   *
   * @param kelvinPerS what full heat warms it by, K/s
   * @param quick share passed on in the course by the quickest plate
   * @param quickEnd the same at its end
   * @param slow share passed on in the course by the slowest plate
   * @param slowEnd the same at its end
   */
  record Least(double kelvinPerS, double quick, double quickEnd, double slow, double slowEnd) {

    static final Least NONE = new Least(0, 0, 0, 0, 0);

    /** After {@code t} seconds without heat, K. */
    double kelvin(double t) {
      double q = quick * t - quickEnd * QUICK.timeS() * QUICK.share(t);
      double s = slow * t - slowEnd * SLOW.timeS() * SLOW.share(t);
      return kelvinPerS * Math.min(q, s);
    }
  }
}
