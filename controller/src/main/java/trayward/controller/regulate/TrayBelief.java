package trayward.controller.regulate;

/**
 * What is believed of a tray and of the probes that watch it. Immutable.
 *
 * @param model the tray
 * @param bathLagS first-order lag of the bath probe, s
 * @param plateLagS first-order lag of the plate probe, s
 * @param wallJPerK heat capacity of the tray's wall as far as the bath feels it, J/K
 */
public record TrayBelief(TrayModel model, double bathLagS, double plateLagS, double wallJPerK) {

  /** Lag of a bath probe in its sheath, s, until a warm-up has shown it. */
  public static final double BATH_LAG_S = 5;

  /** Lag of a probe clamped on a plate, s, likewise. */
  public static final double PLATE_LAG_S = 3;

  /**
   * A wall nobody has measured, J/K: thin steel in a plastic tub has little that follows the bath.
   */
  public static final double WALL_J_PER_K = 30;

  /** A declared tray watched by probes nobody has measured. */
  public static TrayBelief declared(TrayModel model) {
    return new TrayBelief(model, BATH_LAG_S, PLATE_LAG_S, WALL_J_PER_K);
  }
}
