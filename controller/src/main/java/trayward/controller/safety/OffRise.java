package trayward.controller.safety;

/**
 * A plate hotter than its bath that grows hotter still with heat commanded off: heat arrives
 * through a contact (SR-11). Needs no model. A value.
 *
 * @param lowestC lowest plate reading since it counts, °C; NaN where it does not
 */
record OffRise(double lowestC) {

  static final OffRise START = new OffRise(Double.NaN);

  /** A lagging probe on a dry plate still climbs for a while after heat ends, s. */
  private static final double SETTLE_S = 20;

  /** Two probes within 0.5 K each, and a little: hotter than the bath beyond doubt, K. */
  private static final double HOTTER_K = 1.5;

  /** Noise and what is left of the lag of a dry plate, K. */
  private static final double RISE_K = 1;

  /** The same where hands may be in the tray: after-run and lockout, K. */
  private static final double RISE_RESTING_K = 3;

  OffRise next(HeatLag heat, ReadingTrail plate, ReadingTrail bath) {
    boolean counts =
        heat.offS() >= SETTLE_S && plate.median() > Math.max(bath.median(), 0) + HOTTER_K;
    double now = plate.median();
    return counts ? new OffRise(Double.isNaN(lowestC) ? now : Math.min(lowestC, now)) : START;
  }

  boolean found(double plateC, State state) {
    double enough =
        switch (state) {
          case PROVING, PURGING, READY, HEATING, HOLDING -> RISE_K;
          case AFTER_RUN, LOCKOUT -> RISE_RESTING_K;
          case OFF -> Double.POSITIVE_INFINITY; // the tray may be filled with hot water
        };
    return plateC - lowestC >= enough;
  }
}
