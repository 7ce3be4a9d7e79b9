package trayward.controller.event;

/** Alarm life cycle by the state names of ISA-18.2 / IEC 62682. */
public enum AlarmState {
  /** The condition is present and nobody has acknowledged it. */
  UNACKNOWLEDGED,
  /** The condition is present and acknowledged. */
  ACKNOWLEDGED,
  /** The condition has gone, the latch holds, and nobody has acknowledged it. */
  LATCHED_UNACKNOWLEDGED,
  /** The condition has gone and is acknowledged; the latch waits for a manual reset. */
  LATCHED_ACKNOWLEDGED;

  /** The state of a latched alarm. */
  public static AlarmState of(boolean present, boolean acknowledged) {
    if (present) {
      return acknowledged ? ACKNOWLEDGED : UNACKNOWLEDGED;
    }
    return acknowledged ? LATCHED_ACKNOWLEDGED : LATCHED_UNACKNOWLEDGED;
  }
}
