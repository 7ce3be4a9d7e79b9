package trayward.controller.keep;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import trayward.controller.calibrate.Calibration;
import trayward.controller.calibrate.Point;
import trayward.controller.port.ProbeRole;

/**
 * Calibrations as short lines of text closed by a CRC-32C, so that a person can read them and a
 * torn or altered file is noticed. One line a point: place, probe, point, known temperature in °C,
 * its uncertainty (k = 2) in K, what the probe read in °C, its scatter in K, date. Pure.
 */
final class CalibrationText {

  private static final String HEAD = "trayward-calibration 1";
  private static final String ICE = "ice";
  private static final String REFERENCE = "reference";
  private static final int FIELDS = 8;

  private CalibrationText() {}

  static String write(CalibrationBook book) {
    StringBuilder body = new StringBuilder(HEAD).append('\n');
    for (ProbeRole role : ProbeRole.values()) {
      Calibration known = book.byRole().get(role);
      if (known != null) {
        String whose = role.word() + "\t" + known.probe();
        known.ice().ifPresent(point -> body.append(line(whose, ICE, point)));
        known.reference().ifPresent(point -> body.append(line(whose, REFERENCE, point)));
      }
    }
    return CheckSum.close(body.toString());
  }

  private static String line(String whose, String kind, Point point) {
    return String.format(
        Locale.ROOT,
        "%s\t%s\t%.4f\t%.4f\t%.4f\t%.4f\t%s\n",
        whose,
        kind,
        point.celsius(),
        point.statedK(),
        point.rawC(),
        point.scatterK(),
        LocalDate.ofEpochDay(point.epochDay()));
  }

  /** Empty where it is not what was written, or what no sound probe can be. */
  static Optional<CalibrationBook> read(String text) {
    Optional<String> body = CheckSum.open(text);
    if (body.isEmpty()) {
      return Optional.empty();
    }
    List<String> lines = body.get().lines().toList();
    if (lines.isEmpty() || !lines.get(0).equals(HEAD)) {
      return Optional.empty();
    }
    try {
      CalibrationBook book = CalibrationBook.EMPTY;
      for (String line : lines.subList(1, lines.size())) {
        book = with(book, line);
      }
      boolean sound =
          book.byRole().values().stream().allMatch(known -> known.implausible().isEmpty());
      return sound ? Optional.of(book) : Optional.empty();
    } catch (IllegalArgumentException | DateTimeException e) {
      return Optional.empty();
    }
  }

  private static CalibrationBook with(CalibrationBook book, String line) {
    String[] fields = line.split("\t", -1);
    if (fields.length != FIELDS) {
      throw new IllegalArgumentException(line);
    }
    ProbeRole role = ProbeRole.of(fields[0]).orElseThrow(IllegalArgumentException::new);
    Calibration before = book.of(role, fields[1]);
    boolean ice = fields[2].equals(ICE);
    boolean twice = ice ? before.ice().isPresent() : before.reference().isPresent();
    if (twice || book.ofAnother(role, fields[1]) || !(ice || fields[2].equals(REFERENCE))) {
      throw new IllegalArgumentException(line);
    }
    Point point = point(fields);
    boolean known = ice ? point.isIce() : point.isReference();
    if (!known) {
      throw new IllegalArgumentException(line);
    }
    return book.with(role, ice ? before.withIce(point) : before.withReference(point));
  }

  private static Point point(String[] fields) {
    return new Point(
        Double.parseDouble(fields[3]),
        Double.parseDouble(fields[4]),
        Double.parseDouble(fields[5]),
        Double.parseDouble(fields[6]),
        LocalDate.parse(fields[7]).toEpochDay());
  }
}
