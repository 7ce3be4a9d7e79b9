package trayward.controller.sim;

/**
 * Share of its way that a first-order lag goes in a step. Steps of 0.1 s differ in their last bits
 * only, in two or three ways at a time: the newest few exponentials are kept. Mutable; one thread.
 */
final class StepShares {

  /** Twice as many as there are ways at a time. */
  private static final int KEPT = 4;

  private final double[] exponents = new double[KEPT];
  private final double[] shares = new double[KEPT];
  private int next;

  StepShares() {
    java.util.Arrays.fill(exponents, Double.NaN);
  }

  /** 1 - exp({@code exponent}). */
  double of(double exponent) {
    for (int i = 0; i < KEPT; i++) {
      if (exponents[i] == exponent) {
        return shares[i];
      }
    }
    int i = next;
    next = (next + 1) % KEPT;
    exponents[i] = exponent;
    shares[i] = -Math.expm1(exponent);
    return shares[i];
  }
}
