package trayward.host.link;

/** What became of a command on its way to the controller. */
public sealed interface LinkAnswer {

  /** Carried out by a scan. */
  record Done() implements LinkAnswer {}

  /**
   * The controller refused.
   *
   * @param reason why, in words
   */
  record Refused(String reason) implements LinkAnswer {}

  /**
   * The controller refused until a person confirms (SR-23).
   *
   * @param reason what is overdue, in words
   */
  record ConfirmFirst(String reason) implements LinkAnswer {}

  /**
   * No scan answered.
   *
   * @param why in words
   */
  record NotDelivered(String why) implements LinkAnswer {}
}
