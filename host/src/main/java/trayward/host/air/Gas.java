package trayward.host.air;

import trayward.host.bath.MolarMass;

/** What may be in a darkroom's air, with its molar mass. Immutable. */
public enum Gas {
  /** From developers made with it or with its sulfite compound; far more when they are hot. */
  FORMALDEHYDE("formaldehyde", MolarMass.of("CH2O")),
  /** From acid with fixer or sulfite. */
  SULFUR_DIOXIDE("sulfur-dioxide", MolarMass.of("SO2")),
  /** From a sulfide toner with acid. */
  HYDROGEN_SULFIDE("hydrogen-sulfide", MolarMass.of("H2S")),
  /** From stop baths. */
  ACETIC_ACID("acetic-acid", MolarMass.of("C2H4O2")),
  /** From some toners and hypo eliminators; 17.031 g/mol, CIAAW 2021. */
  AMMONIA("ammonia", 17.031),
  /** From selenium toner, as dust or mist; limits count the element, 78.971 g/mol, CIAAW 2021. */
  SELENIUM("selenium", 78.971);

  /** Molar gas constant, J/(mol K), exact since 2019. */
  static final double GAS_CONSTANT = 8.314462618;

  private static final double ROOM_K = 298.15;
  private static final double AIR_PA = 101_325;

  private final String word;
  private final double gramsPerMol;

  Gas(String word, double gramsPerMol) {
    this.word = word;
    this.gramsPerMol = gramsPerMol;
  }

  /** As it is written. */
  public String word() {
    return word;
  }

  /** Molar mass, g/mol. */
  public double gramsPerMol() {
    return gramsPerMol;
  }

  /** Litres a mole of any gas takes at 25 °C and 101.325 kPa. */
  public static double litresPerMol() {
    return GAS_CONSTANT * ROOM_K / AIR_PA * 1000;
  }

  /** Parts per million as mg/m³, at 25 °C and 101.325 kPa as limits are. */
  public double mgPerM3(double ppm) {
    return ppm * gramsPerMol / litresPerMol();
  }

  /** mg/m³ as parts per million, at 25 °C and 101.325 kPa. */
  public double ppm(double mgPerM3) {
    return mgPerM3 * litresPerMol() / gramsPerMol;
  }
}
