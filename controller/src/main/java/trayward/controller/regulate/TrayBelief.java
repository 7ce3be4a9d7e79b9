package trayward.controller.regulate;

/**
 * What is believed of a tray and of the probes that watch it. Immutable.
 *
 * @param model the tray
 * @param bathLagS first-order lag of the bath probe, s
 * @param plateLagS first-order lag of the plate probe, s
 */
public record TrayBelief(TrayModel model, double bathLagS, double plateLagS) {

  /** Lag of a bath probe in its sheath, s, until a warm-up has shown it. */
  public static final double BATH_LAG_S = 5;

  /** Lag of a probe clamped on a plate, s, likewise. */
  public static final double PLATE_LAG_S = 3;

  /** A declared tray watched by probes nobody has measured. */
  public static TrayBelief declared(TrayModel model) {
    return new TrayBelief(model, BATH_LAG_S, PLATE_LAG_S);
  }
}
