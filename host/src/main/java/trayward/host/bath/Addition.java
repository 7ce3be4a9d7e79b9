package trayward.host.bath;

import java.time.Instant;
import java.util.Optional;

/**
 * Something added to a bath: fresh developer, a top-up with water, carry-over. Immutable.
 *
 * @param id id in the log, counts from 1
 * @param bathId bath it went into
 * @param wall wall-clock time, for the record only
 * @param sessionS seconds on the open session's monotonic time line, 0 or more; NaN where no
 *     session was open
 * @param what what it was, 1 to {@value #WHAT_MAX} characters
 * @param millilitres volume, more than 0 up to {@value #MILLILITRES_MAX} mL
 */
public record Addition(
    long id, long bathId, Instant wall, double sessionS, String what, double millilitres) {

  /** Longest description: one line of a page or card. */
  public static final int WHAT_MAX = 80;

  /** Most at once, mL: a full large jug; more than that is a new bath. */
  public static final int MILLILITRES_MAX = 5000;

  /** Refuses what {@link #check} would have found. */
  public Addition {
    Entries.insist(problem(sessionS, what, millilitres));
  }

  /** An addition, or the first thing wrong with it. Parameters as of the record. */
  public static Checked<Addition> check(
      long id, long bathId, Instant wall, double sessionS, String what, double millilitres) {
    Optional<Problem> problem = problem(sessionS, what, millilitres);
    return problem.isPresent()
        ? new Checked.Bad<>(problem.get())
        : new Checked.Good<>(new Addition(id, bathId, wall, sessionS, what, millilitres));
  }

  private static Optional<Problem> problem(double sessionS, String what, double millilitres) {
    return Entries.name("what", what, WHAT_MAX)
        .or(() -> Entries.volume("millilitres", millilitres, MILLILITRES_MAX, "mL"))
        .or(() -> time(sessionS));
  }

  private static Optional<Problem> time(double sessionS) {
    return Double.isNaN(sessionS) || (Double.isFinite(sessionS) && sessionS >= 0)
        ? Optional.empty()
        : Optional.of(
            new Problem("session_s", Double.toString(sessionS), "0 or more, or no number"));
  }
}
