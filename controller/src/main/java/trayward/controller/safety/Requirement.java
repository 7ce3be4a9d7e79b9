package trayward.controller.safety;

import java.util.Arrays;
import java.util.Optional;

/**
 * The safety requirements by id. Each that is built has tests for both sides; the others keep their
 * place here until they are.
 */
public enum Requirement {
  SR_01("Heat only if every permissive holds in that same scan", true),
  SR_02("The fan counts as running only on physical proof", true),
  SR_03("Each proof seen absent since the fan was last commanded off", true),
  SR_04("Purge before heat; a break sends it back to proving", true),
  SR_05("Heat withheld in the first scan without proof; lost air latches", true),
  SR_06("Bath over-temperature trips; no heat above set", true),
  SR_07("The plate's limits; a dry tray trips", true),
  SR_08("Probe readings classified; persistent badness trips", true),
  SR_09("Two bath probes that disagree trip", true),
  SR_10("Heat commanded but not arriving trips", true),
  SR_11("Heat arriving while commanded off trips", true),
  SR_12("A trip latches through power loss; reset needs cause gone, acknowledged, a person", true),
  SR_13("Power-up, restart and reconnection never start heat", true),
  SR_14("Stop works from everywhere and cannot be refused", true),
  SR_15("Presence must be renewed", true),
  SR_16("Loss of a required host withholds heat", true),
  SR_17(
      "A late scan withholds heat; a stalled one trips; an escaped error ends with heat off", true),
  SR_18("The watchdog line toggles only from a complete scan", true),
  SR_19("A bad setting refuses start-up", true),
  SR_20("After heat the fan runs on", true),
  SR_21("A warm or unknown bath keeps the fan on", true),
  SR_22("Steps of the wall clock change nothing", true),
  SR_23("Due dates of maintenance", true),
  SR_24("Identification runs under every requirement", false),
  SR_25("Independent hardware required, and said at start-up", true),
  SR_26("Contact test in every purge", true),
  SR_27("A warm bath without proven air alarms", true),
  SR_28("The liquid estimated; a low level withholds heat", true);

  private final String summary;
  private final boolean built;

  Requirement(String summary, boolean built) {
    this.summary = summary;
    this.built = built;
  }

  /** The id as written in notes and tests, such as {@code SR-05}. */
  public String id() {
    return name().replace('_', '-');
  }

  /** What it asks for, in a line. */
  public String summary() {
    return summary;
  }

  /** Whether this version claims to meet it whole. */
  public boolean built() {
    return built;
  }

  /** The requirement of an id. */
  public static Optional<Requirement> of(String id) {
    return Arrays.stream(values()).filter(r -> r.id().equals(id)).findFirst();
  }
}
