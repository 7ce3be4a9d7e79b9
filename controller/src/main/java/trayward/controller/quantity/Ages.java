package trayward.controller.quantity;

/**
 * Ages in whole milliseconds that saturate instead of overflowing.
 *
 * <p>The bound of an hour and a half is above every limit that is compared with an age (the longest
 * is the 90 min end of the presence range), so a saturated age compares like an endless one.
 */
public final class Ages {

  /** Largest age kept, milliseconds: 100 minutes, above the longest limit. */
  public static final int MAX_MS = 6_000_000;

  private Ages() {}

  /** {@code ageMs + elapsedMs}, at most {@link #MAX_MS}; a negative step counts as none. */
  public static int older(int ageMs, int elapsedMs) {
    return (int) Math.min(MAX_MS, (long) ageMs + Math.max(0, elapsedMs));
  }

  /** The age while {@code running}, else zero: for conditions that must hold without a break. */
  public static int whileTrue(boolean running, int ageMs, int elapsedMs) {
    return running ? older(ageMs, elapsedMs) : 0;
  }
}
