package trayward.controller.safety;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import trayward.controller.event.Alarm;
import trayward.controller.event.AlarmState;
import trayward.controller.event.Warning;
import trayward.controller.quantity.Ages;

/**
 * The life cycle of every warning (ISA-18.2 / IEC 62682), with delays so that none chatters. A
 * value.
 *
 * @param stands one for each warning, in their order
 */
public record WarningWatch(List<Stand> stands) {

  private static final Warning[] ALL = Warning.values();

  /**
   * Where one warning stands.
   *
   * @param state its state
   * @param changingMs how long the condition has been other than the state says, ms
   */
  public record Stand(AlarmState state, int changingMs) {

    static final Stand NORMAL = new Stand(AlarmState.NORMAL, 0);

    boolean on() {
      return state == AlarmState.UNACKNOWLEDGED || state == AlarmState.ACKNOWLEDGED;
    }

    Stand next(boolean present, int elapsedMs, int onMs, int offMs) {
      if (present == on()) {
        return changingMs == 0 ? this : new Stand(state, 0);
      }
      int age = Ages.older(changingMs, elapsedMs);
      if (age < (present ? onMs : offMs)) {
        return new Stand(state, age);
      }
      return new Stand(present ? AlarmState.UNACKNOWLEDGED : returned(), 0);
    }

    private AlarmState returned() {
      return state == AlarmState.UNACKNOWLEDGED
          ? AlarmState.RETURNED_UNACKNOWLEDGED
          : AlarmState.NORMAL;
    }

    Stand acknowledged() {
      return switch (state) {
        case UNACKNOWLEDGED -> new Stand(AlarmState.ACKNOWLEDGED, changingMs);
        case RETURNED_UNACKNOWLEDGED -> new Stand(AlarmState.NORMAL, changingMs);
        case NORMAL, ACKNOWLEDGED, LATCHED_UNACKNOWLEDGED, LATCHED_ACKNOWLEDGED -> this;
      };
    }
  }

  /** No alarm. */
  static final WarningWatch START = new WarningWatch(Collections.nCopies(ALL.length, Stand.NORMAL));

  /** After one scan. */
  WarningWatch next(Seen seen) {
    boolean acknowledge = seen.in().asks(Request.ACKNOWLEDGE);
    Stand[] next = null; // mostly nothing changes
    for (int i = 0; i < ALL.length; i++) {
      Stand before = stands.get(i);
      boolean on = before.on();
      Stand told = acknowledge ? before.acknowledged() : before;
      Stand now =
          told.next(
              present(ALL[i], seen, on),
              seen.in().elapsedMs(),
              AlarmDelay.onMs(ALL[i], seen.limits()),
              seen.ms(AlarmDelay.OFF));
      if (next == null && !now.equals(before)) {
        next = stands.toArray(Stand[]::new);
      }
      if (next != null) {
        next[i] = now;
      }
    }
    return next == null
        ? this
        : new WarningWatch(Collections.unmodifiableList(Arrays.asList(next)));
  }

  /** Whether the condition of a warning is there; {@code on} says that its alarm is. */
  private static boolean present(Warning warning, Seen seen, boolean on) {
    return switch (warning) {
      case BATH_WITHOUT_AIR -> seen.warmerThanWarm(on) && !seen.in().airProven();
      case LEVEL_UNSURE -> seen.in().level() == Level.UNSURE;
      case HOST_LOST ->
          seen.state().inRun() && seen.in().hostSilentMs() >= seen.ms(Limit.HOST_LOST_S);
      case PRESENCE_DUE ->
          seen.state().inRun()
              && seen.run().presenceMs()
                  >= seen.ms(Limit.PRESENCE_MIN) - seen.ms(Limit.PRESENCE_WARN_MIN);
      case LEVEL_LOW -> seen.in().level() == Level.LOW;
    };
  }

  /** Every warning that is not normal, the most pressing first. */
  List<Alarm> alarms() {
    List<Alarm> alarms = List.of(); // mostly there is none
    for (int i = 0; i < ALL.length; i++) {
      AlarmState state = stands.get(i).state();
      if (state != AlarmState.NORMAL) {
        alarms = alarms.isEmpty() ? new ArrayList<>() : alarms;
        alarms.add(new Alarm(ALL[i], state));
      }
    }
    return alarms;
  }
}
