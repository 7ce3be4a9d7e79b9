package trayward.host.forecast;

import java.util.Optional;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * Ordinary least squares by Householder reflections, columns scaled to a length of 1 first. Pure.
 * No normal equations: these would square the condition number.
 *
 * @param coefficients one for each column
 * @param residualSquares sum of the squares of what is left
 * @param inverse inverse of the matrix of products of the columns
 */
record LeastSquares(RealVector coefficients, double residualSquares, RealMatrix inverse) {

  /** A diagonal of R smaller than this, after scaling, is a column that the others make up. */
  private static final double SINGULAR = 1e-12;

  /**
   * Solves it.
   *
   * @param rows the observations: at least as many as columns
   * @param values what was observed, one for each row
   * @throws IllegalArgumentException where the columns do not determine the coefficients
   */
  static LeastSquares of(double[][] rows, double[] values) {
    return where(rows, values)
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "the observations do not tell the coefficients apart"));
  }

  /**
   * Solves it where it can be solved.
   *
   * @param rows the observations, at least one
   * @param values what was observed, one for each row
   * @return empty where the columns do not determine the coefficients
   */
  static Optional<LeastSquares> where(double[][] rows, double[] values) {
    RealMatrix x = new Array2DRowRealMatrix(rows, true);
    int columns = x.getColumnDimension();
    if (x.getRowDimension() < columns || values.length != x.getRowDimension()) {
      return Optional.empty();
    }
    double[] scale = new double[columns];
    for (int j = 0; j < columns; j++) {
      double length = x.getColumnVector(j).getNorm();
      scale[j] = length > 0 ? length : 1;
      x.setColumnVector(j, x.getColumnVector(j).mapDivide(scale[j]));
    }
    QRDecomposition qr = new QRDecomposition(x, SINGULAR);
    if (!qr.getSolver().isNonSingular()) {
      return Optional.empty();
    }
    RealVector y = new ArrayRealVector(values, false);
    RealVector scaled = qr.getSolver().solve(y);
    RealVector residuals = y.subtract(x.operate(scaled));
    return Optional.of(
        new LeastSquares(
            scaled.ebeDivide(new ArrayRealVector(scale, false)),
            residuals.dotProduct(residuals),
            inverse(qr, scale)));
  }

  private static RealMatrix inverse(QRDecomposition qr, double[] scale) {
    int columns = scale.length;
    RealMatrix r = qr.getR().getSubMatrix(0, columns - 1, 0, columns - 1);
    RealMatrix back = MatrixUtils.createRealIdentityMatrix(columns);
    RealMatrix inverseR = new Array2DRowRealMatrix(columns, columns);
    for (int j = 0; j < columns; j++) {
      RealVector column = back.getColumnVector(j);
      MatrixUtils.solveUpperTriangularSystem(r, column);
      for (int i = 0; i < columns; i++) {
        inverseR.setEntry(i, j, column.getEntry(i) / scale[i]);
      }
    }
    return inverseR.multiply(inverseR.transpose());
  }
}
