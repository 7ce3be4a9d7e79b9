package trayward.host.forecast;

import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.hipparchus.distribution.continuous.TDistribution;

/**
 * Where one value is expected, and how sure: Student's t, moved and stretched. Immutable.
 *
 * @param centre middle and median
 * @param scale its scale, above 0
 * @param freedom degrees of freedom, above 0
 */
record Likely(double centre, double scale, double freedom) {

  /** Accuracy of a quantile far out, in scales: far below what a second is. */
  private static final double ACCURACY = 1e-9;

  /** A solver's steps: Brent's method takes about ten, bisection from any bracket sixty. */
  private static final int STEPS_MAX = 200;

  /** Below this a share is lost to underflow soon; a tail this far out is a power by then. */
  private static final double LEAST_SHARE = 1e-250;

  private TDistribution student() {
    return new TDistribution(freedom);
  }

  /** Share below a value. */
  double below(double value) {
    return student().cumulativeProbability((value - centre) / scale);
  }

  /** Share above a value; by symmetry, so that it stays exact far out. */
  double above(double value) {
    return student().cumulativeProbability((centre - value) / scale);
  }

  /** The interval about the centre that holds a share, such as 0.8. */
  Interval middle(double level) {
    double t = student().inverseCumulativeProbability((1 + level) / 2);
    return Interval.around(centre, t * scale);
  }

  /**
   * The value that a share lies below of what lies beyond a floor: the quantile of the distribution
   * truncated there. Taken from the upper tail, so that it stays exact far out.
   */
  double quantileBeyond(double floor, double share) {
    double beyond = above(floor);
    double tail = (1 - share) * beyond;
    double from = (floor - centre) / scale;
    if (from < 0) {
      return Math.max(floor, centre - scale * student().inverseCumulativeProbability(tail));
    }
    double factor = Math.pow(1 - share, -1 / freedom);
    return tail < LEAST_SHARE
        ? centre + factor * (floor - centre)
        : centre + scale * farOut(from, tail);
  }

  /** The library's own inverse ends at an absolute accuracy, which a small share lies below. */
  private double farOut(double from, double tail) {
    TDistribution student = student();
    UnivariateFunction excess = x -> Math.log(student.cumulativeProbability(-x) / tail);
    double to = from + 1;
    while (excess.value(to) > 0) {
      to += to - from;
    }
    return new BracketingNthOrderBrentSolver(ACCURACY, 5).solve(STEPS_MAX, excess, from, to);
  }
}
