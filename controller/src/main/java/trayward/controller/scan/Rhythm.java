package trayward.controller.scan;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import trayward.controller.event.Alarm;
import trayward.controller.event.Warning;

/**
 * What buzzer and lamp say, told apart by rhythm alone: through a respirator, beside a fan, under
 * red light. The one table of rhythms. Pure.
 *
 * <p>The first to stand here outranks those after it. None flashes more than twice in a second:
 * WCAG 2.3.1 allows three. Times are multiples of a scan, 100 ms.
 */
public enum Rhythm {
  /** An alarm nobody has acknowledged: without rest, three tenths on, two off. */
  ALARM(300, 200, 1, 0, 0),
  /** Presence is due: two short ones, then a long rest. */
  PRESENCE_DUE(200, 300, 2, 3000, 0),
  /** The moment to watch the sheet has come: long ones, for ten seconds. */
  WATCH_NOW(1500, 500, 1, 0, 10_000),
  /** A mark was made: a short one, once. */
  MARKED(200, 0, 1, 0, 200),
  /** A mark was taken back: a long one, once. */
  TAKEN_BACK(800, 0, 1, 0, 800);

  private final int onMs;
  private final int beatMs;
  private final int beats;
  private final int periodMs;
  private final int lastsMs;

  Rhythm(int onMs, int offMs, int beats, int restMs, int lastsMs) {
    this.onMs = onMs;
    this.beatMs = onMs + offMs;
    this.beats = beats;
    this.periodMs = beats * beatMs + restMs;
    this.lastsMs = lastsMs;
  }

  /** How long it lasts, ms; 0 for as long as its alarm stands. */
  public int lastsMs() {
    return lastsMs;
  }

  /** Whether it is over after so long, ms. */
  boolean over(long sinceMs) {
    return lastsMs > 0 && sinceMs >= lastsMs;
  }

  /**
   * Whether buzzer and lamp are on.
   *
   * @param sinceMs time since it began, ms; from 0
   */
  public boolean on(long sinceMs) {
    long left = sinceMs % periodMs;
    return !over(sinceMs) && left < (long) beats * beatMs && left % beatMs < onMs;
  }

  /** The rhythm of an alarm; empty for one that does not sound. */
  static Optional<Rhythm> of(Alarm alarm) {
    if (!alarm.sounds()) {
      return Optional.empty();
    }
    return Optional.of(alarm.cause() == Warning.PRESENCE_DUE ? PRESENCE_DUE : ALARM);
  }

  /** Whichever stands first in this table. */
  static @Nullable Rhythm first(@Nullable Rhythm one, @Nullable Rhythm other) {
    if (one == null || other == null) {
      return one == null ? other : one;
    }
    return one.compareTo(other) <= 0 ? one : other;
  }
}
