package trayward.controller.regulate;

/** Where a fit stands: logarithms of its numbers over their prior. Immutable. */
final class FitPoint {

  /** At the prior. */
  static final FitPoint PRIOR = new FitPoint(new double[TrayFit.NUMBERS]);

  private final double[] x;

  FitPoint(double[] x) {
    this.x = x.clone();
  }

  double[] numbers() {
    return x.clone();
  }
}
