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
   * No scan answered.
   *
   * @param why in words
   */
  record NotDelivered(String why) implements LinkAnswer {}
}
