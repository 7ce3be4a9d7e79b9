package trayward.host.report.plan;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import trayward.host.bath.Checked;
import trayward.host.bath.Problem;

/**
 * One thing a planner may be told: what it means, what is accepted, what is taken when it is not
 * told. Immutable.
 *
 * @param name as in a request; the command line writes a hyphen for each underscore
 * @param kind what is written for it
 * @param words what it means
 * @param unit of a number; empty for none
 * @param least smallest number accepted
 * @param most largest number accepted
 * @param choices words accepted, for a choice
 * @param otherwise what is taken when it is not told; empty for nothing
 * @param required whether it must be told
 */
public record PlanOption(
    String name,
    Kind kind,
    String words,
    String unit,
    double least,
    double most,
    List<String> choices,
    String otherwise,
    boolean required) {

  /** What is written for an option. */
  public enum Kind {
    /** A number, or a fraction such as 7/3. */
    NUMBER,
    /** One of some words. */
    CHOICE,
    /** Some text that its planner reads. */
    TEXT,
    /** Nothing on the command line, true or false in a request. */
    FLAG
  }

  /** Longest text read, characters: twenty entries of a list. */
  static final int TEXT_MAX = 400;

  private static final String DIGITS = "[0-9]{1,9}(\\.[0-9]{1,9})?";

  static PlanOption number(String name, String words, String unit, double least, double most) {
    return new PlanOption(name, Kind.NUMBER, words, unit, least, most, List.of(), "", false);
  }

  static PlanOption choice(String name, String words, List<String> of) {
    return new PlanOption(name, Kind.CHOICE, words, "", 0, 0, of, of.get(0), false);
  }

  static PlanOption text(String name, String words, String form) {
    return new PlanOption(name, Kind.TEXT, words, form, 0, 0, List.of(), "", false);
  }

  static PlanOption flag(String name, String words) {
    return new PlanOption(name, Kind.FLAG, words, "", 0, 0, List.of(), "false", false);
  }

  /** The same, with what is taken when it is not told. */
  PlanOption or(double number) {
    return new PlanOption(
        name, kind, words, unit, least, most, choices, Numbers.plain(number), false);
  }

  /** The same, which must be told. */
  PlanOption must() {
    return new PlanOption(name, kind, words, unit, least, most, choices, "", true);
  }

  /** As it is written on a command line. */
  public String dashed() {
    return "--" + name.replace('_', '-');
  }

  /** What is accepted, in words. */
  public String accepted() {
    return switch (kind) {
      case NUMBER -> (Numbers.plain(least) + " to " + Numbers.plain(most) + " " + unit).strip();
      case CHOICE -> String.join(", ", choices);
      case TEXT -> unit;
      case FLAG -> "true or false";
    };
  }

  /** What it means, what is accepted and what is taken otherwise, in a line. */
  public String described() {
    String end = otherwise.isEmpty() || kind == Kind.FLAG ? "" : " (default: " + otherwise + ")";
    String needed = required ? " (required)" : end;
    return kind == Kind.FLAG ? words : words + ": " + accepted() + needed;
  }

  /** What stands for its value in a synopsis. */
  public String label() {
    return switch (kind) {
      case NUMBER -> unit.isEmpty() ? "N" : label(unit);
      case CHOICE, TEXT -> "WORDS";
      case FLAG -> "";
    };
  }

  private static String label(String unit) {
    return unit.equals("%")
        ? "PERCENT"
        : unit.replace('²', '2').replace('³', '3').replace("°", "").toUpperCase(Locale.ROOT);
  }

  /** The first thing wrong with what was written for it. */
  Optional<Problem> problem(String written) {
    boolean right =
        switch (kind) {
          case NUMBER -> number(written) >= least && number(written) <= most;
          case CHOICE -> choices.contains(written);
          case TEXT -> written.length() <= TEXT_MAX;
          case FLAG -> written.equals("true") || written.equals("false");
        };
    return right
        ? Optional.empty()
        : Optional.of(new Problem(name, written.isEmpty() ? "nothing" : written, accepted()));
  }

  /** A number as written, or a fraction; NaN where it is neither. */
  static double number(String written) {
    String text = written.strip();
    if (text.matches("[-+]?" + DIGITS)) {
      return Double.parseDouble(text);
    }
    if (text.matches("[-+]?" + DIGITS + "/" + DIGITS)) {
      int slash = text.indexOf('/');
      return Double.parseDouble(text.substring(0, slash))
          / Double.parseDouble(text.substring(slash + 1));
    }
    return Double.NaN;
  }

  /** A refusal that names it. */
  <T> Checked<T> refused(String found, String accepted) {
    return new Checked.Bad<>(new Problem(name, found, accepted));
  }
}
