package trayward.controller.event;

/**
 * Why the interlock locked out: the vocabulary of {@code first_out} and {@code trips}.
 *
 * <p>Order is that in which one explains another where two causes are seen in one scan: the earlier
 * one becomes first-out. Codes are for the register map and never change.
 */
public enum TripCause implements AlarmCause {
  /** SR-17: the program stalled. */
  SCAN_LATE(
      12,
      "SR-17",
      Priority.HIGH,
      "The program stalled for a second or more.",
      "While it stalls nothing but hardware watches fan and heat.",
      "See what else this computer runs; restart if it happens again."),
  /** SR-12: the controller's own record cannot be read or written. */
  STORE_FAILED(
      13,
      "SR-12",
      Priority.HIGH,
      "The controller cannot read or write its own record.",
      "A lockout would be forgotten when power is lost.",
      "Check the storage card and the data folder, then reset."),
  /** SR-11, SR-26: a contact welded. */
  RELAY_STUCK(
      11,
      "SR-11",
      Priority.CRITICAL,
      "Heat arrives while the relay is commanded off, or its contact reads closed.",
      "One welded contact leaves a single relay between mains and tray; two leave none.",
      "Unplug the heater now. Replace the relay before using it again."),
  /** SR-08: the bath probe cannot be believed. */
  BATH_PROBE_BAD(
      6,
      "SR-08",
      Priority.HIGH,
      "A bath probe gives no believable reading.",
      "The bath may be hotter or colder than anyone knows.",
      "Check the probe's plug and cable, and that its reading moves; then reset."),
  /** SR-08: the plate probe cannot be believed. */
  PLATE_PROBE_BAD(
      7,
      "SR-08",
      Priority.HIGH,
      "The plate probe gives no believable reading.",
      "A dry plate would not be seen.",
      "Check the probe's plug, cable and clamp, then reset."),
  /** SR-09: two bath probes apart. */
  PROBES_DISAGREE(
      8,
      "SR-09",
      Priority.HIGH,
      "The two bath probes disagree.",
      "One of them is wrong, and nobody knows which.",
      "See that both hang in the liquid; replace the one that is wrong."),
  /** SR-07: no or too little liquid on the plate. */
  TRAY_DRY(
      5,
      "SR-07",
      Priority.CRITICAL,
      "The plate heats and the bath does not follow: the tray is dry, low or lifted.",
      "A bare plate burns hands and scorches trays.",
      "Keep hands off the plate. See that the tray sits flat and holds liquid."),
  /** SR-07: plate above its limit. */
  PLATE_TOO_HOT(
      4,
      "SR-07",
      Priority.CRITICAL,
      "The plate is above its limit.",
      "It burns on touch and softens trays.",
      "Keep hands off the plate and let it cool."),
  /** SR-06: bath above its limits. */
  BATH_TOO_HOT(
      3,
      "SR-06",
      Priority.CRITICAL,
      "The bath is above its limit.",
      "It scalds, splashes burn, and it gives off much more vapour.",
      "Keep hands out. Let it cool with the fan on."),
  /** SR-03: a proof present without a commanded fan. */
  PROOF_STUCK(
      2,
      "SR-03",
      Priority.HIGH,
      "Airflow is signalled although the fan is off.",
      "A stuck signal would vouch for a fan that stands still.",
      "Check the airflow switch and tachometer for a stuck or bridged contact."),
  /** SR-02: no proof of moving air before heat. */
  AIR_NOT_PROVEN(
      1,
      "SR-02",
      Priority.HIGH,
      "The fan was started and moving air was not proven.",
      "Without moving air the vapour of a warm bath stays in the room.",
      "Check the fan, the duct and the airflow switch."),
  /** SR-05: moving air lost in a run. */
  AIR_LOST(
      9,
      "SR-05",
      Priority.CRITICAL,
      "Moving air was proven and then lost.",
      "The bath is warm and its vapour gathers where you stand.",
      "Leave the vapour: open a door, cover the tray. Check fan and duct."),
  /** SR-10: heat commanded but not arriving. */
  HEAT_NOT_ARRIVING(
      10,
      "SR-10",
      Priority.HIGH,
      "Heat is commanded and does not arrive in the bath.",
      "A breaker may have tripped for a reason, or a probe hang in air while the bath heats.",
      "Check the heater's breaker and plug, and that the probe hangs in the liquid.");

  private final int code;
  private final String requirement;
  private final Priority priority;
  private final String meaning;
  private final String why;
  private final String action;

  TripCause(
      int code, String requirement, Priority priority, String meaning, String why, String action) {
    this.code = code;
    this.requirement = requirement;
    this.priority = priority;
    this.meaning = meaning;
    this.why = why;
    this.action = action;
  }

  /** Stable number for the register map; 0 is kept for none. */
  public int code() {
    return code;
  }

  @Override
  public String requirement() {
    return requirement;
  }

  @Override
  public Priority priority() {
    return priority;
  }

  @Override
  public String meaning() {
    return meaning;
  }

  @Override
  public String why() {
    return why;
  }

  @Override
  public String action() {
    return action;
  }
}
