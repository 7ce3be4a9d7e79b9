package trayward.controller.event;

/**
 * Why the interlock locked out: the vocabulary of {@code first_out} and {@code trips}.
 *
 * <p>Order is priority where two causes are seen in one scan: the earlier one becomes first-out,
 * because what explains more stands first. Codes are for the register map and never change.
 */
public enum TripCause {
  /** SR-17: the program stalled. */
  SCAN_LATE(
      12,
      "SR-17",
      "The program stalled for a second or more.",
      "See what else this computer runs; restart if it happens again."),
  /** SR-12: the controller's own record cannot be read or written. */
  STORE_FAILED(
      13,
      "SR-12",
      "The controller cannot read or write its own record.",
      "Check the storage card and the data folder, then reset."),
  /** SR-11, SR-26: a contact welded. */
  RELAY_STUCK(
      11,
      "SR-11",
      "Heat arrives while the relay is commanded off.",
      "Unplug the heater now. Replace the relay before using it again."),
  /** SR-08: the bath probe cannot be believed. */
  BATH_PROBE_BAD(
      6,
      "SR-08",
      "The bath probe gives no believable reading.",
      "Check the probe's plug and cable, then reset."),
  /** SR-08: the plate probe cannot be believed. */
  PLATE_PROBE_BAD(
      7,
      "SR-08",
      "The plate probe gives no believable reading.",
      "Check the probe's plug and cable, then reset."),
  /** SR-09: two bath probes apart. */
  PROBES_DISAGREE(
      8,
      "SR-09",
      "The two bath probes disagree.",
      "See that both hang in the liquid; replace the one that is wrong."),
  /** SR-07: no or too little liquid on the plate. */
  TRAY_DRY(
      5,
      "SR-07",
      "The plate heats and the bath does not follow: the tray is dry, low or lifted.",
      "Keep hands off the plate. See that the tray sits flat and holds liquid."),
  /** SR-07: plate above its limit. */
  PLATE_TOO_HOT(
      4, "SR-07", "The plate is above its limit.", "Keep hands off the plate and let it cool."),
  /** SR-06: bath above its limits. */
  BATH_TOO_HOT(
      3, "SR-06", "The bath is above its limit.", "Keep hands out. Let it cool with the fan on."),
  /** SR-03: a proof present without a commanded fan. */
  PROOF_STUCK(
      2,
      "SR-03",
      "Airflow is signalled although the fan is off.",
      "Check the airflow switch and tachometer for a stuck or bridged contact."),
  /** SR-02: no proof of moving air before heat. */
  AIR_NOT_PROVEN(
      1,
      "SR-02",
      "The fan was started and moving air was not proven.",
      "Check the fan, the duct and the airflow switch."),
  /** SR-05: moving air lost in a run. */
  AIR_LOST(
      9,
      "SR-05",
      "Moving air was proven and then lost.",
      "Leave the vapour: open a door, cover the tray. Check fan and duct."),
  /** SR-10: heat commanded but not arriving. */
  HEAT_NOT_ARRIVING(
      10,
      "SR-10",
      "Heat is commanded and does not arrive in the bath.",
      "Check the heater's breaker and plug, and that the probe hangs in the liquid.");

  private final int code;
  private final String requirement;
  private final String meaning;
  private final String action;

  TripCause(int code, String requirement, String meaning, String action) {
    this.code = code;
    this.requirement = requirement;
    this.meaning = meaning;
    this.action = action;
  }

  /** Stable number for the register map; 0 is kept for none. */
  public int code() {
    return code;
  }

  /** The safety requirement behind the trip, such as {@code SR-05}. */
  public String requirement() {
    return requirement;
  }

  /** One sentence: what is wrong. */
  public String meaning() {
    return meaning;
  }

  /** One line: what the person does about it. */
  public String action() {
    return action;
  }
}
