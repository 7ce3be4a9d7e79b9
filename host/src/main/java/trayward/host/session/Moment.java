package trayward.host.session;

import java.time.Instant;

/**
 * A moment in a session, told twice: for arithmetic and for the record. Immutable.
 *
 * <p>Every elapsed time comes from {@code sessionS}; {@code wall} is only ever shown, so a step of
 * the wall clock changes no elapsed time.
 *
 * @param sessionS seconds on the session's monotonic time line, finite, 0 or more
 * @param wall the wall clock's word for the same moment
 */
public record Moment(double sessionS, Instant wall) {

  /** Refuses a time that no monotonic clock gives. */
  public Moment {
    if (!Double.isFinite(sessionS) || sessionS < 0) {
      throw new IllegalArgumentException("a session's time is finite and not negative");
    }
  }
}
