package trayward.controller.event;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

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

  /** Every cause there is, trips first. */
  static List<AlarmCause> all() {
    return Stream.concat(Arrays.stream(TripCause.values()), Arrays.stream(Warning.values()))
        .map(AlarmCause.class::cast)
        .toList();
  }

  /** The cause of a name; empty where a record of another version names one not known here. */
  static Optional<AlarmCause> of(String name) {
    return all().stream().filter(cause -> cause.name().equals(name)).findFirst();
  }
}
