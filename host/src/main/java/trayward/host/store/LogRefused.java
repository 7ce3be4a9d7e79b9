package trayward.host.store;

/** The log cannot be opened as it stands. The message is one sentence and names the file. */
public final class LogRefused extends Exception {

  private static final long serialVersionUID = 1L;

  /** What sort of refusal it is. */
  public enum Reason {
    /** There is no log to read. */
    MISSING,
    /** Another running Trayward, or another program, holds it. */
    IN_USE,
    /** It is no SQLite file, is cut short or does not hang together. */
    DAMAGED,
    /** It is a file of some other program. */
    FOREIGN,
    /** A later version of this program wrote it. */
    NEWER,
    /** An earlier version of this program wrote it, and a reader changes nothing. */
    OLDER,
    /** The folder or file cannot be created, read or written. */
    UNREACHABLE
  }

  private final Reason reason;
  private final String sentence;

  LogRefused(Reason reason, String message) {
    super(message);
    this.reason = reason;
    this.sentence = message;
  }

  /** What sort of refusal it is. */
  public Reason reason() {
    return reason;
  }

  /** One sentence for the person, naming the file. */
  @Override
  public String getMessage() {
    return sentence;
  }
}
