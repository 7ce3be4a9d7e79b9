package trayward.controller.sense;

/**
 * Whether a probe answers, through time, and when that is worth a line in the log: once when it has
 * been silent for some seconds, once when it is back, and no more than a pair a minute, so that a
 * loose contact fills no disk. A value; {@link #next} returns the following one. Pure.
 *
 * @param lost whether its silence has been told
 * @param silentSinceNanos when it was first silent; {@link #ANSWERS} while it answers
 * @param toldNanos when a silence was last told; {@link #NEVER} before the first
 * @param news what is worth a line now
 */
public record Presence(boolean lost, long silentSinceNanos, long toldNanos, News news) {

  /** What is worth a line. */
  public enum News {
    /** Nothing. */
    NONE,
    /** It has been silent for some seconds. */
    LOST,
    /** It answers again. */
    FOUND
  }

  private static final long ANSWERS = Long.MIN_VALUE;
  private static final long NEVER = Long.MIN_VALUE;

  /** As long as badness must last to trip by default (SR-08): a single miss is no loss. */
  private static final long SILENT_NANOS = 3_000_000_000L;

  /** Least time between two silences told. */
  private static final long APART_NANOS = 60_000_000_000L;

  /** Before anything was read. */
  public static final Presence START = new Presence(false, ANSWERS, NEVER, News.NONE);

  /** After a read that brought an answer, of whatever quality, or none. */
  public Presence next(boolean answers, long nowNanos) {
    if (answers) {
      return new Presence(false, ANSWERS, toldNanos, lost ? News.FOUND : News.NONE);
    }
    long since = silentSinceNanos == ANSWERS ? nowNanos : silentSinceNanos;
    boolean tell =
        !lost
            && nowNanos - since >= SILENT_NANOS
            && (toldNanos == NEVER || nowNanos - toldNanos >= APART_NANOS);
    return new Presence(
        lost || tell, since, tell ? nowNanos : toldNanos, tell ? News.LOST : News.NONE);
  }
}
