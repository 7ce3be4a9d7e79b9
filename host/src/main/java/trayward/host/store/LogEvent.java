package trayward.host.store;

import java.time.Instant;
import java.util.OptionalLong;

/**
 * An event as the log keeps it. Immutable.
 *
 * @param id id in the log, counts from 1
 * @param sessionId session it fell into; empty where none was open
 * @param wall wall-clock time, for the record only
 * @param uptimeS seconds since the program's start
 * @param kind what sort of thing, at most {@value #KIND_MAX} characters
 * @param subject the state, cause, request or probe concerned, at most {@value #SUBJECT_MAX}
 *     characters
 * @param detail the rest in words, may be empty, at most {@value #DETAIL_MAX} characters
 */
public record LogEvent(
    long id,
    OptionalLong sessionId,
    Instant wall,
    double uptimeS,
    String kind,
    String subject,
    String detail) {

  /** Longest kind: the name of a constant. */
  public static final int KIND_MAX = 32;

  /** Longest subject: the name of a constant or setting. */
  public static final int SUBJECT_MAX = 80;

  /** Longest detail: a few sentences. */
  public static final int DETAIL_MAX = 500;
}
