package trayward.host.link;

/** What buzzer and lamp at the tray may be asked for; every alarm outranks it. */
public enum Call {
  /** The moment to watch the sheet has come. */
  WATCH_NOW,
  /** A mark was made. */
  MARKED,
  /** A mark was taken back. */
  TAKEN_BACK
}
