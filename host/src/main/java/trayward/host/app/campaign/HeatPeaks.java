package trayward.host.app.campaign;

/** How hot bath and plate truly became, and when last near a limit. Mutable; one thread. */
final class HeatPeaks {

  /** SR-06: hard limit and a kelvin, °C. */
  static final double BATH_MOST_C = 56;

  /** SR-07: limit of the plate and three kelvin, °C. */
  static final double PLATE_MOST_C = 78;

  private static final double BATH_HARD_C = 55;
  private static final double PLATE_HARD_C = 75;

  /** SR-06: this far above the set temperature is too hot. */
  private static final double OVER_SET_K = 5;

  /** A probe within its data sheet reads up to 0.5 K too much, rounds and is noisy. */
  private static final double READS_HIGH_K = 0.8;

  /** The slowest probe still shows after this what was, s. */
  private static final double SHOWS_S = 60;

  private final Findings findings;
  private double bathC = Double.NEGATIVE_INFINITY;
  private double plateC = Double.NEGATIVE_INFINITY;
  private double bathHotS = Double.NEGATIVE_INFINITY;
  private double plateHotS = Double.NEGATIVE_INFINITY;

  HeatPeaks(Findings findings) {
    this.findings = findings;
  }

  void row(TruthRow row) {
    bathC = Math.max(bathC, row.bathC());
    plateC = Math.max(plateC, row.plateC());
    if (row.bathC() > BATH_MOST_C) {
      findings.add(Hazard.BATH_HOT, row.tS(), "");
    }
    if (row.plateC() > PLATE_MOST_C) {
      findings.add(Hazard.PLATE_HOT, row.tS(), "");
    }
    if (row.bathC() >= Math.min(BATH_HARD_C, row.setC() + OVER_SET_K) - READS_HIGH_K) {
      bathHotS = row.tS();
    }
    if (row.plateC() >= PLATE_HARD_C - READS_HIGH_K) {
      plateHotS = row.tS();
    }
  }

  double bathC() {
    return bathC;
  }

  double plateC() {
    return plateC;
  }

  /** A bath truly above its limits explains BATH_TOO_HOT whatever else is broken. */
  boolean bathTooHot(double tS) {
    return tS - bathHotS <= SHOWS_S;
  }

  /** The same of the plate. */
  boolean plateTooHot(double tS) {
    return tS - plateHotS <= SHOWS_S;
  }
}
