package trayward.controller.regulate;

import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import org.hipparchus.analysis.solvers.BrentSolver;
import org.hipparchus.util.FastMath;

/**
 * A search along the frequencies of a band, on a logarithmic grid and then between its points.
 * Immutable; safe on any thread.
 *
 * @param lowRadPerS lower end, rad/s, above 0
 * @param highRadPerS upper end, rad/s, above the lower
 */
record FrequencySweep(double lowRadPerS, double highRadPerS) {

  /** 0.46 % from point to point: no peak of a loop worth having is narrower. */
  private static final int POINTS_PER_DECADE = 500;

  /** Widest band, decades: a grid of 10 000 points, some milliseconds. */
  private static final double MAX_DECADES = 20;

  /** How closely a place is found, as a share of the frequency: some bits above a double's last. */
  private static final double CLOSE = 1e-14;

  /** Far more than Brent's method needs on one cell of the grid. */
  private static final int MAX_EVALUATIONS = 200;

  /** Each pass over a peak looks at this many places and keeps two cells of them. */
  private static final int PEAK_POINTS = 20;

  /** Four passes, each ten times closer: a millionth of the frequency, where a peak is flat. */
  private static final int PEAK_PASSES = 4;

  FrequencySweep {
    double decades = FastMath.log10(highRadPerS / lowRadPerS);
    if (!(lowRadPerS > 0) || !(decades > 0) || decades > MAX_DECADES) {
      throw new IllegalArgumentException("no band: " + lowRadPerS + " to " + highRadPerS);
    }
  }

  /** All points of the grid, ends included, rising. */
  double[] points() {
    double span = FastMath.log(highRadPerS / lowRadPerS);
    int cells = (int) FastMath.ceil(span / FastMath.log(10) * POINTS_PER_DECADE);
    double[] points = new double[cells + 1];
    for (int i = 0; i <= cells; i++) {
      points[i] = lowRadPerS * FastMath.exp(span * i / cells);
    }
    return points;
  }

  /**
   * Every frequency at which a continuous {@code f} changes its sign from one point to the next.
   */
  double[] crossings(DoubleUnaryOperator f) {
    DoubleStream.Builder found = DoubleStream.builder();
    double[] points = points();
    double before = f.applyAsDouble(points[0]);
    for (int i = 1; i < points.length; i++) {
      double now = f.applyAsDouble(points[i]);
      if ((before < 0) != (now < 0)) {
        found.add(root(f, points[i - 1], points[i]));
      }
      before = now;
    }
    return found.build().toArray();
  }

  private static double root(DoubleUnaryOperator f, double low, double high) {
    return new BrentSolver(CLOSE, CLOSE * low).solve(MAX_EVALUATIONS, f::applyAsDouble, low, high);
  }

  /** The highest value of {@code f} in the band. */
  double peak(DoubleUnaryOperator f) {
    double[] points = points();
    int best = 0;
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < points.length; i++) {
      double value = f.applyAsDouble(points[i]);
      if (value > most) {
        most = value;
        best = i;
      }
    }
    return peakNear(
        f, points[Math.max(0, best - 1)], points[Math.min(points.length - 1, best + 1)]);
  }

  private static double peakNear(DoubleUnaryOperator f, double fromRadPerS, double toRadPerS) {
    double low = fromRadPerS;
    double high = toRadPerS;
    double most = Double.NEGATIVE_INFINITY;
    for (int pass = 0; pass < PEAK_PASSES; pass++) {
      double cell = (high - low) / PEAK_POINTS;
      double start = low;
      double place = low;
      for (int i = 0; i <= PEAK_POINTS; i++) {
        double value = f.applyAsDouble(start + i * cell);
        if (value >= most) {
          most = value;
          place = start + i * cell;
        }
      }
      low = Math.max(fromRadPerS, place - cell);
      high = Math.min(toRadPerS, place + cell);
    }
    return most;
  }
}
