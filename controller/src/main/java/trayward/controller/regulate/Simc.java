package trayward.controller.regulate;

/**
 * SIMC tuning rules (Skogestad 2003, J. Process Control 13:291-309) for second order plus delay.
 * Pure.
 */
public final class Simc {

  private Simc() {}

  /**
   * Settings in the cascade ("series") form of the rules.
   *
   * @param gain Kc
   * @param integralS tauI, s
   * @param derivativeS tauD, s
   */
  public record Series(double gain, double integralS, double derivativeS) {

    /** The same controller in ISA form: K = Kc f, Ti = tauI f, Td = tauD/f, f = 1 + tauD/tauI. */
    public Series ideal() {
      double f = 1 + derivativeS / integralS;
      return new Series(gain * f, integralS * f, derivativeS / f);
    }
  }

  /**
   * Kc = tau1/(k (tc + theta)), tauI = min(tau1, 4 (tc + theta)), tauD = tau2.
   *
   * @param gain k, K per unit duty
   * @param slowS tau1, s
   * @param fastS tau2, s; 0 for a PI controller
   * @param delayS theta, s
   * @param closedS tc, the closed-loop time constant asked for, s
   */
  public static Series tune(
      double gain, double slowS, double fastS, double delayS, double closedS) {
    double sum = closedS + delayS;
    return new Series(slowS / (gain * sum), Math.min(slowS, 4 * sum), fastS);
  }
}
