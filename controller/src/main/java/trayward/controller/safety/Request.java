package trayward.controller.safety;

/** What a person may ask of the interlock. */
public enum Request {
  /** Heat off; never refused. */
  STOP,
  /** Begin proving. */
  START,
  /** I have seen the alarm. */
  ACKNOWLEDGE,
  /** Leave the lockout; needs somebody at the tray. */
  RESET,
  /** I am here. */
  PRESENCE
}
