package trayward.controller.keep;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import trayward.controller.keep.LearnedTray.Figure;

/**
 * Learned trays as lines of text closed by a CRC-32C, so that a person can read them and a torn or
 * altered file is noticed. One line a tray, fields parted by tabs: name, date, declared watts, how
 * the watts are known, then each number with its doubt as value~doubt, and the misfit in K. Pure.
 */
final class LearnedText {

  private static final String HEAD = "trayward-learned 1";
  private static final String MEASURED = "measured";
  private static final String DECLARED = "declared";
  private static final int FIELDS = 13;

  private LearnedText() {}

  static String write(Map<String, LearnedTray> trays) {
    StringBuilder body = new StringBuilder(HEAD).append('\n');
    new TreeMap<>(trays).values().forEach(tray -> body.append(line(tray)));
    return CheckSum.close(body.toString());
  }

  private static String line(LearnedTray t) {
    return String.join(
            "\t",
            t.name(),
            LocalDate.ofEpochDay(t.epochDay()).toString(),
            String.format(Locale.ROOT, "%.1f", t.declaredW()),
            t.measured() ? MEASURED : DECLARED,
            figure(t.heater()),
            figure(t.plate()),
            figure(t.coupling()),
            figure(t.loss()),
            figure(t.evaporation()),
            figure(t.bathLag()),
            figure(t.plateLag()),
            figure(t.wall()),
            String.format(Locale.ROOT, "%.4f", t.rmsK()))
        + "\n";
  }

  private static String figure(Figure f) {
    return String.format(Locale.ROOT, "%.6g~%.4f", f.value(), f.doubt());
  }

  /** Empty where it is not what was written. */
  static Optional<Map<String, LearnedTray>> read(String text) {
    Optional<String> body = CheckSum.open(text);
    if (body.isEmpty()) {
      return Optional.empty();
    }
    List<String> lines = body.get().lines().toList();
    if (lines.isEmpty() || !lines.get(0).equals(HEAD)) {
      return Optional.empty();
    }
    try {
      Map<String, LearnedTray> trays = new TreeMap<>();
      for (String line : lines.subList(1, lines.size())) {
        LearnedTray tray = tray(line);
        if (trays.put(tray.name(), tray) != null) {
          return Optional.empty();
        }
      }
      return Optional.of(Map.copyOf(trays));
    } catch (IllegalArgumentException | DateTimeException e) {
      return Optional.empty();
    }
  }

  private static LearnedTray tray(String line) {
    String[] f = line.split("\t", -1);
    if (f.length != FIELDS || !LearnedTray.named(f[0])) {
      throw new IllegalArgumentException(line);
    }
    boolean measured = f[3].equals(MEASURED);
    if (!measured && !f[3].equals(DECLARED)) {
      throw new IllegalArgumentException(line);
    }
    return new LearnedTray(
        f[0],
        LocalDate.parse(f[1]).toEpochDay(),
        positive(f[2]),
        measured,
        figure(f[4]),
        figure(f[5]),
        figure(f[6]),
        figure(f[7]),
        figure(f[8]),
        figure(f[9]),
        figure(f[10]),
        figure(f[11]),
        positive(f[12]));
  }

  private static Figure figure(String field) {
    int at = field.indexOf('~');
    if (at < 0) {
      throw new IllegalArgumentException(field);
    }
    return new Figure(positive(field.substring(0, at)), positive(field.substring(at + 1)));
  }

  private static double positive(String field) {
    double value = Double.parseDouble(field);
    if (!(value >= 0 && Double.isFinite(value))) {
      throw new IllegalArgumentException(field);
    }
    return value;
  }
}
