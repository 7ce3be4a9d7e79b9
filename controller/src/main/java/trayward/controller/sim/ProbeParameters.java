package trayward.controller.sim;

/**
 * A simulated probe.
 *
 * @param present whether it is fitted
 * @param lagS first-order lag in liquid or on the plate, s
 * @param noiseK standard deviation of its noise, K
 * @param offsetK what it reads too high, K
 */
public record ProbeParameters(boolean present, double lagS, double noiseK, double offsetK) {

  /** A sheathed bath probe. */
  public static final ProbeParameters BATH = new ProbeParameters(true, 5, 0.02, 0);

  /** A second bath probe, not fitted. */
  public static final ProbeParameters NO_SECOND = new ProbeParameters(false, 5, 0.02, 0);

  /** A probe clamped on the plate. */
  public static final ProbeParameters PLATE = new ProbeParameters(true, 3, 0.02, 0);
}
