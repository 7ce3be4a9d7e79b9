package trayward.host.store;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import trayward.host.bath.Problem;

/**
 * One column of an exported table and what it takes. Immutable.
 *
 * @param name its name, unit last
 * @param kind what sort of value
 * @param optional whether it may say nothing
 * @param accepted what it takes, in words
 * @param takes whether it takes a value of its kind
 * @param table the table whose ids it refers to; empty for none
 */
public record LogColumn(
    String name,
    Kind kind,
    boolean optional,
    String accepted,
    Predicate<Object> takes,
    String table) {

  /** Wall-clock times up to the end of the year 9999, milliseconds. */
  private static final long WALL_MAX_MS = 253_402_300_799_999L;

  private static final long SESSION_MAX_MS = Math.round(1000 * Cells.SESSION_MAX_S);

  /** Sorts of value. */
  public enum Kind {
    /** A whole number. */
    WHOLE,
    /** A number, with a point. */
    REAL,
    /** A text. */
    TEXT
  }

  static LogColumn whole(String name, long least, long most) {
    return new LogColumn(
        name,
        Kind.WHOLE,
        false,
        "a whole number, " + least + " to " + most,
        v -> v instanceof Long n && n >= least && n <= most,
        "");
  }

  static LogColumn id(String name) {
    return whole(name, 1, Long.MAX_VALUE / 2);
  }

  static LogColumn of(String name, String table) {
    LogColumn id = id(name);
    return new LogColumn(
        name, Kind.WHOLE, false, "an id of " + table + " in this folder", id.takes, table);
  }

  static LogColumn wallMs(String name) {
    return whole(name, 0, WALL_MAX_MS);
  }

  static LogColumn sessionMs(String name) {
    return whole(name, 0, SESSION_MAX_MS);
  }

  static LogColumn centiC(String name) {
    return whole(name, -Cells.CENTI_MAX, Cells.CENTI_MAX).orNothing();
  }

  static LogColumn real(String name, double least, double most) {
    return new LogColumn(
        name,
        Kind.REAL,
        false,
        String.format(Locale.ROOT, "a number, %s to %s", least, most),
        v -> v instanceof Double d && d >= least && d <= most,
        "");
  }

  static LogColumn text(String name, int most) {
    return new LogColumn(
        name,
        Kind.TEXT,
        false,
        "a text of at most " + most + " characters",
        v -> v instanceof String t && t.length() <= most,
        "");
  }

  static LogColumn word(String name, List<String> words) {
    return new LogColumn(
        name, Kind.TEXT, false, String.join(", ", words), v -> words.contains(v), "");
  }

  LogColumn orNothing() {
    return new LogColumn(name, kind, true, accepted + ", or nothing", takes, table);
  }

  /** What is wrong with this column of a row. */
  Optional<Problem> problem(LogRow row) {
    Optional<Object> cell = row.cell(name);
    return (cell.isEmpty() && optional) || cell.filter(takes).isPresent()
        ? Optional.empty()
        : Optional.of(refusal(cell.map(Object::toString).orElse("nothing")));
  }

  /** That something else was found. */
  public Problem refusal(String found) {
    return new Problem(name, found, accepted);
  }

  /** The value that a text outside is; empty where it is none of this kind. */
  public Optional<Object> read(String text) {
    try {
      return switch (kind) {
        case WHOLE -> Optional.of(Long.parseLong(text));
        case REAL -> Optional.of(Double.parseDouble(text));
        case TEXT -> Optional.of(text);
      };
    } catch (NumberFormatException e) {
      return Optional.empty();
    }
  }
}
