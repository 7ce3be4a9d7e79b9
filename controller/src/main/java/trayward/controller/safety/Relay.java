package trayward.controller.safety;

/** The two relays in series between the mains and the heater. */
public enum Relay {
  /** The one that cycles. */
  HEATER("the heater relay"),
  /** The rarely switched one, open in every trip and at rest. */
  SAFETY("the safety relay");

  private final String words;

  Relay(String words) {
    this.words = words;
  }

  /** Its name as the page and the notes say it. */
  public String words() {
    return words;
  }

  /** The one in series with it. */
  public Relay other() {
    return this == HEATER ? SAFETY : HEATER;
  }
}
