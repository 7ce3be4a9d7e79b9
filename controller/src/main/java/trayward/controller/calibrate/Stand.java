package trayward.controller.calibrate;

import java.util.Locale;

/**
 * How a probe has stood in the last half minute, uncorrected. Immutable.
 *
 * @param readings good readings in it
 * @param spanS time from the first of them to the last, s
 * @param meanC their mean, °C; NaN where there is none
 * @param scatterK their standard deviation, K; NaN where there are fewer than two
 */
public record Stand(int readings, double spanS, double meanC, double scatterK) {

  /** Nothing was read. */
  public static final Stand NONE = new Stand(0, 0, Double.NaN, Double.NaN);

  /**
   * Time a probe must have stood still, s: six time constants of a sheathed probe in stirred water
   * (5 s), by which 20 K have come within 0.05 K.
   */
  public static final double TAKING_S = 30;

  /** Fewest readings, half of what a probe that reads once a second gives. */
  static final int FEWEST = 15;

  /**
   * Greatest scatter of a reading that stands still, K: noise of 0.02 K on steps of 1/16 K makes
   * 0.03 K; a drift of 0.35 K in a minute makes 0.05 K.
   */
  public static final double STILL_K = 0.05;

  /** A probe that reads once a second may miss the ends of the window by that. */
  private static final double ENDS_S = 2;

  /** Why nothing can be taken from it yet, in a sentence; empty where it stood still. */
  public String notStill() {
    if (readings < FEWEST || spanS < TAKING_S - ENDS_S) {
      return words(
          "the probe must hang in it for %.0f s with good readings before it is taken: so far %.0f s",
          TAKING_S, spanS);
    }
    return scatterK <= STILL_K
        ? ""
        : words(
            "the reading did not stand still: it scattered by %.2f K in %.0f s, and at most %.2f K"
                + " is taken",
            scatterK, spanS, STILL_K);
  }

  static String words(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }
}
