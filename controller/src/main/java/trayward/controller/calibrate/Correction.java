package trayward.controller.calibrate;

/**
 * What makes the reading of one probe right: a straight line, bounded. Immutable.
 *
 * <p>Whatever the line says, no reading is moved by more than {@link #BOUND_K}: a wrong calibration
 * can raise the true temperature at which a limit acts by that much and no more (SR-06, SR-08).
 *
 * @param slope corrected kelvin for each kelvin read, 1 where unknown
 * @param offsetK what is added at a reading of 0 °C, K
 */
public record Correction(double slope, double offsetK) {

  /** A probe nobody calibrated. */
  public static final Correction NONE = new Correction(1, 0);

  /**
   * Farthest that a reading is moved, K: four times what the data sheet allows a sound probe (±0.5
   * K), and no more than two bath probes may disagree by (SR-09). What is further off is broken.
   */
  public static final double BOUND_K = 2;

  /**
   * Bounds of the slope. The data sheet's ±0.5 K at both ends of -10 to 85 °C leave a straight line
   * 0.989 to 1.011; twice that is no sound probe.
   */
  public static final double SLOPE_MIN = 0.98;

  /** See {@link #SLOPE_MIN}. */
  public static final double SLOPE_MAX = 1.02;

  /** Warmest place a probe is calibrated for, °C: the plate in warm-up. The bound holds here. */
  static final double WARMEST_C = 70;

  /** The corrected temperature, °C; NaN stays NaN. */
  public double apply(double rawC) {
    return rawC + shiftK(rawC);
  }

  /** What is added to a reading, K; never beyond the bound. */
  public double shiftK(double rawC) {
    double line = (slope - 1) * rawC + offsetK;
    return Math.max(-BOUND_K, Math.min(BOUND_K, line));
  }

  /** Whether a sound probe can need it; a line that is no number cannot be. */
  public boolean plausible() {
    return slopePlausible() && within(offsetK) && within((slope - 1) * WARMEST_C + offsetK);
  }

  boolean slopePlausible() {
    return slope >= SLOPE_MIN && slope <= SLOPE_MAX;
  }

  private static boolean within(double shiftK) {
    return Math.abs(shiftK) <= BOUND_K;
  }
}
