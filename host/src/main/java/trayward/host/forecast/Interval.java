package trayward.host.forecast;

/**
 * An interval around an expected value. Immutable.
 *
 * @param low lower end
 * @param expected the middle
 * @param high upper end
 */
public record Interval(double low, double expected, double high) {

  static Interval around(double expected, double half) {
    return new Interval(expected - half, expected, expected + half);
  }

  /** Whether a value lies in it. */
  public boolean holds(double value) {
    return value >= low && value <= high;
  }
}
