package trayward.controller.gpio;

import trayward.controller.quantity.Range;

/**
 * How one line is wired. Immutable.
 *
 * @param line number of the line on its chip, 0 to {@value #MOST_LINE}
 * @param activeLow the line is low when active, or when its contact is closed
 * @param pull resistor of an input; {@link Pull#OFF} for an output
 * @param debounceMicros how long an input must stand still before an edge counts, µs; 0 for none
 */
public record Wire(int line, boolean activeLow, Pull pull, int debounceMicros) {

  /** The largest chip of the family has 58 lines. */
  public static final int MOST_LINE = 57;

  /** A contact that bounces for longer is broken, and a finger is down for longer than this, µs. */
  public static final int MOST_DEBOUNCE_MICROS = 50_000;

  /** Checks the ranges. */
  public Wire {
    if (line < 0 || line > MOST_LINE) {
      throw new IllegalArgumentException("a line is 0 to " + MOST_LINE + ", not " + line);
    }
    if (debounceMicros < 0 || debounceMicros > MOST_DEBOUNCE_MICROS) {
      throw new IllegalArgumentException(
          "debounce is "
              + new Range(0, MOST_DEBOUNCE_MICROS, "µs").words()
              + ", not "
              + debounceMicros);
    }
  }

  /** Whether a broken wire would read as active: the resistor pulls where the contact pulls. */
  public boolean brokenReadsActive() {
    return activeLow ? pull == Pull.DOWN : pull == Pull.UP;
  }
}
