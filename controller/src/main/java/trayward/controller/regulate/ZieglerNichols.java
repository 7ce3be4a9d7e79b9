package trayward.controller.regulate;

/**
 * The tuning rules of Ziegler and Nichols 1942, Trans. ASME 64:759 (read second-hand). They aim at
 * a swing that falls to a quarter from one wave to the next: a lively loop that stands little error
 * of its plant. Kept as the yardstick that other tunings are compared with. Pure.
 */
public final class ZieglerNichols {

  private ZieglerNichols() {}

  /** Ultimate cycle, P: K = 0.5 Ku. */
  public static IsaPid p(UltimatePoint u) {
    return IsaPid.p(0.5 * u.gain());
  }

  /** Ultimate cycle, PI: K = 0.45 Ku, Ti = Pu/1.2. */
  public static IsaPid pi(UltimatePoint u) {
    return IsaPid.pi(0.45 * u.gain(), u.periodS() / 1.2);
  }

  /** Ultimate cycle, PID: K = 0.6 Ku, Ti = Pu/2, Td = Pu/8. */
  public static IsaPid pid(UltimatePoint u) {
    return IsaPid.pid(0.6 * u.gain(), u.periodS() / 2, u.periodS() / 8);
  }

  /**
   * What is read off a reaction curve: one lag behind a delay.
   *
   * @param gain K, K per unit duty
   * @param lagS tau, s
   * @param delayS theta, s, above 0
   */
  public record ReactionCurve(double gain, double lagS, double delayS) {

    private double steepness() {
      return lagS / (gain * delayS);
    }
  }

  /** Reaction curve, P: tau / (K theta). */
  public static IsaPid p(ReactionCurve curve) {
    return IsaPid.p(curve.steepness());
  }

  /** Reaction curve, PI: 0.9 tau / (K theta), Ti = 3.33 theta. */
  public static IsaPid pi(ReactionCurve curve) {
    return IsaPid.pi(0.9 * curve.steepness(), 3.33 * curve.delayS());
  }

  /** Reaction curve, PID: 1.2 tau / (K theta), Ti = 2 theta, Td = 0.5 theta. */
  public static IsaPid pid(ReactionCurve curve) {
    return IsaPid.pid(1.2 * curve.steepness(), 2 * curve.delayS(), 0.5 * curve.delayS());
  }
}
