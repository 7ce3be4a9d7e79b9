package trayward.controller.keep;

/**
 * How often each relay has closed since it was fitted. Immutable.
 *
 * @param heaterClosings closings of the cycling relay
 * @param safetyClosings closings of the rarely switched one
 */
public record RelayWear(long heaterClosings, long safetyClosings) {

  /** New relays. */
  public static final RelayWear NONE = new RelayWear(0, 0);

  /**
   * Closings that may be lost with the power: a card is written once in twenty minutes of cycling,
   * and a relay's life is some hundred thousand.
   */
  private static final int KEPT_EACH = 256;

  /** Refuses counts below zero. */
  public RelayWear {
    if (heaterClosings < 0 || safetyClosings < 0) {
      throw new IllegalArgumentException("closings cannot be fewer than none");
    }
  }

  /** After a scan in which contacts closed or did not. */
  public RelayWear after(boolean heaterCloses, boolean safetyCloses) {
    return heaterCloses || safetyCloses
        ? new RelayWear(
            heaterClosings + (heaterCloses ? 1 : 0), safetyClosings + (safetyCloses ? 1 : 0))
        : this;
  }

  /** Whether so much has been added to {@code kept} that it is to be written. */
  public boolean worthKeeping(RelayWear kept) {
    return heaterClosings - kept.heaterClosings >= KEPT_EACH
        || safetyClosings - kept.safetyClosings >= KEPT_EACH;
  }
}
