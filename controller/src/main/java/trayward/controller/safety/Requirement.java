package trayward.controller.safety;

import java.util.Arrays;
import java.util.Optional;

/** The safety requirements by id. Each has tests for both sides. */
public enum Requirement {
  SR_01("Heat only if every permissive holds in that same scan"),
  SR_02("The fan counts as running only on physical proof"),
  SR_03("Each proof seen absent since the fan was last commanded off"),
  SR_04("Purge before heat; a break sends it back to proving"),
  SR_05("Heat withheld in the first scan without proof; lost air latches"),
  SR_06("Bath over-temperature trips; no heat above set"),
  SR_07("The plate's limits; a dry tray trips"),
  SR_08("Probe readings classified; persistent badness trips"),
  SR_09("Two bath probes that disagree trip"),
  SR_10("Heat commanded but not arriving trips"),
  SR_11("Heat arriving while commanded off trips"),
  SR_12("A trip latches through power loss; reset needs cause gone, acknowledged, a person"),
  SR_13("Power-up, restart and reconnection never start heat"),
  SR_14("Stop works from everywhere and cannot be refused"),
  SR_15("Presence must be renewed"),
  SR_16("Loss of a required host withholds heat"),
  SR_17("A late scan withholds heat; a stalled one trips; an escaped error ends with heat off"),
  SR_18("The watchdog line toggles only from a complete scan"),
  SR_19("A bad setting refuses start-up"),
  SR_20("After heat the fan runs on"),
  SR_21("A warm or unknown bath keeps the fan on"),
  SR_22("Steps of the wall clock change nothing"),
  SR_23("Due dates of maintenance"),
  SR_24("Identification runs under every requirement"),
  SR_25("Independent hardware required, and said at start-up"),
  SR_26("Contact test in every purge"),
  SR_27("A warm bath without proven air alarms"),
  SR_28("The liquid estimated; a low level withholds heat");

  private final String summary;

  Requirement(String summary) {
    this.summary = summary;
  }

  /** The id as written in notes and tests, such as {@code SR-05}. */
  public String id() {
    return name().replace('_', '-');
  }

  /** What it asks for, in a line. */
  public String summary() {
    return summary;
  }

  /** The requirement of an id. */
  public static Optional<Requirement> of(String id) {
    return Arrays.stream(values()).filter(r -> r.id().equals(id)).findFirst();
  }
}
