package trayward.host.session;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Locale;
import java.util.Optional;
import trayward.host.bath.Checked;
import trayward.host.bath.Dilution;

/**
 * What one field that a person fills in takes. Immutable.
 *
 * @param name name in JSON and in the log, unit last
 * @param label what it is called on a page
 * @param kind what sort of value
 * @param least least number taken; 0 for what is no number
 * @param most greatest number taken, or most characters of a text
 * @param remembered whether what was entered once is offered again
 */
public record FieldRule(
    String name, String label, Kind kind, double least, double most, boolean remembered) {

  /** Sorts of value. */
  public enum Kind {
    /** A text in the person's own words. */
    TEXT,
    /** A number, with a point. */
    NUMBER,
    /** A dilution such as 1+7. */
    DILUTION,
    /** A day such as 2026-03-01. */
    DATE
  }

  /** A text of at most so many characters, which may be empty. */
  public static FieldRule text(String name, String label, int most) {
    return new FieldRule(name, label, Kind.TEXT, 0, most, false);
  }

  /** A name that is offered again. */
  public static FieldRule name(String name, String label, int most) {
    return new FieldRule(name, label, Kind.TEXT, 0, most, true);
  }

  /** A number within a range, both ends included. */
  public static FieldRule number(String name, String label, double least, double most) {
    return new FieldRule(name, label, Kind.NUMBER, least, most, false);
  }

  /** A dilution. */
  public static FieldRule dilution(String name, String label) {
    return new FieldRule(name, label, Kind.DILUTION, 0, 40, false);
  }

  /** A day. */
  public static FieldRule date(String name, String label) {
    return new FieldRule(name, label, Kind.DATE, 0, 10, false);
  }

  /** The day a text is; empty where it is none. */
  public static Optional<LocalDate> dayOf(String text) {
    try {
      return Optional.of(LocalDate.parse(text));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  /** Whether it takes this text; the empty one says nothing and is taken by each. */
  public boolean takes(String text) {
    if (text.isEmpty()) {
      return true;
    }
    return switch (kind) {
      case TEXT -> text.length() <= most;
      case NUMBER -> {
        double value = numberOf(text);
        yield value >= least && value <= most;
      }
      case DILUTION -> Dilution.read(name, text) instanceof Checked.Good<Dilution>;
      case DATE -> dayOf(text).isPresent();
    };
  }

  /** What it takes, in words. */
  public String accepted() {
    return switch (kind) {
      case TEXT -> String.format(Locale.ROOT, "at most %.0f characters", most);
      case NUMBER -> plain(least) + " to " + plain(most);
      case DATE -> "a day such as 2026-03-01";
      case DILUTION -> Dilution.NO_COLON;
    };
  }

  /** The number a text is; NaN where it is none. */
  public static double numberOf(String text) {
    return text.matches("-?[0-9]{1,9}(\\.[0-9]{1,9})?") ? Double.parseDouble(text) : Double.NaN;
  }

  private static String plain(double number) {
    return number == Math.rint(number)
        ? String.format(Locale.ROOT, "%.0f", number)
        : Double.toString(number);
  }
}
