package trayward.controller.safety;

/** Why a request was refused. */
public enum Refusal {
  /** The stop circuit is open. */
  STOP_PRESSED("stop is pressed or its wire is broken"),
  /** A start while a run is on. */
  ALREADY_RUNNING("a run is on already"),
  /** A start in lockout. */
  LOCKED_OUT("locked out: acknowledge and reset first"),
  /** A start without a believable bath temperature. */
  BATH_PROBE_BAD("the bath probe gives no believable reading"),
  /** A start while the controller's record cannot be written. */
  STORE_UNWRITABLE("the controller's record cannot be written"),
  /** A start that must be confirmed first: maintenance overdue, or a clock that is not set. */
  CONFIRM_FIRST("maintenance is overdue or the clock is not set: confirm to start all the same"),
  /** A reset when nothing is latched. */
  NOT_LOCKED_OUT("nothing is latched"),
  /** A reset before the acknowledgement. */
  NOT_ACKNOWLEDGED("acknowledge the alarm first"),
  /** A reset while a cause is still there. */
  CAUSE_PRESENT("a cause is still present"),
  /** A reset from afar. */
  NOBODY_AT_TRAY("reset needs a person at the tray");

  private final String words;

  Refusal(String words) {
    this.words = words;
  }

  /** The reason in the words the page shows. */
  public String words() {
    return words;
  }
}
