package trayward.host.link;

import java.time.Instant;
import java.util.Optional;
import java.util.function.Function;
import trayward.controller.event.Alarm;
import trayward.controller.event.AlarmCause;
import trayward.controller.event.TripCause;
import trayward.controller.keep.AlarmEntry;
import trayward.controller.keep.AlarmRecord;

/** Turns the controller's alarms and their record into what the host shows. Stateless. */
final class AlarmViews {

  private AlarmViews() {}

  static AlarmView of(Alarm alarm) {
    AlarmCause cause = alarm.cause();
    return new AlarmView(
        cause.name(),
        alarm.state().name(),
        cause instanceof TripCause,
        cause.priority().name(),
        cause.priority().words(),
        cause.requirement(),
        cause.meaning(),
        cause.why(),
        cause.action());
  }

  static AlarmHistory history(AlarmRecord record, int most) {
    return new AlarmHistory(
        record.ok(),
        record.skipped(),
        record.lost(),
        record.newest(most).stream().map(AlarmViews::step).toList());
  }

  private static AlarmHistory.Step step(AlarmEntry entry) {
    Optional<AlarmCause> cause = AlarmCause.of(entry.alarm());
    return new AlarmHistory.Step(
        entry.alarm(),
        entry.state().name(),
        Instant.ofEpochSecond(entry.epochSeconds()).toString(),
        entry.uptimeS(),
        entry.detail(),
        text(cause, c -> c.priority().name()),
        text(cause, c -> c.priority().words()),
        text(cause, AlarmCause::requirement),
        text(cause, AlarmCause::meaning),
        text(cause, AlarmCause::why),
        text(cause, AlarmCause::action));
  }

  private static String text(Optional<AlarmCause> cause, Function<AlarmCause, String> what) {
    return cause.map(what).orElse("");
  }
}
