package trayward.controller.safety;

/**
 * One probe as the interlock sees it in one scan.
 *
 * @param fitted whether it is configured
 * @param valid whether its newest reading is believable
 * @param celsius its last believable reading, °C; NaN before the first
 */
public record Temperature(boolean fitted, boolean valid, double celsius) {

  /** A probe that is not configured. */
  public static final Temperature NOT_FITTED = new Temperature(false, false, Double.NaN);
}
