package trayward.controller.event;

/** What sort of thing happened. */
public enum EventKind {
  /** The controller came up. */
  POWER_UP,
  /** The interlock changed state: subject is the new state, detail the old one. */
  STATE,
  /** A trip latched: subject is the cause. */
  TRIP,
  /** An alarm went on in its life cycle: subject is the alarm, detail its new state. */
  ALARM,
  /** A person's request was carried out: subject is the request. */
  DONE,
  /** A person's request was refused: subject is the request, detail the reason. */
  REFUSED,
  /** Heat began to be withheld in a run: subject is the reason. */
  WITHHELD,
  /** A probe's reading changed class: subject is the probe, detail the class. */
  PROBE,
  /** The foot switch: subject is pressed, then LONG where that press is kept down. */
  PEDAL,
  /** Presence will be due soon: subject is the minutes left. */
  PRESENCE_SOON,
  /** A print's moment: subject is in, emergence or pull. */
  MARK,
  /** The level of liquid is judged anew: subject is the level, detail the water to add. */
  LEVEL,
  /** What is known of the tray: subject is LEARNED or HEATER_TOO_SMALL, detail in words. */
  TRAY,
  /** Something done to the tray, such as a pour: subject is what. */
  ACTION,
  /** A simulated fault: subject is its name, detail whether it begins or ends. */
  FAULT,
  /** Anything else worth keeping, in words. */
  NOTE
}
