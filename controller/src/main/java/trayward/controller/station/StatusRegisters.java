package trayward.controller.station;

import static trayward.controller.station.Entry.number;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import trayward.controller.event.Alarm;
import trayward.controller.event.AlarmCause;
import trayward.controller.event.TripCause;
import trayward.controller.port.ProbeRole;
import trayward.controller.regulate.Estimate;

/** Input registers that a host reads again and again: one read of {@link #WORDS} registers. */
public final class StatusRegisters {

  /** Version of the map: a host that knows another one keeps away. */
  public static final int VERSION = 1;

  /** How many there are, from address 0. */
  public static final int WORDS = 72;

  /** Most alarms at once: every cause there is. */
  static final int ALARMS = AlarmCause.all().size();

  private static final int ALARM_BASE = 54;
  private static final List<Entry> ALL = new ArrayList<>();

  /** {@value #VERSION}. */
  public static final Entry MAP_VERSION =
      add(number(0, Form.COUNT, "map_version", "", "version of this map", m -> VERSION));

  /** Low word of the scan counter. */
  public static final Entry SCAN =
      add(number(1, Form.BITS, "scan", "", "scan counter, low word", m -> m.now().scan() & 0xFFFF));

  /** State of the interlock. */
  public static final Entry STATE =
      add(
          number(
              2,
              Form.COUNT,
              "state",
              "",
              "OFF 0, PROVING 1, PURGING 2, READY 3, HEATING 4, HOLDING 5, AFTER_RUN 6, LOCKOUT 7",
              m -> m.now().state().code()));

  /** Bath. */
  public static final Entry BATH = celsius(3, "bath", "bath", m -> m.now().bath().validC());

  /** Second bath probe. */
  public static final Entry SECOND_BATH =
      celsius(4, "second_bath", "second bath probe", m -> m.now().secondBath().validC());

  /** Plate. */
  public static final Entry PLATE = celsius(5, "plate", "plate", m -> m.now().plate().validC());

  /** Set temperature. */
  public static final Entry SET = celsius(6, "set", "set temperature", m -> m.now().setC());

  /** Fan. */
  public static final Entry FAN_RPM =
      add(number(7, Form.COUNT, "fan_rpm", "1/min", "tachometer", m -> m.now().fanRpm()));

  /** First-out cause. */
  public static final Entry FIRST_OUT =
      add(
          number(
              8,
              Form.COUNT,
              "first_out",
              "",
              "code of the first-out cause, see below; 0 for none",
              m -> m.now().firstOut().map(TripCause::code).orElse(0)));

  /** Duty. */
  public static final Entry DUTY =
      add(number(9, Form.COUNT, "duty", "per mille", "duty", m -> 1000 * m.now().duty()));

  /** The scan counter whole. */
  public static final Entry SCAN_COUNT =
      add(number(10, Form.LONG_COUNT, "scan_count", "", "scans so far", m -> m.now().scan()));

  /** Time since power-up. */
  public static final Entry UPTIME =
      seconds(12, "uptime", "time since power-up", m -> m.now().uptimeMs() / 1000.0);

  /** Time in the state. */
  public static final Entry STATE_TIME =
      seconds(14, "state_time", "time in this state", m -> m.now().stateMs() / 1000.0);

  /** What is left of purge or after-run. */
  public static final Entry REMAINING =
      seconds(
          16,
          "remaining",
          "time left of purge or after-run; not valid where none runs",
          m -> m.now().remainingMs() < 0 ? Double.NaN : m.now().remainingMs() / 1000.0);

  /** When presence is due. */
  public static final Entry PRESENCE_DUE =
      seconds(
          18, "presence_due", "time until presence is due", m -> m.now().presenceDueMs() / 1000.0);

  /** Class of the bath reading. */
  public static final Entry BATH_CLASS =
      readingClass(20, "bath_class", m -> Codes.READING.code(m.now().bath().kind()));

  /** Class of the second bath reading. */
  public static final Entry SECOND_BATH_CLASS =
      readingClass(21, "second_bath_class", m -> Codes.READING.code(m.now().secondBath().kind()));

  /** Class of the plate reading. */
  public static final Entry PLATE_CLASS =
      readingClass(22, "plate_class", m -> Codes.READING.code(m.now().plate().kind()));

  /** The discrete inputs as one register. */
  public static final Entry FLAGS =
      add(number(23, Form.BITS, "flags", "", "the discrete inputs, bit n", Flag::bits));

  /** What withholds heat. */
  public static final Entry WITHHELD =
      add(
          number(
              24,
              Form.BITS,
              "withheld",
              "",
              "what withholds heat, see below: bit n for number n",
              m -> m.now().withheld().stream().mapToInt(r -> 1 << Codes.WITHHELD.code(r)).sum()));

  /** Closings of the cycling relay. */
  public static final Entry HEATER_CLOSINGS =
      add(
          number(
              25,
              Form.LONG_COUNT,
              "heater_closings",
              "",
              "closings of the heater relay",
              m -> m.now().wear().heaterClosings()));

  /** Closings of the safety relay. */
  public static final Entry SAFETY_CLOSINGS =
      add(
          number(
              27,
              Form.LONG_COUNT,
              "safety_closings",
              "",
              "closings of the safety relay",
              m -> m.now().wear().safetyClosings()));

  /** Judgement of the level. */
  public static final Entry LEVEL =
      add(
          number(
              29,
              Form.COUNT,
              "level",
              "",
              "liquid: WELL 0, LOW 1, UNSURE 2",
              m -> Codes.LEVEL.code(m.now().level().level())));

  /** Liquid. */
  public static final Entry LIQUID =
      litres(30, "liquid", "liquid, best estimate", m -> m.now().level().litres());

