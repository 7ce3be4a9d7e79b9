package trayward.controller.safety;

/**
 * A plate hotter than its bath that grows hotter still with heat commanded off: heat arrives
 * through a contact (SR-11). Needs no model. A value.
 *
 * <p>A heater's rise goes on: three seconds of it are much like the three before. A probe that was
 * put back, thawed or began to lie leaps, or comes to rest with its own lag of some seconds: such a
 * rise is over before the next three seconds are, and is counted from its end.
 *
 * @param lowestC lowest plate reading since it counts, °C; NaN where it does not
 * @param leaps the reading has only just begun to rise fast: what follows tells heat from a leap
 */
record OffRise(double lowestC, boolean leaps) {

  static final OffRise START = new OffRise(Double.NaN, false);

  /** A lagging probe on a dry plate still climbs for a while after heat ends, s. */
  private static final double SETTLE_S = 20;

  /** Two probes within 0.5 K each, and a little: hotter than the bath beyond doubt, K. */
  private static final double HOTTER_K = 1.5;

  /** Noise and what is left of the lag of a dry plate, K. */
  private static final double RISE_K = 1;

  /** The same where hands may be in the tray: after-run and lockout, K. */
  private static final double RISE_RESTING_K = 3;

  /** Readings compared with as many before: three seconds, as many as the trail holds twice. */
  private static final int BACK = 3;

  /** Rises over them that are told apart, K: four times the noise of two medians. */
  private static final double FAST_K = 0.6;

  /** A rise just begun: nearly as much again has not been seen before it. */
  private static final double BEGINS = 0.9;

  /**
   * Three seconds of a probe that comes to rest, with 8 s at most, are 0.69 of the three before; of
   * a heated plate, with 28 s at least, 0.9.
   */
  private static final double SETTLES = 0.85;

  OffRise next(HeatLag heat, ReadingTrail plate, ReadingTrail bath) {
    double now = plate.median();
    boolean counts = heat.offS() >= SETTLE_S && now > Math.max(bath.median(), 0) + HOTTER_K;
    if (!counts) {
      return START;
    }
    double late = now - plate.median(BACK);
    double early = plate.median(BACK) - plate.median(2 * BACK);
    boolean settles = early >= FAST_K && late < SETTLES * early;
    boolean leapsNow = late >= FAST_K && early < BEGINS * late;
    double low = settles || Double.isNaN(lowestC) ? now : Math.min(lowestC, now);
    return new OffRise(low, leapsNow);
  }

  boolean found(double plateC, State state) {
    double enough =
        switch (state) {
          case PROVING, PURGING, READY, HEATING, HOLDING -> RISE_K;
          case AFTER_RUN, LOCKOUT -> RISE_RESTING_K;
          case OFF -> Double.POSITIVE_INFINITY; // the tray may be filled with hot water
        };
    return !leaps && plateC - lowestC >= enough;
  }
}
