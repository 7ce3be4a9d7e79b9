package trayward.host.session;

/**
 * One row of a session's temperature trace. Immutable.
 *
 * <p>NaN stands for "not valid" in the three temperatures; an infinite one becomes NaN.
 *
 * @param sessionS seconds on the session's monotonic time line, finite, 0 or more
 * @param bathC bath temperature, °C; NaN where no reading was valid
 * @param plateC plate temperature, °C; NaN where no reading was valid or no probe is wired
 * @param setC set temperature, °C; NaN where none was known
 * @param duty demanded share of full heat, 0 to 1; what lies outside becomes the nearer end, NaN 0
 * @param state the interlock's state by name, at most {@value #STATE_MAX} characters
 * @param fanProven the controller's verdict on the fan
 */
public record TraceSample(
    double sessionS,
    double bathC,
    double plateC,
    double setC,
    double duty,
    String state,
    boolean fanProven) {

  /** Longest name of a state: twice the longest there is, and a row stays a row. */
  public static final int STATE_MAX = 32;

  /** Refuses a time no monotonic clock gives and a state too long to be one. */
  public TraceSample {
    if (!Double.isFinite(sessionS) || sessionS < 0) {
      throw new IllegalArgumentException("a session's time is finite and not negative");
    }
    if (state.length() > STATE_MAX) {
      throw new IllegalArgumentException("a state's name has at most " + STATE_MAX + " characters");
    }
    bathC = finiteOrNaN(bathC);
    plateC = finiteOrNaN(plateC);
    setC = finiteOrNaN(setC);
    duty = Double.isNaN(duty) ? 0 : Math.max(0, Math.min(1, duty));
  }

  /** Whether the bath temperature may be used. */
  public boolean bathValid() {
    return !Double.isNaN(bathC);
  }

  private static double finiteOrNaN(double celsius) {
    return Double.isFinite(celsius) ? celsius : Double.NaN;
  }
}
