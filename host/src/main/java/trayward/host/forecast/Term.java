package trayward.host.forecast;

/** A term of the law of a print's times: what lengthens or shortens them. Immutable. */
public enum Term {
  /** ln of the time at the usual conditions. */
  CONSTANT("time at the usual conditions", "ln s"),
  /** Its coefficient is the apparent activation energy. */
  TEMPERATURE("temperature (apparent activation energy)", "kJ/mol"),
  /** Paper developed so far. */
  EXHAUSTION("exhaustion", "per m²/L"),
  /** Bromide in the bath. */
  BROMIDE("bromide", "per g/L"),
  /** Share of concentrate, as a power. */
  STRENGTH("strength", "power"),
  /** Exposure. */
  STOPS("exposure", "per stop");

  private final String word;
  private final String unit;

  Term(String word, String unit) {
    this.word = word;
    this.unit = unit;
  }

  /** What it is called. */
  public String word() {
    return word;
  }

  /** Unit of its coefficient in the logarithm of the time. */
  public String unit() {
    return unit;
  }
}
