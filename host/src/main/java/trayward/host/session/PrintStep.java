package trayward.host.session;

import java.time.Instant;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * One thing done with a print after the developer. Immutable.
 *
 * @param n its number within the print, counts from 1 and is never given twice
 * @param kind what was done
 * @param seconds how long, seconds; empty where not said
 * @param dilution such as 1+4; empty where not said
 * @param what what it was done in or with, in the person's own words; may be empty
 * @param wall when it was entered, wall-clock time
 */
public record PrintStep(
    int n, StepKind kind, OptionalDouble seconds, String dilution, String what, Instant wall) {

  /** Most steps of one print, those taken back included: three toners with all their washes. */
  public static final int STEPS_MAX = 60;

  /** How long a step takes: up to two days, for a print left to dry. */
  public static final FieldRule SECONDS = FieldRule.number("seconds", "Seconds", 0, 172_800);

  /** How its bath was diluted. */
  public static final FieldRule DILUTION = FieldRule.dilution("dilution", "Dilution");

  /** What it was done in or with. */
  public static final FieldRule WHAT = FieldRule.text("what", "What", 200);

  /** On one line. */
  public String words() {
    StringBuilder out = new StringBuilder(kind.word());
    if (seconds.isPresent()) {
      double s = seconds.getAsDouble();
      out.append(String.format(Locale.ROOT, s == Math.rint(s) ? " %.0f s" : " %.1f s", s));
    }
    if (!dilution.isEmpty()) {
      out.append(' ').append(dilution);
    }
    return what.isEmpty() ? out.toString() : out.append(' ').append(what).toString();
  }
}
