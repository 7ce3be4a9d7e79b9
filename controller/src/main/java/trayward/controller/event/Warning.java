package trayward.controller.event;

/**
 * Conditions that need a person and do not trip: their alarms go when the condition has gone and
 * somebody has acknowledged them. Most pressing first.
 */
public enum Warning implements AlarmCause {
  /** SR-27: a warm bath gives off vapour and no moving air is proven. */
  BATH_WITHOUT_AIR(
      "SR-27",
      Priority.CRITICAL,
      "The bath is warm and no moving air is proven.",
      "Its vapour gathers in the room and is breathed.",
      "Cover the tray, leave the room and air it. Then look at the fan and its proofs."),
  /** SR-28: so little liquid that heat waits. */
  LEVEL_UNSURE(
      "SR-28",
      Priority.HIGH,
      "Half of the liquid seems to be gone.",
      "A tray that falls dry burns; heat waits until somebody has looked.",
      "Look at the tray, fill it and confirm the level."),
  /** SR-16: the host is required and silent. */
  HOST_LOST(
      "SR-16",
      Priority.MEDIUM,
      "The host is required and does not answer.",
      "Heat is withheld and the bath cools; nothing is recorded.",
      "See to the host computer and its cable, then start anew."),
  /** SR-15: presence is due soon, or is due. */
  PRESENCE_DUE(
      "SR-15",
      Priority.MEDIUM,
      "Nobody has shown to be at the tray for a long time.",
      "Heat is withheld when presence is not renewed: heat is attended.",
      "Touch the page, the pedal or the button."),
  /** SR-28: water should be added. */
  LEVEL_LOW(
      "SR-28",
      Priority.LOW,
      "The tray holds less liquid than was said.",
      "The developer grows stronger and warms faster.",
      "Top up with water as shown, or confirm the level.");

  private final String requirement;
  private final Priority priority;
  private final String meaning;
  private final String why;
  private final String action;

  Warning(String requirement, Priority priority, String meaning, String why, String action) {
    this.requirement = requirement;
    this.priority = priority;
    this.meaning = meaning;
    this.why = why;
    this.action = action;
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
