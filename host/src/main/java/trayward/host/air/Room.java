package trayward.host.air;

/**
 * A room whose air is taken out and replaced, as one well-mixed volume:
 *
 * <pre>
 *   dC/dt = G/V - (Q/K) C/V
 * </pre>
 *
 * <p>K says how much worse the mixing is than perfect: 1 is perfect, 10 is very poor (CDC,
 * Guidelines for environmental infection control, 2003, appendix B). No darkroom is mixed well: the
 * breath of somebody bent over the tray holds more than any mean of the room. Immutable.
 *
 * @param volumeM3 air in the room, m³, above 0
 * @param flowM3PerH air taken out, and so brought in, m³/h, above 0
 * @param mixing K, {@value #PERFECT} to {@value #VERY_POOR}
 */
public record Room(double volumeM3, double flowM3PerH, double mixing) {

  /** A room that is mixed perfectly. */
  public static final double PERFECT = 1;

  /** Worst mixing of the guidelines. */
  public static final double VERY_POOR = 10;

  /** Refuses what is out of range. */
  public Room {
    if (!(volumeM3 > 0)
        || !(flowM3PerH > 0)
        || !(mixing >= PERFECT && mixing <= VERY_POOR)
        || Double.isInfinite(volumeM3)
        || Double.isInfinite(flowM3PerH)) {
      throw new IllegalArgumentException(
          "no room: " + volumeM3 + " m³, " + flowM3PerH + " m³/h, mixing " + mixing);
    }
  }

  /** A room of one cubic metre with so many air changes, mixed perfectly. */
  public static Room ofChanges(double perHour) {
    return new Room(1, perHour, PERFECT);
  }

  /** Air changes an hour. */
  public double changesPerHour() {
    return flowM3PerH / volumeM3;
  }

  /** Flow that does the work of a perfectly mixed one, m³/h. */
  public double effectiveM3PerH() {
    return flowM3PerH / mixing;
  }

  /**
   * Minutes until {@code percent} of what was in the air is gone, its source off: 60 ln(100/(100 -
   * percent)) K V/Q (CDC MMWR 1994;43(RR-13), table S3-1).
   *
   * @param percent above 0, below 100
   */
  public double purgeMinutes(double percent) {
    return minutesBetween(100, 100 - percent);
  }

  /** Minutes for a concentration to fall to another, source off; 0 where it is there already. */
  public double minutesBetween(double from, double to) {
    return Math.max(0, Math.log(from / to)) * 60 * volumeM3 / effectiveM3PerH();
  }

  /** Concentration in the long run, mg/m³, of a source of mg/h. */
  public double steadyMgPerM3(double sourceMgPerH) {
    return sourceMgPerH / effectiveM3PerH();
  }

  /** Concentration after so many minutes of a steady source, mg/m³, from {@code startMgPerM3}. */
  public double mgPerM3After(double minutes, double sourceMgPerH, double startMgPerM3) {
    double left = Math.exp(-effectiveM3PerH() / volumeM3 * minutes / 60);
    return steadyMgPerM3(sourceMgPerH) * (1 - left) + startMgPerM3 * left;
  }

  /** Water vapour that an evaporation adds in the long run, g/m³; perfectly mixed. */
  public double vapourAddedGPerM3(double gramsPerHour) {
    return gramsPerHour / flowM3PerH;
  }
}
