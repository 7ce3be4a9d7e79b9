package trayward.host.air;

/**
 * Air that must come in for what the fan takes out. Without an inlet it comes through the chimney
 * of a boiler or stove, with its exhaust. Immutable.
 *
 * @param flowM3PerH taken out, m³/h, above 0
 * @param inletMPerS speed through the inlet, m/s, above 0
 */
public record MakeUpAir(double flowM3PerH, double inletMPerS) {

  /** Heat capacity of a cubic metre of room air, J/(m³ K): 1.2 kg of 1006 J/(kg K). */
  private static final double AIR_J_PER_M3_K = 1207;

  /** Refuses what is out of range. */
  public MakeUpAir {
    if (!(flowM3PerH > 0) || !(inletMPerS > 0)) {
      throw new IllegalArgumentException("no flow: " + flowM3PerH + " at " + inletMPerS + " m/s");
    }
  }

  /** Free area of the inlet, cm². */
  public double inletCm2() {
    return flowM3PerH / 3600 / inletMPerS * 1e4;
  }

  /** Heat that keeps the room warm against it, W; less than 0 where it is warmer outside. */
  public double heatW(double roomC, double outsideC) {
    return flowM3PerH / 3600 * AIR_J_PER_M3_K * (roomC - outsideC);
  }
}
