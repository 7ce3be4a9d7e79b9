package trayward.controller.scan;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import trayward.controller.event.Alarm;
import trayward.controller.event.AlarmCause;
import trayward.controller.event.AlarmState;

/**
 * Buzzer and lamp: which rhythm each is in. It hears of alarms after the interlock and tells it
 * nothing, so that no call can touch heat. Scan thread only.
 *
 * <p>An alarm may be silenced, it alone and for two minutes: the lamp goes on, whatever else sounds
 * goes on, and one that comes anew sounds again. Only acknowledging ends it.
 */
final class Signals {

  /** Long enough to look and to act; a person called away is called again. */
  static final long SILENCE_NANOS = 120_000_000_000L;

  private final Track buzzer = new Track();
  private final Track lamp = new Track();
  private final List<Silenced> silenced = new ArrayList<>(); // at most one for each cause
  private List<Alarm> alarms = List.of();
  private @Nullable Call call;
  private long callNanos;
  private boolean on;
  private boolean lit;

  /** A silenced alarm, in the state in which it was silenced or has come to since. */
  private record Silenced(AlarmCause cause, AlarmState state, long untilNanos) {}

  /** The rhythm one output is in, from its beginning. */
  private static final class Track {
    private @Nullable Rhythm rhythm;
    private long sinceNanos;

    boolean next(@Nullable Rhythm now, boolean anew, long nowNanos) {
      if (now != rhythm || anew) {
        rhythm = now;
        sinceNanos = nowNanos;
      }
      return now != null && now.on((nowNanos - sinceNanos) / 1_000_000L);
    }
  }

  /** What a host asks; it takes the place of what was asked before. */
  void call(Call asked, long nowNanos) {
    call = asked;
    callNanos = nowNanos;
  }

  /** Silences one alarm that sounds; false where it does not. */
  boolean silence(AlarmCause cause, long nowNanos) {
    for (Alarm alarm : alarms) {
      if (alarm.cause() == cause && alarm.sounds()) {
        silenced.removeIf(s -> s.cause() == cause);
        silenced.add(new Silenced(cause, alarm.state(), nowNanos + SILENCE_NANOS));
        return true;
      }
    }
    return false;
  }

  /** After one scan: every alarm as it stands, or none where none calls. */
  void next(List<Alarm> now, long nowNanos) {
    alarms = now;
    Rhythm seen = null;
    Rhythm heard = null;
    if (!silenced.isEmpty()) {
      keepSilent(nowNanos);
    }
    for (Alarm alarm : now) {
      Rhythm rhythm = Rhythm.of(alarm).orElse(null);
      seen = Rhythm.first(seen, rhythm);
      heard = silent(alarm.cause()) ? heard : Rhythm.first(heard, rhythm);
    }
    if (call != null && call.rhythm().over((nowNanos - callNanos) / 1_000_000L)) {
      call = null;
    }
    Rhythm asked = call == null ? null : call.rhythm();
    boolean anew = asked != null && callNanos == nowNanos;
    on = buzzer.next(Rhythm.first(heard, asked), anew && heard == null, nowNanos);
    lit = lamp.next(Rhythm.first(seen, asked), anew && seen == null, nowNanos);
  }

  /** Whether the buzzer is on. */
  boolean buzzer() {
    return on;
  }

  /** Whether the lamp is. */
  boolean lamp() {
    return lit;
  }

  private boolean silent(AlarmCause cause) {
    for (Silenced each : silenced) {
      if (each.cause() == cause) {
        return true;
      }
    }
    return false;
  }

  /** What has gone, was acknowledged, came back or had its time is silent no longer. */
  private void keepSilent(long nowNanos) {
    silenced.removeIf(s -> nowNanos >= s.untilNanos() || cameOrWent(s));
    silenced.replaceAll(s -> new Silenced(s.cause(), state(s.cause()), s.untilNanos()));
  }

  private boolean cameOrWent(Silenced s) {
    AlarmState now = state(s.cause());
    boolean cameBack = now == AlarmState.UNACKNOWLEDGED && s.state() != AlarmState.UNACKNOWLEDGED;
    return !now.unacknowledged() || cameBack;
  }

  private AlarmState state(AlarmCause cause) {
    for (Alarm alarm : alarms) {
      if (alarm.cause() == cause) {
        return alarm.state();
      }
    }
    return AlarmState.NORMAL;
  }
}
