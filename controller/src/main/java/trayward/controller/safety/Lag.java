package trayward.controller.safety;

/**
 * A first-order lag of fixed time constant. Scans are alike, so that the exponential of one is
 * kept. Immutable.
 *
 * @param timeS time constant, s
 * @param ofOneScan share of its way that it goes in one scan on time
 */
record Lag(double timeS, double ofOneScan) {

  private static final double SCAN_S = Interlock.PERIOD_MS / 1000.0;

  static Lag of(double timeS) {
    return new Lag(timeS, HeatLag.share(SCAN_S, timeS));
  }

  /** Share of its way that it goes in {@code dt} seconds. */
  double share(double dt) {
    return dt == SCAN_S ? ofOneScan : HeatLag.share(dt, timeS);
  }
}
