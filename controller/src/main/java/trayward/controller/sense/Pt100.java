package trayward.controller.sense;

/**
 * A platinum resistance thermometer of 100 Ω at 0 °C after IEC 60751: the equation of Callendar
 * and, below 0 °C, Van Dusen, and its inverse. Pure.
 */
public final class Pt100 {

  private static final double R0_OHM = 100;

  // Coefficients of IEC 60751, 1/K, 1/K², 1/K⁴.
  private static final double A = 3.9083e-3;
  private static final double B = -5.775e-7;
  private static final double C = -4.183e-12;

  /** Ends of the standard's range, °C. */
  private static final double MIN_C = -200;

  private static final double MAX_C = 850;

  /** Newton's method from a start within 3 K doubles its digits: five steps reach the last bit. */
  private static final int STEPS = 6;

  private Pt100() {}

  /** Tolerance classes of IEC 60751 for what is bought without a calibration. */
  public enum Tolerance {
    /** ±(0.15 K + 0.002 |t|). */
    A(0.15, 0.002),
    /** ±(0.3 K + 0.005 |t|). */
    B(0.3, 0.005);

    private final double atZeroK;
    private final double share;

    Tolerance(double atZeroK, double share) {
      this.atZeroK = atZeroK;
      this.share = share;
    }

    /** The most that a sensor of this class is off by at a temperature, K. */
    public double kelvin(double celsius) {
      return atZeroK + share * Math.abs(celsius);
    }
  }

  /** The resistance at a temperature, Ω; NaN outside of -200 to 850 °C. */
  public static double ohm(double celsius) {
    if (!(celsius >= MIN_C && celsius <= MAX_C)) {
      return Double.NaN;
    }
    return R0_OHM * ratio(celsius);
  }

  private static double ratio(double t) {
    double warm = 1 + t * (A + t * B);
    return t >= 0 ? warm : warm + C * (t - 100) * t * t * t;
  }

  private static double slope(double t) {
    double warm = A + 2 * B * t;
    return t >= 0 ? warm : warm + C * (4 * t - 300) * t * t;
  }

  /** The temperature of a resistance, °C; NaN where no temperature of the range has it. */
  public static double celsius(double ohm) {
    double ratio = ohm / R0_OHM;
    if (!(ratio >= ratio(MIN_C) && ratio <= ratio(MAX_C))) {
      return Double.NaN;
    }
    double t = (-A + Math.sqrt(A * A - 4 * B * (1 - ratio))) / (2 * B);
    if (t >= 0) {
      return t;
    }
    for (int i = 0; i < STEPS; i++) {
      t -= (ratio(t) - ratio) / slope(t);
    }
    return t;
  }
}
