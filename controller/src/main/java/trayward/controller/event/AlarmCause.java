package trayward.controller.event;

/** What an alarm is about: a cause that trips and latches, or a warning that does not. */
public sealed interface AlarmCause permits TripCause, Warning {

  /** Its stable name. */
  String name();

  /** The safety requirement behind it, such as {@code SR-05}. */
  String requirement();

  /** How pressing it is; {@link #why} is the reason. */
  Priority priority();

  /** What: one sentence. */
  String meaning();

  /** Why it matters: what follows where nobody acts. */
  String why();

  /** What to do: one line. */
  String action();
}
