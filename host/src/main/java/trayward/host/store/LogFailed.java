package trayward.host.store;

/**
 * A read or write of an open log failed, say for a full disk. Nothing was half written, and the
 * call may be made again. The message is one sentence and names the file.
 */
public final class LogFailed extends RuntimeException {

  private static final long serialVersionUID = 1L;

  private final String sentence;

  LogFailed(String message, Throwable cause) {
    super(message, cause);
    this.sentence = message;
  }

  LogFailed(String message) {
    super(message);
    this.sentence = message;
  }

  /** One sentence for the person, naming the file. */
  @Override
  public String getMessage() {
    return sentence;
  }
}
