package trayward.controller.scan;

/**
 * What became of a request.
 *
 * @param accepted whether it was carried out
 * @param reason why not, in words; empty where it was
 */
public record Answer(boolean accepted, String reason) {

  /** Carried out. */
  public static final Answer DONE = new Answer(true, "");

  /** Refused with a reason. */
  public static Answer refused(String reason) {
    return new Answer(false, reason);
  }
}
