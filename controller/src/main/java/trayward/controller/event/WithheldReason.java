package trayward.controller.event;

/** Why heat is withheld although nothing has tripped; the state says which. */
public enum WithheldReason {
  /** The interlock is in a state that never heats (off, proving, purging, after-run, lockout). */
  NOT_RUNNING("not running"),
  /** SR-15: presence has not been renewed in time. */
  PRESENCE_DUE("presence due: touch the page, the pedal or the button"),
  /** SR-16: the host is required and silent. */
  HOST_LOST("host lost"),
  /** SR-28: the level of liquid is unsure. */
  LEVEL_UNSURE("level unsure: look at the tray, fill it and confirm the level"),
  /** SR-05: a proof of moving air is absent in this scan. */
  PROOF_BREAK("proof of moving air is broken"),
  /** SR-06: the bath is above the set temperature. */
  ABOVE_SET("bath above set"),
  /** SR-07, SR-08: heat is held off for some seconds to see where it goes. */
  LOOKING("heat is held off for a look at the plate and the bath"),
  /** SR-17: this scan came late. */
  SCAN_LATE("this scan came late"),
  /** SR-08: no bath or plate temperature to go by. */
  PROBE_UNSURE("no believable temperature yet"),
  /** SR-12: the latch could not be written. */
  STORE_UNWRITABLE("the controller's record is not written");

  private final String words;

  WithheldReason(String words) {
    this.words = words;
  }

  /** The reason in the words the page shows. */
  public String words() {
    return words;
  }
}
