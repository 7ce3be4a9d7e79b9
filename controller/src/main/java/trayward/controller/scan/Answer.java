package trayward.controller.scan;

/**
 * What became of a request.
 *
 * @param accepted whether it was carried out
 * @param reason why not, in words; empty where it was
 * @param confirmable whether it is carried out once it is asked with a confirmation (SR-23)
 */
public record Answer(boolean accepted, String reason, boolean confirmable) {

  /** Carried out. */
  public static final Answer DONE = new Answer(true, "", false);

  /** Refused with a reason. */
  public static Answer refused(String reason) {
    return new Answer(false, reason, false);
  }

  /** Refused until it is asked with a confirmation. */
  static Answer confirmFirst(String reason) {
    return new Answer(false, reason, true);
  }
}
