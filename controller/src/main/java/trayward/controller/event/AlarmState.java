package trayward.controller.event;

/**
 * Alarm life cycle by the state names of ISA-18.2 / IEC 62682. A warning goes through the first
 * four, a latched trip through all but the fourth.
 */
public enum AlarmState {
  /** No alarm. */
  NORMAL,
  /** The condition is present and nobody has acknowledged it. */
  UNACKNOWLEDGED,
  /** The condition is present and acknowledged. */
  ACKNOWLEDGED,
  /** The condition of a warning has gone and nobody has acknowledged it. */
  RETURNED_UNACKNOWLEDGED,
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

  /** Whether somebody has yet to acknowledge it. */
  public boolean unacknowledged() {
    return switch (this) {
      case UNACKNOWLEDGED, RETURNED_UNACKNOWLEDGED, LATCHED_UNACKNOWLEDGED -> true;
      case NORMAL, ACKNOWLEDGED, LATCHED_ACKNOWLEDGED -> false;
    };
  }

  /** The state in the words of the standards. */
  public String words() {
    return name().toLowerCase(java.util.Locale.ROOT).replace('_', ' ');
  }
}
