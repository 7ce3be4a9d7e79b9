package trayward.controller.scan;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import trayward.controller.event.Alarm;
import trayward.controller.event.AlarmCause;
import trayward.controller.event.AlarmState;
import trayward.controller.event.AlarmStep;
import trayward.controller.event.TripCause;

/**
 * Turns the alarms of each scan into steps of their life cycles, each told once. Scan thread only.
 *
 * <p>The condition of a latched trip may flicker around its limit, scan by scan. It counts as gone
 * once it has been gone for the time a warning needs to clear, so that it makes one step and not
 * many. Warnings come here with their delays behind them. What a reset needs is judged elsewhere,
 * without this delay.
 */
final class AlarmSteps {

  private final long holdNanos;
  private final Map<TripCause, Long> presentNanos = new EnumMap<>(TripCause.class);
  private List<Alarm> before = List.of();
  private boolean first = true;

  AlarmSteps(int holdMs) {
    this.holdNanos = holdMs * 1_000_000L;
  }

  /**
   * The steps of one scan, in the order of its alarms; those that became normal last.
   *
   * @param found what was found of a trip of this very scan, in words; empty for any other
   */
  List<AlarmStep> next(long nowNanos, List<Alarm> alarms, Function<TripCause, String> found) {
    if (alarms.isEmpty() && before.isEmpty()) {
      first = false;
      return List.of();
    }
    List<Alarm> now = alarms.stream().map(alarm -> held(nowNanos, alarm)).toList();
    List<AlarmStep> steps = new ArrayList<>();
    for (Alarm alarm : now) {
      if (!before.contains(alarm)) {
        String detail = detail(alarm.cause(), found);
        steps.add(new AlarmStep(nowNanos, alarm.cause(), alarm.state(), detail));
      }
    }
    for (Alarm gone : before) {
      if (now.stream().noneMatch(alarm -> alarm.cause() == gone.cause())) {
        steps.add(new AlarmStep(nowNanos, gone.cause(), AlarmState.NORMAL, ""));
        forget(gone.cause());
      }
    }
    before = now;
    first = false;
    return steps;
  }

  private String detail(AlarmCause cause, Function<TripCause, String> found) {
    if (!(cause instanceof TripCause trip)) {
      return "";
    }
    String words = found.apply(trip);
    return words.isEmpty() && first ? "latched at this start" : words;
  }

  private Alarm held(long nowNanos, Alarm alarm) {
    if (!(alarm.cause() instanceof TripCause trip)) {
      return alarm;
    }
    return switch (alarm.state()) {
      case UNACKNOWLEDGED, ACKNOWLEDGED -> {
        presentNanos.put(trip, nowNanos);
        yield alarm;
      }
      case LATCHED_UNACKNOWLEDGED, LATCHED_ACKNOWLEDGED -> {
        Long since = presentNanos.get(trip);
        boolean present = since != null && nowNanos - since < holdNanos;
        yield new Alarm(trip, AlarmState.of(present, !alarm.state().unacknowledged()));
      }
      case NORMAL, RETURNED_UNACKNOWLEDGED -> alarm; // no trip is ever in these
    };
  }

  private void forget(AlarmCause cause) {
    if (cause instanceof TripCause trip) {
      presentNanos.remove(trip);
    }
  }
}
