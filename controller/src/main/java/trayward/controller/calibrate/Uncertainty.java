package trayward.controller.calibrate;

/** How far a reading may be from the truth. Pure. */
public final class Uncertainty {

  /** Coverage factor of every expanded uncertainty of a calibrated probe: about 95 %. */
  public static final double COVERAGE = 2;

  /** A step of the probe, K: twelve bits (row B1 of the check values, data sheet). */
  static final double STEP_K = 1.0 / 16;

  /** A value somewhere within a step, uniformly: step²/12 (GUM 4.3.7, F.2.2.1). */
  static final double STEP_VARIANCE_K2 = STEP_K * STEP_K / 12;

  /**
   * What the data sheet says of a probe as bought, -10 to 85 °C, K. Limits, not a multiple of a
   * standard deviation.
   */
  public static final double DATA_SHEET_K = 0.5;

  /** The same outside of that, from memory, K. */
  private static final double DATA_SHEET_WIDE_K = 2;

  private static final double DATA_SHEET_MIN_C = -10;
  private static final double DATA_SHEET_MAX_C = 85;

  /**
   * A straight error that stays within ±0.5 K from -10 to 85 °C changes by at most a kelvin over
   * the 95 K: how wrong the slope of a probe calibrated at one temperature may be, K/K.
   */
  private static final double SLOPE_HALF_WIDTH =
      2 * DATA_SHEET_K / (DATA_SHEET_MAX_C - DATA_SHEET_MIN_C);

  /**
   * How far the true error may leave the straight line half-way between two points, K: typical
   * curves bend by about that between 0 and 70 °C (from memory).
   */
  private static final double BEND_HALF_WIDTH_K = 0.1;

  private static final double SQRT3 = Math.sqrt(3); // uniform within a half width (GUM 4.3.7)

  private Uncertainty() {}

  /** Of a probe as bought, K. */
  public static double asBoughtK(double celsius) {
    return celsius >= DATA_SHEET_MIN_C && celsius <= DATA_SHEET_MAX_C
        ? DATA_SHEET_K
        : DATA_SHEET_WIDE_K;
  }

  /** Standard uncertainty at a temperature of a probe compared at one, K. */
  static double onePointK(Point point, double celsius) {
    double away = Math.abs(celsius - point.celsius());
    double slope = Math.min(2 * DATA_SHEET_K, SLOPE_HALF_WIDTH * away) / SQRT3;
    return rootOf(sq(point.standardK()) + STEP_VARIANCE_K2 + sq(slope));
  }

  /** Standard uncertainty at a temperature of a probe compared at two, K. */
  static double twoPointsK(Point low, Point high, double celsius) {
    double t = (celsius - low.celsius()) / (high.celsius() - low.celsius());
    double bend = BEND_HALF_WIDTH_K * 4 * Math.abs(t * (1 - t)) / SQRT3;
    return rootOf(
        sq((1 - t) * low.standardK()) + sq(t * high.standardK()) + STEP_VARIANCE_K2 + sq(bend));
  }

  private static double rootOf(double variance) {
    return Math.sqrt(variance);
  }

  private static double sq(double x) {
    return x * x;
  }
}
