package trayward.host.session;

/**
 * What the bath was when a sheet went in. Immutable.
 *
 * @param bathId the bath
 * @param litres how much of it, L
 * @param strength share of concentrates in it, 0 to 1
 * @param bromideGPerL bromide as potassium bromide, g/L
 * @param bromideDoubtGPerL its standard uncertainty, g/L
 * @param sulfiteGPerL sulfite as sodium sulfite, g/L
 * @param sulfiteDoubtGPerL its standard uncertainty, g/L
 * @param areaM2 area developed in it before, m²
 * @param hotS how long it had been hot, seconds
 */
public record PrintBath(
    long bathId,
    double litres,
    double strength,
    double bromideGPerL,
    double bromideDoubtGPerL,
    double sulfiteGPerL,
    double sulfiteDoubtGPerL,
    double areaM2,
    double hotS) {

  /** Area developed in each litre, m²/L; 0 in an empty tray. */
  public double areaM2PerL() {
    return litres > 0 ? areaM2 / litres : 0;
  }
}
