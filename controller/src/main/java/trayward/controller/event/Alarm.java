package trayward.controller.event;

/**
 * One alarm as it stands after a scan.
 *
 * @param cause what tripped
 * @param state where it is in its life cycle
 */
public record Alarm(TripCause cause, AlarmState state) {}
