package trayward.host.session;

import java.time.Instant;
import java.util.Optional;

/**
 * One sitting at the tray, from a start to its end. Immutable.
 *
 * @param id id in the log, counts from 1
 * @param startedWall wall-clock time at 0 s of the session's time line
 * @param endedWall wall-clock time of its end; empty while open
 * @param ending how it ended, such as {@code stopped} or {@code interrupted}; empty while open
 * @param simulated whether the tray was the simulated one
 */
public record Session(
    long id, Instant startedWall, Optional<Instant> endedWall, String ending, boolean simulated) {

  /** Refuses an end without a reason and a reason without an end. */
  public Session {
    if (endedWall.isPresent() == ending.isEmpty()) {
      throw new IllegalArgumentException("a session has both an end and an ending, or neither");
    }
  }

  /** Whether it has not ended. */
  public boolean open() {
    return endedWall.isEmpty();
  }
}
