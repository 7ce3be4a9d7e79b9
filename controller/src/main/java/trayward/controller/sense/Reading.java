package trayward.controller.sense;

/**
 * A classified reading.
 *
 * @param kind its class
 * @param celsius the temperature read, corrected by the probe's calibration, °C; NaN where none
 *     came
 * @param takenNanos monotonic time at which it was true, nanoseconds
 */
public record Reading(ReadingKind kind, double celsius, long takenNanos) {

  /** Whether it may be acted on. */
  public boolean valid() {
    return kind == ReadingKind.VALID;
  }

  /** The temperature where it may be acted on, °C; else NaN. */
  public double validC() {
    return valid() ? celsius : Double.NaN;
  }
}
