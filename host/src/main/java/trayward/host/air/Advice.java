package trayward.host.air;

/** Air changes that were once asked for or recommended for darkrooms; none is a rule for you. */
public enum Advice {
  /** General recommendation; the chapter was located, the number is from memory. */
  HANDBOOK(10, "trade literature and ASHRAE Applications, photographic facilities, from memory"),
  /** A rule of one state, since removed. */
  OLD_RULE(12, "Wisconsin Administrative Code ILHR 32.27(9), 1991 to 1998, since removed"),
  /** 0.5 cubic feet a minute of outdoor air for each square foot, under a ceiling of 2.4 m. */
  BY_FLOOR(Advice.FLOOR_M3_PER_H_M2 / 2.4, "0.5 cfm/ft² under 2.4 m: common practice, no source");

  /** 0.5 cfm/ft² in m³/h for each m² of floor: a cubic foot is 0.3048³ m³. */
  static final double FLOOR_M3_PER_H_M2 = 0.5 * 0.3048 * 60;

  private final double changesPerHour;
  private final String source;

  Advice(double changesPerHour, String source) {
    this.changesPerHour = changesPerHour;
    this.source = source;
  }

  /** Air changes an hour. */
  public double changesPerHour() {
    return changesPerHour;
  }

  /** Who said so. */
  public String source() {
    return source;
  }
}
