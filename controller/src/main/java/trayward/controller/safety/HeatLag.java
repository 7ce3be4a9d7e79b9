package trayward.controller.safety;

/**
 * Commanded heat as a lagging plate probe would feel it: three first-order filters over the lags
 * such a probe can have, and what they did on average between two readings. A value.
 *
 * <p>The plate's equation is linear, so the lagged plate temperature obeys it too, with heat and
 * bath lagged the same way. A reading is taken 0.75 s before it arrives (12-bit conversion):
 * counted as lag.
 *
 * @param quick share of full heat through the shortest lag
 * @param middle the same through the middle one
 * @param slow the same through the longest
 * @param sum integral of {@code middle} since the last reading, s
 * @param spread integral of quick less slow since then, s
 * @param elapsedS time in those sums, s
 * @param offS time since heat was last commanded, s
 */
record HeatLag(
    double quick,
    double middle,
    double slow,
    double sum,
    double spread,
    double elapsedS,
    double offS) {

  /** At power-up nobody knows when heat was last on: counted from there. */
  static final HeatLag START = new HeatLag(0, 0, 0, 0, 0, 0, 0);

  /** Lags, s: a bare probe on a plate 2, a clamped one in paste up to 8; with the reading's age. */
  private static final Lag QUICK = Lag.of(2.7);

  private static final Lag MIDDLE = Lag.of(5);
  private static final Lag SLOW = Lag.of(9.5);

  private static final double LONG_S = 1e6; // saturates: ages here are compared with minutes

  HeatLag next(boolean commanded, double dt) {
    double u = commanded ? 1 : 0;
    double q = quick + (u - quick) * QUICK.share(dt);
    double m = middle + (u - middle) * MIDDLE.share(dt);
    double l = slow + (u - slow) * SLOW.share(dt);
    double off = commanded ? 0 : Math.min(LONG_S, offS + dt);
    return new HeatLag(q, m, l, sum + m * dt, spread + (q - l) * dt, elapsedS + dt, off);
  }

  HeatLag taken() {
    return new HeatLag(quick, middle, slow, 0, 0, 0, offS);
  }

  /** Mean of the lagged heat since the last reading. */
  double mean() {
    return elapsedS > 0 ? sum / elapsedS : middle;
  }

  /** Mean of what the lag of a probe leaves in doubt of it. */
  double apart() {
    return elapsedS > 0 ? spread / elapsedS : quick - slow;
  }

  static double share(double dt, double timeConstantS) {
    return -Math.expm1(-dt / timeConstantS);
  }
}
