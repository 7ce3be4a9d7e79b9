package trayward.controller.event;

/**
 * Priority of an alarm after ISA-18.2 / IEC 62682: by the harm that follows where nobody acts, and
 * the time there is to act. In order, the most pressing first.
 */
public enum Priority {
  /** Burns, fire or breathing vapour within minutes. */
  CRITICAL("act now"),
  /** Heat is off; what failed may harm when it is used again. */
  HIGH("act before the next print"),
  /** The session is interrupted or soon will be. */
  MEDIUM("act when the hands are free"),
  /** Nothing is lost yet. */
  LOW("act today");

  private final String words;

  Priority(String words) {
    this.words = words;
  }

  /** How soon, in the words the page shows. */
  public String words() {
    return words;
  }
}
