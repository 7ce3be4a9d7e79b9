package trayward.controller.calibrate;

import java.util.Optional;
import trayward.controller.quantity.Range;

/**
 * What is known of one probe from comparing it. Immutable.
 *
 * @param probe the probe itself: its 1-Wire ROM, or what stands for it; another one in its place
 *     has nothing of this
 * @param ice a reading in melting ice
 * @param reference a reading against a thermometer
 */
public record Calibration(String probe, Optional<Point> ice, Optional<Point> reference) {

  /**
   * Temperatures a reference may have, °C: from where it is far enough from an ice point for a
   * slope, up to the plate in warm-up.
   */
  public static final Range REFERENCE_C = new Range(15, Correction.WARMEST_C, "°C");

  /**
   * Uncertainties of a reference, k = 2, K: nobody reads one finer at a tray; with a worse one than
   * the data sheet's ±0.5 K nothing is won.
   */
  public static final Range STATED_K = new Range(0.005, Uncertainty.DATA_SHEET_K, "K");

  /** A probe that was never compared. */
  public static Calibration none(String probe) {
    return new Calibration(probe, Optional.empty(), Optional.empty());
  }

  /** With an ice point in place of any before. */
  public Calibration withIce(Point point) {
    return new Calibration(probe, Optional.of(point), reference);
  }

  /** With a reference in place of any before. */
  public Calibration withReference(Point point) {
    return new Calibration(probe, ice, Optional.of(point));
  }

  /** Whether it was compared at all. */
  public boolean known() {
    return ice.isPresent() || reference.isPresent();
  }

  /** What makes its reading right. */
  public Correction correction() {
    if (ice.isPresent() && reference.isPresent()) {
      Point low = ice.get();
      Point high = reference.get();
      double slope = (high.celsius() - low.celsius()) / (high.rawC() - low.rawC());
      return new Correction(slope, low.celsius() - slope * low.rawC());
    }
    return ice.or(() -> reference)
        .map(point -> new Correction(1, point.offK()))
        .orElse(Correction.NONE);
  }

  /** How far its corrected reading may be from the truth, K: k = 2, or the data sheet's limits. */
  public double uncertaintyK(double celsius) {
    if (ice.isPresent() && reference.isPresent()) {
      return Uncertainty.COVERAGE * Uncertainty.twoPointsK(ice.get(), reference.get(), celsius);
    }
    return ice.or(() -> reference)
        .map(point -> Uncertainty.COVERAGE * Uncertainty.onePointK(point, celsius))
        .orElseGet(() -> Uncertainty.asBoughtK(celsius));
  }

  /** Why no sound probe can be so, in a sentence; empty where it can. */
  public String implausible() {
    String off = ice.map(Calibration::tooFar).orElse("");
    if (off.isEmpty()) {
      off = reference.map(Calibration::tooFar).orElse("");
    }
    if (!off.isEmpty()) {
      return off;
    }
    Correction now = correction();
    if (!now.slopePlausible()) {
      return Stand.words(
          "ice point and reference make a slope of %.3f, outside %.2f to %.2f: one of the two was"
              + " not what it was taken for",
          now.slope(), Correction.SLOPE_MIN, Correction.SLOPE_MAX);
    }
    return now.plausible()
        ? ""
        : Stand.words(
            "the correction would reach %.1f K at %.0f °C, and at most %.0f K is believed",
            (now.slope() - 1) * Correction.WARMEST_C + now.offsetK(),
            Correction.WARMEST_C,
            Correction.BOUND_K);
  }

  private static String tooFar(Point point) {
    return Math.abs(point.offK()) <= Correction.BOUND_K
        ? ""
        : Stand.words(
            "the probe read %.2f °C at %.2f °C: it is off by %.2f K, and at most %.0f K is believed"
                + " of a sound probe",
            point.rawC(), point.celsius(), Math.abs(point.offK()), Correction.BOUND_K);
  }
}
