package trayward.host.session;

import java.time.Instant;
import java.util.OptionalDouble;

/**
 * One marked moment of a print. Immutable.
 *
 * @param id id in the log, counts from 1
 * @param kind which moment
 * @param sessionS seconds on the session's monotonic time line
 * @param wall wall-clock time, for the record only
 * @param by where the mark came from: {@code page}, {@code pedal} or {@code api}
 * @param bathC bath temperature read at the mark, °C; empty where no reading was valid
 */
public record Mark(
    long id, MarkKind kind, double sessionS, Instant wall, String by, OptionalDouble bathC) {}
