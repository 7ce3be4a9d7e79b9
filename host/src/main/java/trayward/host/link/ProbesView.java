package trayward.host.link;

import java.util.List;

/**
 * The probes and what is known of each. Immutable; a number that is not known is NaN.
 *
 * @param recordReadable false where the record of calibrations could not be believed: no probe is
 *     corrected
 * @param referenceMinC coldest reference that is taken, °C
 * @param referenceMaxC warmest, °C
 * @param statedMinK least uncertainty of a reference, K
 * @param statedMaxK greatest, K
 * @param rests whether a calibration would be taken now: off or after-run, with heat off
 * @param probes the fitted probes
 */
public record ProbesView(
    boolean recordReadable,
    double referenceMinC,
    double referenceMaxC,
    double statedMinK,
    double statedMaxK,
    boolean rests,
    List<Probe> probes) {

  /** Where the link cannot tell. */
  static final ProbesView NONE =
      new ProbesView(true, Double.NaN, Double.NaN, Double.NaN, Double.NaN, false, List.of());

  /**
   * One probe.
   *
   * @param role place: {@code bath}, {@code second_bath}, {@code plate}
   * @param probe its 1-Wire ROM, its place on a line of transmitters, or {@code simulated}
   * @param readingClass class of its reading
   * @param rawC what it says, °C
   * @param correctedC the same corrected, °C; NaN unless valid
   * @param calibrated whether it was compared
   * @param slope corrected kelvin for each kelvin read
   * @param offsetK what is added at a reading of 0 °C, K
   * @param uncertaintyK how far the corrected reading may be from the truth, K
   * @param coverage coverage factor of that; NaN for the limits of the data sheet
   * @param ofAnother what is on record for this place belongs to another probe
   * @param stoodS time it has been watched, at most the half minute that is taken, s
   * @param scatterK scatter of its readings in that time, K
   * @param notStill why nothing can be taken from it now, in words; empty where it can
   * @param points what it was compared with
   */
  public record Probe(
      String role,
      String probe,
      String readingClass,
      double rawC,
      double correctedC,
      boolean calibrated,
      double slope,
      double offsetK,
      double uncertaintyK,
      double coverage,
      boolean ofAnother,
      double stoodS,
      double scatterK,
      String notStill,
      List<ComparedAt> points) {}

  /**
   * One comparison.
   *
   * @param point {@code ice} or {@code reference}
   * @param celsius the known temperature, °C
   * @param statedK its uncertainty, k = 2, K
   * @param rawC what the probe read, °C
   * @param scatterK scatter of that, K
   * @param date when, as the clock showed it; empty where that cannot be
   */
  public record ComparedAt(
      String point, double celsius, double statedK, double rawC, double scatterK, String date) {}
}
