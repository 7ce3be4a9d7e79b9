package trayward.host.forecast;

import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealVector;

/**
 * A straight line that begins as what is believed and becomes the person's own with each
 * observation. Immutable.
 *
 * <p>The conjugate normal linear model with a normal-inverse-gamma prior (Gelman and others,
 * Bayesian Data Analysis, 3rd edition, 14.8; from memory): the prior stands as rows beside the
 * observations, one for each coefficient, and the scatter is pooled. One new observation then
 * follows Student's t, so that few observations give honestly wide intervals.
 */
public final class ShrunkFit {

  private final LeastSquares squares;
  private final double freedom;
  private final double scatter;

  private ShrunkFit(LeastSquares squares, double freedom, double scatter) {
    this.squares = squares;
    this.freedom = freedom;
    this.scatter = scatter;
  }

  /**
   * Fits it.
   *
   * @param prior what is believed
   * @param rows the observations; may be none
   * @param values what was observed
   */
  public static ShrunkFit of(Prior prior, double[][] rows, double[] values) {
    int columns = prior.columns();
    double[][] all = new double[columns + rows.length][];
    double[] seen = new double[columns + values.length];
    for (int j = 0; j < columns; j++) {
      all[j] = new double[columns];
      all[j][j] = prior.pull(j);
      seen[j] = prior.pull(j) * prior.mean(j);
    }
    System.arraycopy(rows, 0, all, columns, rows.length);
    System.arraycopy(values, 0, seen, columns, values.length);
    LeastSquares squares = LeastSquares.of(all, seen);
    double freedom = prior.weight() + rows.length;
    double pooled = prior.weight() * prior.scatter() * prior.scatter() + squares.residualSquares();
    return new ShrunkFit(squares, freedom, Math.sqrt(pooled / freedom));
  }

  /** A coefficient as it is believed now. */
  public double coefficient(int column) {
    return squares.coefficients().getEntry(column);
  }

  /** What is expected of an observation like this. */
  double centre(double[] row) {
    return squares.coefficients().dotProduct(new ArrayRealVector(row, false));
  }

  /** Scatter of one observation as it is believed now. */
  public double scatter() {
    return scatter;
  }

  /** Standard deviation of a coefficient as it is believed now, but for Student's wider tails. */
  public double doubt(int column) {
    return scatter * Math.sqrt(squares.inverse().getEntry(column, column));
  }

  /** Where one new observation like this would lie, at a level such as 0.8. */
  public Interval one(double[] row, double level) {
    return likely(row, 1, 0).middle(level);
  }

  /**
   * How one new observation would be distributed.
   *
   * @param row the observation
   * @param own its own variance, in units of the scatter's: 1, more where less is known of it
   * @param more variance that comes on top whatever the scatter is
   */
  Likely likely(double[] row, double own, double more) {
    RealVector x = new ArrayRealVector(row, false);
    double spread = x.dotProduct(squares.inverse().operate(x));
    double variance = scatter * scatter * (own + spread) + more;
    return new Likely(centre(row), Math.sqrt(variance), freedom);
  }
}
