package trayward.host.app.campaign;

import java.util.List;

/**
 * Every fault of the scenario contract, by its words there: the part it breaks, from when on it
 * matters, and which names of a trip tell the truth about it. Data.
 */
@SuppressWarnings("ImmutableEnumChecker") // the lists are List.of(...)
enum FaultKind {
  FAN_STOPS("fan-stops", Part.FAN, Need.AIR, Causes.AIR),
  FAN_SLOWS("fan-slows", Part.FAN, Need.AIR, Causes.AIR),
  DUCT_BLOCKED("duct-blocked", Part.DUCT, Need.AIR, Causes.AIR),
  AIRFLOW_STUCK_ON("airflow-stuck-on", Part.AIRFLOW_SWITCH, Need.PROVING, Causes.STUCK_ON),
  AIRFLOW_STUCK_OFF("airflow-stuck-off", Part.AIRFLOW_SWITCH, Need.AIR, Causes.AIR),
  TACH_STUCK("tach-stuck", Part.TACHOMETER, Need.PROVING, Causes.TACHOMETER),
  PROBE_ABSENT("probe-absent", Part.BATH_PROBE, Need.OUT_OF_OFF, Causes.BATH_READING),
  PROBE_CRC("probe-crc", Part.BATH_PROBE, Need.OUT_OF_OFF, Causes.BATH_READING),
  PROBE_POWER_ON("probe-power-on-value", Part.BATH_PROBE, Need.OUT_OF_OFF, Causes.BATH_READING),
  PROBE_ALL_ZERO("probe-all-zero", Part.BATH_PROBE, Need.OUT_OF_OFF, Causes.BATH_READING),
  PROBE_FROZEN("probe-frozen", Part.BATH_PROBE, Need.HEAT, Causes.BATH_FROZEN),
  PROBE_OFFSET("probe-offset", Part.BATH_PROBE, Need.APART, Causes.BATH_OFFSET),
  PROBE_OUT("probe-out-of-liquid", Part.BATH_PROBE, Need.HEAT, Causes.BATH_OUT),
  SECOND_ABSENT("second-probe-absent", Part.SECOND_PROBE, Need.OUT_OF_OFF, Causes.BATH_READING),
  SECOND_CRC("second-probe-crc", Part.SECOND_PROBE, Need.OUT_OF_OFF, Causes.BATH_READING),
  SECOND_POWER_ON(
      "second-probe-power-on-value", Part.SECOND_PROBE, Need.OUT_OF_OFF, Causes.BATH_READING),
  SECOND_ALL_ZERO("second-probe-all-zero", Part.SECOND_PROBE, Need.OUT_OF_OFF, Causes.BATH_READING),
  SECOND_FROZEN("second-probe-frozen", Part.SECOND_PROBE, Need.HEAT, Causes.BATH_FROZEN),
  SECOND_OFFSET("second-probe-offset", Part.SECOND_PROBE, Need.APART, Causes.BATH_OFFSET),
  SECOND_OUT("second-probe-out-of-liquid", Part.SECOND_PROBE, Need.HEAT, Causes.BATH_OUT),
  PLATE_ABSENT("plate-probe-absent", Part.PLATE_PROBE, Need.OUT_OF_OFF, Causes.PLATE_READING),
  PLATE_CRC("plate-probe-crc", Part.PLATE_PROBE, Need.OUT_OF_OFF, Causes.PLATE_READING),
  PLATE_POWER_ON(
      "plate-probe-power-on-value", Part.PLATE_PROBE, Need.OUT_OF_OFF, Causes.PLATE_READING),
  PLATE_ALL_ZERO("plate-probe-all-zero", Part.PLATE_PROBE, Need.OUT_OF_OFF, Causes.PLATE_READING),
  PLATE_FROZEN("plate-probe-frozen", Part.PLATE_PROBE, Need.HEAT, Causes.PLATE_READING),
  PLATE_OFFSET("plate-probe-offset", Part.PLATE_PROBE, Need.NEVER, Causes.PLATE_OFFSET),
  PLATE_OUT("plate-probe-out-of-liquid", Part.PLATE_PROBE, Need.HEAT, Causes.PLATE_OFF),
  PLATE_DETACHED("plate-probe-detached", Part.PLATE_PROBE, Need.HEAT, Causes.PLATE_OFF),
  RELAY_WELDED("relay-welded", Part.RELAY, Need.PURGED, Causes.WELDED),
  SAFETY_RELAY_WELDED("safety-relay-welded", Part.SAFETY_RELAY, Need.PURGE, Causes.WELDED),
  HEATER_OPEN("heater-open", Part.HEATER, Need.HEAT, Causes.NO_CURRENT),
  BREAKER_TRIPPED("breaker-tripped", Part.HEATER, Need.HEAT, Causes.NO_CURRENT),
  TRAY_DRY("tray-dry", Part.TRAY, Need.HEAT, Causes.DRY),
  TRAY_HALF_EMPTY("tray-half-empty", Part.TRAY, Need.NEVER, Causes.LOW),
  HOST_LOST("host-lost", Part.HOST, Need.NEVER, Causes.NONE),
  SCAN_STALL("scan-stall", Part.PROGRAM, Need.STALLED, Causes.STALL),
  WALL_CLOCK_STEP("wall-clock-step", Part.CLOCK, Need.NEVER, Causes.NONE),
  POWER_LOSS("power-loss", Part.MAINS, Need.NEVER, Causes.NONE);

  private final String words;
  private final Part part;
  private final Need need;
  private final List<Explains> explains;

  FaultKind(String words, Part part, Need need, List<Explains> explains) {
    this.words = words;
    this.part = part;
    this.need = need;
    this.explains = explains;
  }

  /** Its name in a scenario. */
  String words() {
    return words;
  }

  Part part() {
    return part;
  }

  /** From when on it matters, where it is fitted and large enough to matter at all. */
  Need need() {
    return need;
  }

  /** The names that tell the truth about it. */
  List<Explains> explains() {
    return explains;
  }

  /** Whether it has a beginning and an end. */
  boolean lasts() {
    return this != SCAN_STALL && this != WALL_CLOCK_STEP;
  }
}
