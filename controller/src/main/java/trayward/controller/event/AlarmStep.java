package trayward.controller.event;

/**
 * One step of an alarm in its life cycle. Immutable.
 *
 * @param atNanos monotonic time of the scan, nanoseconds
 * @param cause what the alarm is about
 * @param state the state it came to
 * @param detail what was found, in words; may be empty
 */
public record AlarmStep(long atNanos, AlarmCause cause, AlarmState state, String detail) {}
