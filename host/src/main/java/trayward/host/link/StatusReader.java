package trayward.host.link;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import trayward.controller.event.Alarm;
import trayward.controller.event.AlarmCause;
import trayward.controller.event.AlarmState;
import trayward.controller.event.TripCause;
import trayward.controller.event.WithheldReason;
import trayward.controller.regulate.HoldReach;
import trayward.controller.safety.State;
import trayward.controller.station.Block;
import trayward.controller.station.Codes;
import trayward.controller.station.Entry;
import trayward.controller.station.Flag;
import trayward.controller.station.StatusRegisters;
import trayward.controller.station.TrayRegisters;

/** Turns registers into what the host shows of the tray. Pure. */
final class StatusReader {

  private StatusReader() {}

  /**
   * The status.
   *
   * @param b the status registers
   * @param texts the registers of what changes seldom; null before they were read
   */
  static TrayStatus status(Block b, @Nullable Block texts) {
    int flags = StatusRegisters.FLAGS.whole(b);
    double remainingS = StatusRegisters.REMAINING.number(b);
    List<WithheldReason> withheld = withheld(StatusRegisters.WITHHELD.whole(b));
    int readingClass = StatusRegisters.BATH_CLASS.whole(b);
    return new TrayStatus(
        (long) StatusRegisters.SCAN_COUNT.number(b),
        StatusRegisters.UPTIME.number(b),
        state(StatusRegisters.STATE.whole(b)),
        StatusRegisters.STATE_TIME.number(b),
        Double.isNaN(remainingS) ? -1 : remainingS,
        StatusRegisters.BATH.number(b),
        StatusRegisters.SECOND_BATH.number(b),
        StatusRegisters.PLATE.number(b),
        Codes.READING.name(readingClass).map(Enum::name).orElse(unknown(readingClass)),
        StatusRegisters.SET.number(b),
        StatusRegisters.DUTY.number(b) / 1000,
        Flag.HEATER_RELAY.in(flags) && Flag.SAFETY_RELAY.in(flags),
        Flag.SAFETY_RELAY.in(flags),
        Flag.FAN_COMMANDED.in(flags),
        Flag.FAN_PROVEN.in(flags),
        StatusRegisters.FAN_RPM.number(b),
        Flag.AIRFLOW.in(flags),
        firstOut(StatusRegisters.FIRST_OUT.whole(b)),
        alarms(b),
        withheld.stream().map(WithheldReason::name).toList(),
        withheld.stream().map(WithheldReason::words).toList(),
        StatusRegisters.PRESENCE_DUE.number(b),
        Flag.STORE_WRITABLE.in(flags),
        (long) StatusRegisters.HEATER_CLOSINGS.number(b),
        (long) StatusRegisters.SAFETY_CLOSINGS.number(b),
        level(b),
        new UncertaintyView(
            StatusRegisters.BATH_UNCERTAINTY.number(b),
            StatusRegisters.SECOND_BATH_UNCERTAINTY.number(b),
            StatusRegisters.PLATE_UNCERTAINTY.number(b),
            Flag.CALIBRATIONS_READABLE.in(flags)),
        known(b, texts, Flag.OUT_OF_REACH.in(flags)));
  }

  /** A number of a newer controller: better said than guessed. */
  private static String unknown(int code) {
    return "UNKNOWN_" + code;
  }

  private static String state(int code) {
    for (State state : State.values()) {
      if (state.code() == code) {
        return state.name();
      }
    }
    return unknown(code);
  }

  private static String firstOut(int code) {
    for (TripCause cause : TripCause.values()) {
      if (cause.code() == code) {
        return cause.name();
      }
    }
    return code == 0 ? "" : unknown(code);
  }

  private static List<WithheldReason> withheld(int bits) {
    List<WithheldReason> reasons = new ArrayList<>();
    for (int i = 0; i < Short.SIZE; i++) {
      if (((bits >> i) & 1) == 1) {
        Codes.WITHHELD.name(i).ifPresent(reasons::add);
      }
    }
    return reasons;
  }

  private static List<AlarmView> alarms(Block b) {
    List<AlarmView> alarms = new ArrayList<>();
    for (Entry entry : StatusRegisters.ALARM) {
      int word = entry.whole(b);
      Optional<AlarmCause> cause = Codes.causeOf(word & 0xFF);
      Optional<AlarmState> state = Codes.ALARM_STATE.name(word >> 8);
      if (cause.isPresent() && state.isPresent()) {
        alarms.add(AlarmViews.of(new Alarm(cause.get(), state.get())));
      }
    }
    return List.copyOf(alarms);
  }

  private static LevelView level(Block b) {
    int level = StatusRegisters.LEVEL.whole(b);
    return new LevelView(
        Codes.LEVEL.name(level).map(Enum::name).orElse(unknown(level)),
        StatusRegisters.LIQUID.number(b),
        StatusRegisters.LIQUID_LOW.number(b),
        StatusRegisters.LIQUID_HIGH.number(b),
        StatusRegisters.ADD.number(b));
  }

  private static TrayKnownView known(Block b, @Nullable Block texts, boolean outOfReach) {
    double highestC = StatusRegisters.HIGHEST_HOLD.number(b);
    return new TrayKnownView(
        texts == null ? "" : TrayRegisters.LESSON.text(texts),
        StatusRegisters.LIQUID_SEEN.number(b),
        StatusRegisters.LIQUID_SEEN_UNCERTAINTY.number(b),
        texts == null ? null : learned(texts),
        highestC,
        outOfReach ? HoldReach.words(highestC) : "");
  }

  private static TrayKnownView.@Nullable Learned learned(Block texts) {
    String name = TrayRegisters.LEARNED_NAME.text(texts);
    double day = TrayRegisters.LEARNED_DAY.number(texts);
    return name.isEmpty() || Double.isNaN(day)
        ? null
        : new TrayKnownView.Learned(
            name, date(day), TrayRegisters.LITRE_MEASURED.number(texts) == 1);
  }

  /** The date of a day since 1970-01-01; empty where it is not valid. */
  static String date(double day) {
    return Double.isNaN(day) ? "" : LocalDate.ofEpochDay((long) day).toString();
  }
}
