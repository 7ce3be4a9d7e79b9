package trayward.controller.station;

import java.util.Arrays;
import java.util.Optional;

/** The discrete inputs, in order of their addresses from 0. */
public enum Flag {
  /** Heat was permitted in this scan. */
  PERMITTED(0, "heat is permitted"),
  /** Heater relay. */
  HEATER_RELAY(1, "heater relay commanded closed"),
  /** Safety relay. */
  SAFETY_RELAY(2, "safety relay commanded closed"),
  /** Watchdog line. */
  WATCHDOG_LINE(3, "level of the watchdog line"),
  /** Fan. */
  FAN_COMMANDED(4, "fan commanded on"),
  /** Proof. */
  FAN_PROVEN(5, "the fan counts as running"),
  /** Airflow switch. */
  AIRFLOW(6, "airflow switch closed"),
  /** Record. */
  STORE_WRITABLE(7, "the controller's record can be written"),
  /** Simulation. */
  SIMULATED(8, "the tray is simulated"),
  /** Calibrations. */
  CALIBRATIONS_READABLE(9, "the record of calibrations can be believed"),
  /** Rest. */
  RESTS(10, "a calibration would be taken: off or after-run, heat off"),
  /** Reach. */
  OUT_OF_REACH(11, "the heater cannot hold the set temperature"),
  /** Clock. */
  CLOCK_SET(12, "the controller's clock shows a date that can be");

  private final int address;
  private final String meaning;

  Flag(int address, String meaning) {
    this.address = address;
    this.meaning = meaning;
  }

  /** Its address, and its bit in {@link StatusRegisters#FLAGS}. */
  public int address() {
    return address;
  }

  /** The flag at an address. */
  static Optional<Flag> at(int address) {
    return Arrays.stream(values()).filter(f -> f.address == address).findFirst();
  }

  /** What 1 means. */
  public String meaning() {
    return meaning;
  }

  boolean holds(Moment m) {
    return switch (this) {
      case PERMITTED -> m.now().permitted();
      case HEATER_RELAY -> m.now().heaterOn();
      case SAFETY_RELAY -> m.now().safetyRelay();
      case WATCHDOG_LINE -> m.now().watchdogLevel();
      case FAN_COMMANDED -> m.now().fanCommanded();
      case FAN_PROVEN -> m.now().fanProven();
      case AIRFLOW -> m.now().airflow();
      case STORE_WRITABLE -> m.now().storeWritable();
      case SIMULATED -> m.simulated();
      case CALIBRATIONS_READABLE -> m.calibrations().readable();
      case RESTS -> m.now().rests();
      case OUT_OF_REACH -> m.now().tray().outOfReach();
      case CLOCK_SET -> m.upkeep().clockSet();
    };
  }

  static int bits(Moment moment) {
    int bits = 0;
    for (Flag flag : values()) {
      bits |= flag.holds(moment) ? 1 << flag.address : 0;
    }
    return bits;
  }

  /** Whether this holds in a register of all flags. */
  public boolean in(int bits) {
    return ((bits >> address) & 1) == 1;
  }
}
