package trayward.controller.regulate;

/**
 * How unsure each number of a belief is: standard deviations of their natural logarithms, so that
 * 0.1 is about 10 %. Immutable.
 *
 * @param heater power of the heater
 * @param plate heat capacity of the plate
 * @param coupling plate to bath
 * @param liquid liquid in the tray
 * @param loss dry losses of the bath
 * @param evaporation factor on the evaporation
 * @param bathLag lag of the bath probe
 * @param plateLag lag of the plate probe
 * @param wall heat capacity of the wall
 */
public record TrayDoubt(
    double heater,
    double plate,
    double coupling,
    double liquid,
    double loss,
    double evaporation,
    double bathLag,
    double plateLag,
    double wall) {

  /**
   * Of a tray known by its declaration alone: a heater is rated within some 10 % and gets weaker,
   * liquid is poured by a jug within some 10 %; plate, contact, losses and lags are anybody's.
   */
  public static final TrayDoubt DECLARED =
      new TrayDoubt(0.08, 0.35, 0.35, 0.08, 0.4, 0.5, 0.6, 0.6, 1.8);

  /** Of a tray that has been warmed up before and filled anew. */
  public static final TrayDoubt LEARNED =
      new TrayDoubt(0.05, 0.05, 0.08, 0.08, 0.1, 0.1, 0.1, 0.1, 0.3);

  double[] vector() {
    return new double[] {
      heater, plate, coupling, liquid, loss, evaporation, bathLag, plateLag, wall
    };
  }

  static TrayDoubt of(double[] v) {
    return new TrayDoubt(v[0], v[1], v[2], v[3], v[4], v[5], v[6], v[7], v[8]);
  }
}
