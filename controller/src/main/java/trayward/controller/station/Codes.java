package trayward.controller.station;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import trayward.controller.event.AlarmCause;
import trayward.controller.event.AlarmState;
import trayward.controller.event.EventKind;
import trayward.controller.event.TripCause;
import trayward.controller.event.Warning;
import trayward.controller.event.WithheldReason;
import trayward.controller.keep.UpkeepItem;
import trayward.controller.port.ProbeRole;
import trayward.controller.safety.Level;
import trayward.controller.scan.Call;
import trayward.controller.sense.ReadingKind;

/**
 * Numbers that stand for names on the wire: a name's number is its place in this list, written out
 * so that no change of order elsewhere can move it. New names go to the end. Immutable.
 *
 * @param names the names by number, from 0
 */
public record Codes<E>(List<E> names) {

  /** Classes of a reading. */
  public static final Codes<ReadingKind> READING =
      new Codes<>(
          List.of(
              ReadingKind.VALID,
              ReadingKind.STALE,
              ReadingKind.ABSENT,
              ReadingKind.CRC_ERROR,
              ReadingKind.POWER_ON_VALUE,
              ReadingKind.ALL_ZERO_FRAME,
              ReadingKind.OUT_OF_RANGE,
              ReadingKind.IMPOSSIBLE_RATE));

  /** What withholds heat: bit numbers. */
  public static final Codes<WithheldReason> WITHHELD =
      new Codes<>(
          List.of(
              WithheldReason.NOT_RUNNING,
              WithheldReason.PRESENCE_DUE,
              WithheldReason.HOST_LOST,
              WithheldReason.LEVEL_UNSURE,
              WithheldReason.PROOF_BREAK,
              WithheldReason.ABOVE_SET,
              WithheldReason.LOOKING,
              WithheldReason.SCAN_LATE,
              WithheldReason.PROBE_UNSURE,
              WithheldReason.STORE_UNWRITABLE));

  /** States of an alarm. */
  public static final Codes<AlarmState> ALARM_STATE =
      new Codes<>(
          List.of(
              AlarmState.NORMAL,
              AlarmState.UNACKNOWLEDGED,
              AlarmState.ACKNOWLEDGED,
              AlarmState.RETURNED_UNACKNOWLEDGED,
              AlarmState.LATCHED_UNACKNOWLEDGED,
              AlarmState.LATCHED_ACKNOWLEDGED));

  /** Warnings: {@link #WARNING_BASE} and the place. */
  public static final Codes<Warning> WARNING =
      new Codes<>(
          List.of(
              Warning.BATH_WITHOUT_AIR,
              Warning.LEVEL_UNSURE,
              Warning.HOST_LOST,
              Warning.PRESENCE_DUE,
              Warning.LEVEL_LOW));

  /** Number of the first warning: above every trip's code. */
  public static final int WARNING_BASE = 100;

  /** Kinds of events. */
  public static final Codes<EventKind> EVENT =
      new Codes<>(
          List.of(
              EventKind.POWER_UP,
              EventKind.STATE,
              EventKind.TRIP,
              EventKind.ALARM,
              EventKind.DONE,
              EventKind.REFUSED,
              EventKind.WITHHELD,
              EventKind.PROBE,
              EventKind.PEDAL,
              EventKind.PRESENCE_SOON,
              EventKind.MARK,
              EventKind.LEVEL,
              EventKind.TRAY,
              EventKind.ACTION,
              EventKind.FAULT,
              EventKind.NOTE));

  /** What buzzer and lamp are asked for. */
  public static final Codes<Call> CALL =
      new Codes<>(List.of(Call.WATCH_NOW, Call.MARKED, Call.TAKEN_BACK));

  /** Judgements of the level. */
  public static final Codes<Level> LEVEL =
      new Codes<>(List.of(Level.WELL, Level.LOW, Level.UNSURE));

  /** Places of probes. */
  public static final Codes<ProbeRole> PROBE =
      new Codes<>(List.of(ProbeRole.BATH, ProbeRole.SECOND_BATH, ProbeRole.PLATE));

  /** What is looked after. */
  public static final Codes<UpkeepItem> UPKEEP =
      new Codes<>(
          List.of(
              UpkeepItem.BREAKER_TEST,
              UpkeepItem.CARTRIDGE,
              UpkeepItem.PROBE_CHECK,
              UpkeepItem.FAN_SERVICE));

  /** What became of a command. */
  public static final Codes<CommandResult.Outcome> OUTCOME =
      new Codes<>(
          List.of(
              CommandResult.Outcome.NONE,
              CommandResult.Outcome.WAITING,
              CommandResult.Outcome.DONE,
              CommandResult.Outcome.REFUSED,
              CommandResult.Outcome.CONFIRM_FIRST,
              CommandResult.Outcome.UNKNOWN_COMMAND));

  private static final Map<Integer, AlarmCause> CAUSES =
      AlarmCause.all().stream().collect(Collectors.toUnmodifiableMap(Codes::cause, c -> c));

  /** Number of a name. */
  public int code(E name) {
    int code = names.indexOf(name);
    if (code < 0) {
      throw new IllegalArgumentException(String.valueOf(name));
    }
    return code;
  }

  /** The name of a number; empty for one that is not known here. */
  public Optional<E> name(int code) {
    return code >= 0 && code < names.size() ? Optional.of(names.get(code)) : Optional.empty();
  }

  /** Number of an alarm's cause: a trip's own code, or a warning's. */
  public static int cause(AlarmCause cause) {
    return cause instanceof Warning warning
        ? WARNING_BASE + WARNING.code(warning)
        : ((TripCause) cause).code();
  }

  /** The cause of a number; empty for none and for one that is not known here. */
  public static Optional<AlarmCause> causeOf(int code) {
    return Optional.ofNullable(CAUSES.get(code));
  }
}
