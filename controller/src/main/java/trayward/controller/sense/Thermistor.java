package trayward.controller.sense;

import java.util.Optional;

/** A resistor that falls as it warms, by one of the two usual equations. Immutable, pure. */
public sealed interface Thermistor {

  /** 0 °C in kelvin. */
  double ZERO_K = 273.15;

  /** The temperature of a resistance, °C; NaN where the equation has none. */
  double celsius(double ohm);

  /** The resistance at a temperature above absolute zero, Ω; of one that falls as it warms. */
  double ohm(double celsius);

  /** Whether it falls as it warms at every resistance that a transmitter can report. */
  boolean falls();

  /**
   * The two constants of a data sheet: R = R25 exp(β (1/T - 1/298.15 K)). Good to about a kelvin
   * within 0 to 60 °C, since β itself changes with temperature.
   *
   * @param r25Ohm resistance at 25 °C, Ω
   * @param betaK β, K
   */
  record Beta(double r25Ohm, double betaK) implements Thermistor {

    private static final double T25_K = 298.15;

    @Override
    public double celsius(double ohm) {
      return finite(1 / (Math.log(ohm / r25Ohm) / betaK + 1 / T25_K) - ZERO_K);
    }

    @Override
    public double ohm(double celsius) {
      return r25Ohm * Math.exp(betaK * (1 / (celsius + ZERO_K) - 1 / T25_K));
    }

    @Override
    public boolean falls() {
      return r25Ohm > 0 && betaK > 0;
    }
  }

  /**
   * 1/T = a + b ln R + c (ln R)³, T in kelvin, R in ohm (Steinhart and Hart, Deep-Sea Research 15,
   * 1968). Within some hundredths of a kelvin over 100 K.
   *
   * @param a 1/K
   * @param b 1/K
   * @param c 1/K
   */
  record SteinhartHart(double a, double b, double c) implements Thermistor {

    /** Ends of what is looked at for {@link #falls}, ln Ω: 10 Ω to 10 MΩ. */
    private static final double LOW = Math.log(10);

    private static final double HIGH = Math.log(1e7);

    @Override
    public double celsius(double ohm) {
      double log = Math.log(ohm);
      return finite(1 / (a + log * (b + c * log * log)) - ZERO_K);
    }

    /** By halving, since the cubic's own roots lose digits: 60 halvings reach the last bit. */
    @Override
    public double ohm(double celsius) {
      double cold = 2 * HIGH;
      double hot = 0;
      for (int i = 0; i < 60; i++) {
        double log = (hot + cold) / 2;
        boolean warmer = 1 / (a + log * (b + c * log * log)) - ZERO_K > celsius;
        hot = warmer ? log : hot;
        cold = warmer ? cold : log;
      }
      return Math.exp((hot + cold) / 2);
    }

    @Override
    public boolean falls() {
      return b + 3 * c * LOW * LOW > 0 && b + 3 * c * HIGH * HIGH > 0;
    }

    /**
     * The equation through three points of a table, exactly; empty where two of them are one or no
     * falling resistor has them.
     */
    public static Optional<SteinhartHart> through(Point one, Point two, Point three) {
      double l1 = Math.log(one.ohm());
      double l2 = Math.log(two.ohm());
      double l3 = Math.log(three.ohm());
      double y1 = 1 / (one.celsius() + ZERO_K);
      double g2 = (1 / (two.celsius() + ZERO_K) - y1) / (l2 - l1);
      double g3 = (1 / (three.celsius() + ZERO_K) - y1) / (l3 - l1);
      double c = (g3 - g2) / (l3 - l2) / (l1 + l2 + l3);
      double b = g2 - c * (l1 * l1 + l1 * l2 + l2 * l2);
      double a = y1 - l1 * (b + l1 * l1 * c);
      SteinhartHart found = new SteinhartHart(a, b, c);
      return Double.isFinite(a) && found.falls() ? Optional.of(found) : Optional.empty();
    }
  }

  /**
   * A line of a resistance table.
   *
   * @param celsius temperature, °C
   * @param ohm resistance there, Ω
   */
  record Point(double celsius, double ohm) {}

  private static double finite(double celsius) {
    return Double.isFinite(celsius) && celsius > -ZERO_K ? celsius : Double.NaN;
  }
}
