package trayward.host.store;

import trayward.host.session.Print;

/** What came of a mark. */
public sealed interface MarkResult {

  /**
   * It is made and safe on the disk.
   *
   * @param print the print with it
   */
  record Marked(Print print) implements MarkResult {}

  /**
   * It was made already, within a second.
   *
   * @param print the print that has it
   */
  record Duplicate(Print print) implements MarkResult {}

  /**
   * It makes no sense now; nothing is changed.
   *
   * @param why one clause for the person
   */
  record Refused(String why) implements MarkResult {}
}
