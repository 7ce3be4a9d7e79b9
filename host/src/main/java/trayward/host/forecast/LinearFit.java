package trayward.host.forecast;

import java.util.Arrays;
import java.util.Optional;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealVector;

/**
 * A straight line through observations of a person's own, with what it does not know. Immutable.
 *
 * <p>Ordinary least squares; intervals by Student's t: NIST/SEMATECH e-Handbook of Statistical
 * Methods, 4.5.1.2. The first column is the constant 1.
 */
public final class LinearFit {

  private final LeastSquares squares;
  private final int observations;
  private final double totalSquares;

  private LinearFit(LeastSquares squares, int observations, double totalSquares) {
    this.squares = squares;
    this.observations = observations;
    this.totalSquares = totalSquares;
  }

  /**
   * Fits it.
   *
   * @param rows the observations, each with 1 in its first column; more of them than columns
   * @param values what was observed
   * @throws IllegalArgumentException where they do not determine the line and its scatter
   */
  public static LinearFit of(double[][] rows, double[] values) {
    if (rows.length == 0 || rows.length <= rows[0].length) {
      throw new IllegalArgumentException("more observations than coefficients are needed");
    }
    return new LinearFit(LeastSquares.of(rows, values), rows.length, total(values));
  }

  /** Fits it where the observations determine the line and its scatter; empty where not. */
  static Optional<LinearFit> where(double[][] rows, double[] values) {
    return rows.length == 0 || rows.length <= rows[0].length
        ? Optional.empty()
        : LeastSquares.where(rows, values)
            .map(squares -> new LinearFit(squares, rows.length, total(values)));
  }

  private static double total(double[] values) {
    double mean = Arrays.stream(values).average().orElse(0);
    return Arrays.stream(values).map(v -> (v - mean) * (v - mean)).sum();
  }

  /**
   * How likely a coefficient at least this far from 0 would be if it were 0: Student's t, both
   * sides. Certain where the line passes through every point.
   */
  double chanceOfNone(int column) {
    double error = standardError(column);
    return error > 0
        ? 2
            * new TDistribution(freedom())
                .cumulativeProbability(-Math.abs(coefficient(column)) / error)
        : 1;
  }

  /** A coefficient. */
  public double coefficient(int column) {
    return squares.coefficients().getEntry(column);
  }

  /** Its standard error. */
  public double standardError(int column) {
    return residualSd() * Math.sqrt(squares.inverse().getEntry(column, column));
  }

  /** Degrees of freedom of what is left. */
  public int freedom() {
    return observations - squares.coefficients().getDimension();
  }

  /** Standard deviation of what is left. */
  public double residualSd() {
    return Math.sqrt(squares.residualSquares() / freedom());
  }

  /** Share of the variance that the line explains. */
  public double rSquared() {
    return 1 - squares.residualSquares() / totalSquares;
  }

  /** Ratio of the mean squares of line and rest. */
  public double fStatistic() {
    double explained = totalSquares - squares.residualSquares();
    return explained / (squares.coefficients().getDimension() - 1) / (residualSd() * residualSd());
  }

  /** Where the mean of many observations like this would lie, at a level such as 0.95. */
  public Interval mean(double[] row, double level) {
    return interval(row, level, 0);
  }

  /** Where one new observation like this would lie. */
  public Interval one(double[] row, double level) {
    return interval(row, level, 1);
  }

  private Interval interval(double[] row, double level, double own) {
    RealVector x = new ArrayRealVector(row, false);
    double spread = x.dotProduct(squares.inverse().operate(x));
    double t = new TDistribution(freedom()).inverseCumulativeProbability((1 + level) / 2);
    return Interval.around(
        x.dotProduct(squares.coefficients()), t * residualSd() * Math.sqrt(own + spread));
  }
}
