package trayward.controller.event;

/**
 * One alarm as it stands after a scan.
 *
 * @param cause what it is about
 * @param state where it is in its life cycle
 */
public record Alarm(AlarmCause cause, AlarmState state) {

  /** Whether it sounds: unacknowledged, and more pressing than what can wait for the day's end. */
  public boolean sounds() {
    return state.unacknowledged() && cause.priority() != Priority.LOW;
  }
}
