package trayward.controller.keep;

import java.util.regex.Pattern;

/**
 * What warm-ups have taught of a tray, to begin from at the next start. The liquid is not in it: a
 * tray is filled anew. Immutable.
 *
 * @param name name of the tray
 * @param epochDay date of the warm-up, days since 1970; for the record only (SR-22)
 * @param declaredW watts the heater was declared with
 * @param measured whether the heater's watts come from a warm-up with a measured litre
 * @param heater watts
 * @param plate heat capacity of the plate, J/K
 * @param coupling plate to bath, W/K
 * @param loss dry losses of the bath, W/K
 * @param evaporation factor on the evaporation
 * @param bathLag lag of the bath probe, s
 * @param plateLag lag of the plate probe, s
 * @param wall heat capacity of the tray's wall, J/K
 * @param rmsK what the readings differed from the fit, root mean square, K
 */
public record LearnedTray(
    String name,
    long epochDay,
    double declaredW,
    boolean measured,
    Figure heater,
    Figure plate,
    Figure coupling,
    Figure loss,
    Figure evaporation,
    Figure bathLag,
    Figure plateLag,
    Figure wall,
    double rmsK) {

  /** A tray's name: a line of the record, and of the page. */
  public static final int NAME_MAX = 40;

  /** What a name accepts, in words. */
  public static final String NAME_WORDS =
      "1 to " + NAME_MAX + " letters, digits, spaces, '-', '_' or '.'";

  private static final Pattern NAME = Pattern.compile("[\\p{L}\\p{Nd}][\\p{L}\\p{Nd} ._-]*");

  /**
   * A number and how unsure it is.
   *
   * @param value positive
   * @param doubt standard deviation of its natural logarithm
   */
  public record Figure(double value, double doubt) {}

  /** Whether a tray can be called so. */
  public static boolean named(String name) {
    return name.length() <= NAME_MAX && NAME.matcher(name).matches();
  }
}
