package trayward.controller.sim;

import trayward.controller.port.ProbeRole;

/** Faults the tray itself can have, by their names in a scenario. */
public enum SimFault {
  FAN_STOPS("fan-stops"),
  FAN_SLOWS("fan-slows"),
  DUCT_BLOCKED("duct-blocked"),
  AIRFLOW_STUCK_ON("airflow-stuck-on"),
  AIRFLOW_STUCK_OFF("airflow-stuck-off"),
  TACH_STUCK("tach-stuck"),
  PROBE_ABSENT("probe-absent", ProbeRole.BATH, ProbeFault.ABSENT),
  PROBE_CRC("probe-crc", ProbeRole.BATH, ProbeFault.CRC),
  PROBE_POWER_ON("probe-power-on-value", ProbeRole.BATH, ProbeFault.POWER_ON_VALUE),
  PROBE_ALL_ZERO("probe-all-zero", ProbeRole.BATH, ProbeFault.ALL_ZERO),
  PROBE_FROZEN("probe-frozen", ProbeRole.BATH, ProbeFault.FROZEN),
  PROBE_OFFSET("probe-offset", ProbeRole.BATH, ProbeFault.OFFSET),
  PROBE_OUT("probe-out-of-liquid", ProbeRole.BATH, ProbeFault.IN_AIR),
  SECOND_ABSENT("second-probe-absent", ProbeRole.SECOND_BATH, ProbeFault.ABSENT),
  SECOND_CRC("second-probe-crc", ProbeRole.SECOND_BATH, ProbeFault.CRC),
  SECOND_POWER_ON("second-probe-power-on-value", ProbeRole.SECOND_BATH, ProbeFault.POWER_ON_VALUE),
  SECOND_ALL_ZERO("second-probe-all-zero", ProbeRole.SECOND_BATH, ProbeFault.ALL_ZERO),
  SECOND_FROZEN("second-probe-frozen", ProbeRole.SECOND_BATH, ProbeFault.FROZEN),
  SECOND_OFFSET("second-probe-offset", ProbeRole.SECOND_BATH, ProbeFault.OFFSET),
  SECOND_OUT("second-probe-out-of-liquid", ProbeRole.SECOND_BATH, ProbeFault.IN_AIR),
  PLATE_ABSENT("plate-probe-absent", ProbeRole.PLATE, ProbeFault.ABSENT),
  PLATE_CRC("plate-probe-crc", ProbeRole.PLATE, ProbeFault.CRC),
  PLATE_POWER_ON("plate-probe-power-on-value", ProbeRole.PLATE, ProbeFault.POWER_ON_VALUE),
  PLATE_ALL_ZERO("plate-probe-all-zero", ProbeRole.PLATE, ProbeFault.ALL_ZERO),
  PLATE_FROZEN("plate-probe-frozen", ProbeRole.PLATE, ProbeFault.FROZEN),
  PLATE_OFFSET("plate-probe-offset", ProbeRole.PLATE, ProbeFault.OFFSET),
  PLATE_OUT("plate-probe-out-of-liquid", ProbeRole.PLATE, ProbeFault.IN_AIR),
  PLATE_DETACHED("plate-probe-detached", ProbeRole.PLATE, ProbeFault.IN_AIR),
  RELAY_WELDED("relay-welded"),
  SAFETY_RELAY_WELDED("safety-relay-welded"),
  HEATER_OPEN("heater-open"),
  BREAKER_TRIPPED("breaker-tripped"),
  TRAY_DRY("tray-dry"),
  TRAY_HALF_EMPTY("tray-half-empty"),
  POWER_LOSS("power-loss");

  private final String words;
  private final ProbeRole role;
  private final ProbeFault probeFault;

  SimFault(String words) {
    this(words, ProbeRole.BATH, ProbeFault.NONE);
  }

  SimFault(String words, ProbeRole role, ProbeFault probeFault) {
    this.words = words;
    this.role = role;
    this.probeFault = probeFault;
  }

  /** Its name in a scenario. */
  public String words() {
    return words;
  }

  ProbeRole role() {
    return role;
  }

  ProbeFault probeFault() {
    return probeFault;
  }
}
