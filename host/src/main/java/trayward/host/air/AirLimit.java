package trayward.host.air;

/**
 * Limits others have set for what people breathe at work and indoors, as published. Where {@code
 * source} says so a value is from memory or was read in a table of somebody else. A limit is no
 * line between harm and none. Immutable.
 */
public enum AirLimit {
  /** Permissible exposure limit. */
  FORMALDEHYDE_PEL(Gas.FORMALDEHYDE, 480, 0.75, true, "OSHA, 29 CFR 1910.1048(c)(1)"),
  /** Short-term exposure limit. */
  FORMALDEHYDE_STEL(Gas.FORMALDEHYDE, 15, 2, true, "OSHA, 29 CFR 1910.1048(c)(2)"),
  /** From here on an employer must measure and watch. */
  FORMALDEHYDE_ACTION(Gas.FORMALDEHYDE, 480, 0.5, true, "OSHA action level, 29 CFR 1910.1048(b)"),
  /** Recommended limit for a cause of cancer. */
  FORMALDEHYDE_REL(Gas.FORMALDEHYDE, 480, 0.016, true, "NIOSH Pocket Guide, recommended"),
  /** Recommended ceiling. */
  FORMALDEHYDE_CEILING(Gas.FORMALDEHYDE, 15, 0.1, true, "NIOSH Pocket Guide, ceiling"),
  /** Threshold limit value. */
  FORMALDEHYDE_TLV(
      Gas.FORMALDEHYDE, 480, 0.1, true, "ACGIH, proposed 2016; adoption 2017 from memory"),
  /** The same for a short time. */
  FORMALDEHYDE_TLV_STEL(
      Gas.FORMALDEHYDE, 15, 0.3, true, "ACGIH, proposed 2016; adoption 2017 from memory"),
  /** For everybody, children and the ill too. */
  FORMALDEHYDE_INDOOR(
      Gas.FORMALDEHYDE, 30, 0.1, false, "WHO guidelines for indoor air quality, 2010 (secondary)"),
  /** Permissible exposure limit. */
  SULFUR_DIOXIDE_PEL(Gas.SULFUR_DIOXIDE, 480, 5, true, "OSHA, 29 CFR 1910.1000 Z-1 (secondary)"),
  /** Ceiling. */
  HYDROGEN_SULFIDE_CEILING(
      Gas.HYDROGEN_SULFIDE, 0, 20, true, "OSHA ceiling, 29 CFR 1910.1000 Z-2 (secondary)"),
  /** Peak above the ceiling, ten minutes at the most. */
  HYDROGEN_SULFIDE_PEAK(
      Gas.HYDROGEN_SULFIDE, 10, 50, true, "OSHA peak, 29 CFR 1910.1000 Z-2 (secondary)"),
  /** Recommended ceiling. */
  HYDROGEN_SULFIDE_REL(
      Gas.HYDROGEN_SULFIDE, 10, 10, true, "NIOSH ceiling, criteria document (abstract)"),
  /** Immediately dangerous to life or health. */
  HYDROGEN_SULFIDE_DANGER(
      Gas.HYDROGEN_SULFIDE, 0, 100, true, "NIOSH, immediately dangerous (secondary)"),
  /** Permissible exposure limit. */
  ACETIC_ACID_PEL(Gas.ACETIC_ACID, 480, 10, true, "OSHA, 29 CFR 1910.1000 Z-1 (secondary)"),
  /** Permissible exposure limit. */
  AMMONIA_PEL(Gas.AMMONIA, 480, 50, true, "OSHA, 29 CFR 1910.1000 Z-1 (secondary)"),
  /** Recommended limit. */
  AMMONIA_REL(Gas.AMMONIA, 480, 25, true, "NIOSH, recommended, from memory"),
  /** Permissible exposure limit, as the element. */
  SELENIUM_PEL(Gas.SELENIUM, 480, 0.2, false, "OSHA, 29 CFR 1910.1000 Z-1, as Se (secondary)");

  /**
   * Median odour threshold of formaldehyde, mg/m³ (psychophysical study in the air of a building,
   * abstract). People spread over two powers of ten: the nose is no measure of it.
   */
  public static final double FORMALDEHYDE_ODOUR_MG_PER_M3 = 0.06;

  private final Gas gas;
  private final int minutes;
  private final double value;
  private final boolean inPpm;
  private final String source;

  AirLimit(Gas gas, int minutes, double value, boolean inPpm, String source) {
    this.gas = gas;
    this.minutes = minutes;
    this.value = value;
    this.inPpm = inPpm;
    this.source = source;
  }

  /** What it limits. */
  public Gas gas() {
    return gas;
  }

  /** Time it is a mean over, min: 480 for a working day, 0 for any moment. */
  public int minutes() {
    return minutes;
  }

  /** The limit, ppm at 25 °C. */
  public double ppm() {
    return inPpm ? value : gas.ppm(value);
  }

  /** The limit, mg/m³ at 25 °C. */
  public double mgPerM3() {
    return inPpm ? gas.mgPerM3(value) : value;
  }

  /** Who says so, and how it was read. */
  public String source() {
    return source;
  }
}
