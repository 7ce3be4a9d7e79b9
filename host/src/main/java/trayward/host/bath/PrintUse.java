package trayward.host.bath;

/**
 * What printing does to a bath, for each square metre developed. Immutable. The defaults are
 * estimates with their doubt; nobody measures them at a tray, and they are settings.
 *
 * @param silver silver developed, g/m²
 * @param carryOut bath that leaves with a drained sheet, mL/m²
 */
public record PrintUse(Amount silver, Amount carryOut) {

  /**
   * Silver of 0.5 to 1.6 g/m² in black-and-white papers, of which a strongly exposed sheet develops
   * a good half before it is pulled: common practice, no published source. Fibre sheets of 8 x 10
   * in carry out 8 to 15 mL, estimated, to be measured by weighing.
   */
  public static final PrintUse STANDARD = new PrintUse(new Amount(0.6, 0.3), new Amount(220, 110));

  /** Bromide released as potassium bromide, g/m²: one for each silver. */
  public Amount bromide() {
    return silver.times(MolarMass.KBR / MolarMass.AG);
  }

  /** Developer used up as hydroquinone, g/m²: one for each two silver. */
  public Amount developer() {
    return silver.times(MolarMass.HYDROQUINONE / (2 * MolarMass.AG));
  }
}
