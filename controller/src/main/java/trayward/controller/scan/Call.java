package trayward.controller.scan;

/**
 * What a host may have sounded and shown by the lamp, for a bounded time for each asking. Every
 * alarm outranks it, and it is nobody's presence.
 */
public enum Call {
  /** The moment to watch the sheet has come. */
  WATCH_NOW(Rhythm.WATCH_NOW),
  /** A mark was made. */
  MARKED(Rhythm.MARKED),
  /** A mark was taken back. */
  TAKEN_BACK(Rhythm.TAKEN_BACK);

  private final Rhythm rhythm;

  Call(Rhythm rhythm) {
    this.rhythm = rhythm;
  }

  Rhythm rhythm() {
    return rhythm;
  }
}
