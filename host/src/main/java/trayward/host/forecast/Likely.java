package trayward.host.forecast;

import org.hipparchus.distribution.continuous.TDistribution;

/**
 * Where one value is expected, and how sure: Student's t, moved and stretched. Immutable.
 *
 * @param centre middle and median
 * @param scale its scale, above 0
 * @param freedom degrees of freedom, above 0
 */
record Likely(double centre, double scale, double freedom) {

  /** Share below a value. */
  double below(double value) {
    return new TDistribution(freedom).cumulativeProbability((value - centre) / scale);
  }

  /** Share above a value; by symmetry, so that it stays exact far out. */
  double above(double value) {
    return new TDistribution(freedom).cumulativeProbability((centre - value) / scale);
  }

  /** The value that a share, above 0 and below 1, lies below. */
  double quantile(double share) {
    return centre + scale * new TDistribution(freedom).inverseCumulativeProbability(share);
  }

  /**
   * The value that a share lies below of what lies beyond a floor: the quantile of the distribution
   * truncated there, taken from its upper tail, so that it stays exact far out.
   */
  double quantileBeyond(double floor, double share) {
    double tail = (1 - share) * above(floor);
    double upper = centre - scale * new TDistribution(freedom).inverseCumulativeProbability(tail);
    return Math.max(floor, upper);
  }
}
