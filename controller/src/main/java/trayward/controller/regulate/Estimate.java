package trayward.controller.regulate;

/**
 * A positive number with its uncertainty. Immutable.
 *
 * @param value best estimate
 * @param doubt standard deviation of its natural logarithm: about its relative standard uncertainty
 */
public record Estimate(double value, double doubt) {

  /**
   * Coverage factor of what is shown: about 95 % for a normal distribution (JCGM 100:2008, 6.3).
   */
  public static final double COVERAGE = 2;

  /** Expanded uncertainty, k = 2, in the unit of {@link #value}. */
  public double expanded() {
    return COVERAGE * doubt * value;
  }
}
