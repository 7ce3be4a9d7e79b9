package trayward.host.store;

import trayward.host.bath.Problem;
import trayward.host.session.Print;

/** What came of changing a print's title or notes. */
public sealed interface PrintUpdate {

  /**
   * It is changed.
   *
   * @param print the print as it is now
   */
  record Updated(Print print) implements PrintUpdate {}

  /** There is no print of that number. */
  record NoSuchPrint() implements PrintUpdate {}

  /**
   * What was entered is not accepted; nothing is changed.
   *
   * @param problem what was wrong
   */
  record Refused(Problem problem) implements PrintUpdate {}
}
