package trayward.controller.station;

/**
 * What became of a command. Immutable.
 *
 * @param token its token
 * @param outcome what became of it
 * @param reason why, in words; may be empty
 */
public record CommandResult(int token, Outcome outcome, String reason) {

  /** What can become of one. */
  public enum Outcome {
    /** There was none. */
    NONE,
    /** The next scan will answer. */
    WAITING,
    /** Carried out. */
    DONE,
    /** Refused. */
    REFUSED,
    /** Refused until it comes as a confirmed one (SR-23). */
    CONFIRM_FIRST,
    /** No such command. */
    UNKNOWN_COMMAND
  }
}
