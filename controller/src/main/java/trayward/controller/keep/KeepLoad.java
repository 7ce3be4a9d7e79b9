package trayward.controller.keep;

/** What came of reading the record at power-up. */
public sealed interface KeepLoad {

  /** A record was read, or there was none yet and a clean one stands for it. */
  record Loaded(KeepRecord record) implements KeepLoad {}

  /**
   * There is a record and it cannot be believed: SR-12 asks for a lockout.
   *
   * @param why one sentence for the person
   */
  record Unreadable(String why) implements KeepLoad {}
}
