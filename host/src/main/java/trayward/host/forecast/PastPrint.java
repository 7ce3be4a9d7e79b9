package trayward.host.forecast;

import java.util.OptionalDouble;

/**
 * What the forecast learns from one print. Immutable.
 *
 * @param number the print's number, for whoever reads it; it decides nothing
 * @param emergenceC effective bath temperature from in to emergence, °C ({@link Arrhenius#meanC})
 * @param emergenceS seconds from in to emergence
 * @param pullS seconds from in to pull; empty where not marked
 * @param features what else is known of it
 */
public record PastPrint(
    long number, double emergenceC, double emergenceS, OptionalDouble pullS, Features features) {

  /** Shorter is a finger on the wrong button, seconds. */
  public static final double SHORTEST_S = 2;

  /** Longer is a sheet that was forgotten, seconds: two hours. */
  public static final double LONGEST_S = 7200;

  /** Coldest and hottest bath that is one, °C; the controller's own range, with room for drift. */
  public static final double COLDEST_C = 5;

  /** See {@link #COLDEST_C}. */
  public static final double HOTTEST_C = 60;

  /** Drops a pull that is not after the emergence or too late to be one. */
  public PastPrint {
    if (pullS.isPresent()
        && !(pullS.getAsDouble() > emergenceS && pullS.getAsDouble() <= LONGEST_S)) {
      pullS = OptionalDouble.empty();
    }
  }

  /** Whether anything can be learned from it: a believable temperature and time. */
  public boolean teaches() {
    return Arrhenius.bath(emergenceC) && emergenceS >= SHORTEST_S && emergenceS <= LONGEST_S;
  }
}
