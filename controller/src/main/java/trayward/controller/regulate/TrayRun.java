package trayward.controller.regulate;

/**
 * A believed tray run forward second by second, with its probes' lags. Mutable; one thread.
 *
 * <p>Midpoint method with steps of a second: the plate's time constant is above 20 s, so a step
 * errs by far less than a probe can resolve. A lag is followed exactly for an input that is
 * straight over the step.
 */
final class TrayRun {

  /** Less than this is never left of a bath, as a share: keeps the equations finite. */
  static final double LEAST_SHARE = 0.05;

  private final TrayRates rates;
  private final double bathLagS;
  private final double plateLagS;
  private final double bathKeep;
  private final double plateKeep;
  private final double wallHalf;
  private final double wallWhole;
  double plateC;
  double bathC;
  double wallC;
  double plateSensedC;
  double bathSensedC;

  /** Liquid left, as a share of what was there at the beginning. */
  double share = 1;

  TrayRun(TrayRates rates, double bathLagS, double plateLagS, double plateC, double bathC) {
    this.rates = rates;
    this.bathLagS = bathLagS;
    this.plateLagS = plateLagS;
    this.bathKeep = Math.exp(-1 / bathLagS);
    this.plateKeep = Math.exp(-1 / plateLagS);
    // Exact for a bath that stands: a thin wall follows at once, in half a second as in a whole.
    this.wallHalf = -Math.expm1(-0.5 * rates.wallPerS());
    this.wallWhole = -Math.expm1(-rates.wallPerS());
    this.plateC = plateC;
    this.bathC = bathC;
    this.wallC = bathC;
    this.plateSensedC = plateC;
    this.bathSensedC = bathC;
  }

  /** A second with the heater on for {@code u} of it. */
  void second(double u) {
    double p = plateC;
    double b = bathC;
    double pm = p + 0.5 * rates.plateRate(u, p, b);
    double bm = b + 0.5 * rates.bathRate(p, b, wallC) / share;
    plateC = p + rates.plateRate(u, pm, bm);
    double wm = wallC + (b - wallC) * wallHalf;
    double evaporation = rates.evaporationRate(bm);
    bathC = b + rates.bathRate(pm, bm, wm, evaporation) / share;
    wallC += (bm - wallC) * wallWhole;
    share = Math.max(LEAST_SHARE, share - rates.vanishingPerS(bm, evaporation));
    plateSensedC = lagged(plateSensedC, p, plateC, plateLagS, plateKeep);
    bathSensedC = lagged(bathSensedC, b, bathC, bathLagS, bathKeep);
  }

  /** y' = (x - y)/lag for x straight from {@code x0} to {@code x1} over a second. */
  private static double lagged(double y, double x0, double x1, double lagS, double keep) {
    double slope = x1 - x0;
    double steady = x0 - slope * lagS;
    return steady + slope + (y - steady) * keep;
  }
}
