package trayward.controller.keep;

import trayward.controller.event.AlarmState;

/**
 * One line of the alarm record. Immutable.
 *
 * @param epochSeconds wall-clock time, s since 1970-01-01T00:00Z, as the clock had it: for the
 *     record only; kept within the years 0 to 9999
 * @param uptimeS time since the power-up of that day's controller, s
 * @param alarm name of the alarm; one of another version may not be known here
 * @param state the state it came to
 * @param detail what was found, in words; at most {@link #DETAIL_MAX} characters, one line
 */
public record AlarmEntry(
    long epochSeconds, double uptimeS, String alarm, AlarmState state, String detail) {

  /** Longest detail, characters: two lines on the page; what is said of a trip fits in one. */
  public static final int DETAIL_MAX = 200;

  /** 0000-01-01T00:00:00Z and 9999-12-31T23:59:59Z: years of four digits. */
  private static final long EARLIEST_S = -62_167_219_200L;

  private static final long LATEST_S = 253_402_300_799L;

  /** Keeps the time writable and the detail to its line. */
  public AlarmEntry {
    epochSeconds = Math.max(EARLIEST_S, Math.min(LATEST_S, epochSeconds));
    String line = detail.replaceAll("\\p{Cntrl}", " ");
    detail = line.length() > DETAIL_MAX ? line.substring(0, DETAIL_MAX) : line;
  }
}
