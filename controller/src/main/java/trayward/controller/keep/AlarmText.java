package trayward.controller.keep;

import java.time.DateTimeException;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;
import trayward.controller.event.AlarmState;

/**
 * A step of an alarm as one line of text closed by a CRC-32C of its own, so that a person can read
 * the file and one torn or altered line spoils no other. Pure.
 */
final class AlarmText {

  private static final String CRC = "\tcrc=";
  private static final int FIELDS = 5;

  private AlarmText() {}

  /** The line with its end. */
  static String write(AlarmEntry entry) {
    String body =
        String.join(
            "\t",
            Instant.ofEpochSecond(entry.epochSeconds()).toString(),
            String.format(Locale.ROOT, "%.1f", entry.uptimeS()),
            entry.alarm(),
            entry.state().name(),
            entry.detail());
    return body + CRC + CheckSum.of(body) + "\n";
  }

  /** A line without its end; empty where it is not what was written. */
  static Optional<AlarmEntry> read(String line) {
    int at = line.lastIndexOf(CRC);
    if (at < 0 || !line.substring(at).equals(CRC + CheckSum.of(line.substring(0, at)))) {
      return Optional.empty();
    }
    String[] fields = line.substring(0, at).split("\t", -1);
    if (fields.length != FIELDS) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          new AlarmEntry(
              Instant.parse(fields[0]).getEpochSecond(),
              Double.parseDouble(fields[1]),
              fields[2],
              AlarmState.valueOf(fields[3]),
              fields[4]));
    } catch (IllegalArgumentException | DateTimeException e) {
      return Optional.empty();
    }
  }
}