  /** Least liquid. */
  public static final Entry LIQUID_LOW =
      litres(31, "liquid_low", "least that it may be", m -> m.now().level().lowL());

  /** Most liquid. */
  public static final Entry LIQUID_HIGH =
      litres(32, "liquid_high", "most that it may be", m -> m.now().level().highL());

  /** Water to add. */
  public static final Entry ADD =
      litres(33, "add", "water to add to be as full as was said", m -> m.now().level().addL());

  /** Uncertainty of the bath. */
  public static final Entry BATH_UNCERTAINTY = uncertainty(34, "bath_uncertainty", ProbeRole.BATH);

  /** Uncertainty of the second bath probe. */
  public static final Entry SECOND_BATH_UNCERTAINTY =
      uncertainty(35, "second_bath_uncertainty", ProbeRole.SECOND_BATH);

  /** Uncertainty of the plate. */
  public static final Entry PLATE_UNCERTAINTY =
      uncertainty(36, "plate_uncertainty", ProbeRole.PLATE);

  /** Highest temperature the heater can hold. */
  public static final Entry HIGHEST_HOLD =
      celsius(
          37,
          "highest_hold",
          "highest bath temperature the heater can hold",
          m -> m.now().tray().highestHoldC());

  /** Liquid that the warm-up showed. */
  public static final Entry LIQUID_SEEN =
      litres(
          38,
          "liquid_seen",
          "liquid that the last warm-up showed",
          m -> m.now().tray().lesson().map(l -> l.litres()).orElse(Double.NaN));

  /** Uncertainty of that. */
  public static final Entry LIQUID_SEEN_UNCERTAINTY =
      litres(
          39,
          "liquid_seen_uncertainty",
          "expanded uncertainty of that, k = 2",
          m ->
              m.now()
                  .tray()
                  .lesson()
                  .map(l -> Estimate.COVERAGE * l.litresDoubt())
                  .orElse(Double.NaN));

  /** How many events there were. */
  public static final Entry EVENTS =
      add(
          number(
              40,
              Form.LONG_COUNT,
              "events",
              "",
              "events since power-up: the number of the newest",
              m -> m.events().count()));

  /** Token of the last command that was answered. */
  public static final Entry TOKEN_DONE =
      add(
          number(
              42,
              Form.BITS,
              "token_done",
              "",
              "token of the command that the result is of",
              m -> m.answer().token()));

  /** What became of it. */
  public static final Entry RESULT =
      add(
          number(
              43,
              Form.COUNT,
              "result",
              "",
              "NONE 0, WAITING 1, DONE 2, REFUSED 3, CONFIRM_FIRST 4, UNKNOWN_COMMAND 5",
              m -> Codes.OUTCOME.code(m.answer().outcome())));

  /** Scans that were timed. */
  public static final Entry SCANS_TIMED =
      add(number(44, Form.LONG_COUNT, "scans_timed", "", "scans timed", m -> m.lateness().scans()));

  /** Median lateness of a scan. */
  public static final Entry LATE_P50 =
      late(46, "late_p50", "median lateness of a scan", m -> m.lateness().p50Ms());

  /** Lateness of one scan in a thousand. */
  public static final Entry LATE_P999 =
      late(48, "late_p999", "lateness of one scan in a thousand", m -> m.lateness().p999Ms());

  /** Greatest lateness. */
  public static final Entry LATE_MAX =
      late(50, "late_max", "greatest lateness", m -> m.lateness().maxMs());

  /** The alarms, most pressing first: cause in the low byte, state in the high one. */
  public static final List<Entry> ALARM = alarms();

  private StatusRegisters() {}

  static List<Entry> all() {
    return List.copyOf(ALL);
  }

  private static List<Entry> alarms() {
    List<Entry> all = new ArrayList<>();
    for (int i = 0; i < ALARMS; i++) {
      int place = i;
      all.add(
          add(
              number(
                  ALARM_BASE + i,
                  Form.BITS,
                  "alarm_" + (i + 1),
                  "",
                  "alarm in this place: code in the low byte, state in the high one; 0 for none",
                  m -> alarm(m.now().alarms(), place))));
    }
    return List.copyOf(all);
  }

  private static int alarm(List<Alarm> alarms, int place) {
    if (place >= alarms.size()) {
      return 0;
    }
    Alarm alarm = alarms.get(place);
    return (Codes.ALARM_STATE.code(alarm.state()) << 8) | Codes.cause(alarm.cause());
  }

  private static Entry add(Entry entry) {
    ALL.add(entry);
    return entry;
  }

  private static Entry celsius(
      int address, String name, String meaning, ToDoubleFunction<Moment> number) {
    return add(number(address, Form.HUNDREDTHS, name, "°C", meaning, number));
  }

  private static Entry seconds(
      int address, String name, String meaning, ToDoubleFunction<Moment> number) {
    return add(number(address, Form.LONG_TENTHS, name, "s", meaning, number));
  }

  private static Entry late(
      int address, String name, String meaning, ToDoubleFunction<Moment> number) {
    return add(number(address, Form.LONG_THOUSANDTHS, name, "ms", meaning, number));
  }

  private static Entry litres(
      int address, String name, String meaning, ToDoubleFunction<Moment> number) {
    return add(number(address, Form.THOUSANDTHS, name, "L", meaning, number));
  }

  private static Entry readingClass(int address, String name, ToDoubleFunction<Moment> number) {
    return add(number(address, Form.COUNT, name, "", "class of the reading, see below", number));
  }

  private static Entry uncertainty(int address, String name, ProbeRole role) {
    return add(
        number(
            address,
            Form.THOUSANDTHS,
            name,
            "K",
            "how far the reading may be from the truth",
            m ->
                ProbeRegisters.uncertaintyK(m.now().probes().of(role), m.calibrations().of(role))));
  }
}
