package trayward.controller.safety;

/**
 * The plates that a tray may have, as a grid: time constants (capacity over coupling) by lifts over
 * the bath (kelvins for each watt as declared). Nobody declares a plate, so the grid is as wide as
 * what stands in darkrooms. Immutable.
 *
 * <p>Only these two ratios show in what a plate does. A lift that is wrong by some share makes the
 * gap wrong by that share; a time constant at most by 37 % of it, and only for a while: so that
 * grid may be three times as coarse.
 */
final class PlateGrid {

  /**
   * From a hand's breadth of tin, 0.25 mm, to 4 mm of aluminium under half a square metre: the
   * smallest is 100 J/K and the largest 1900; a tenth at both ends.
   */
  static final double CAPACITY_MIN = 90;

  static final double CAPACITY_MAX = 2000;

  /** From a film of air under a corner's worth of tray to a wet contact over all of it, W/K. */
  static final double COUPLING_MIN = 4;

  static final double COUPLING_MAX = 45;

  /** Believed power may be 15 % high and supply 10 % off (power goes with its square). */
  static final double POWER_MIN = 0.65;

  static final double POWER_MAX = 1.25;

  /** Faster plates are thinner than their own probe; slower ones lie under no tray, s. */
  private static final double TIME_MIN_S = 7;

  private static final double TIME_MAX_S = 190;

  /** Steps of 24 %. */
  static final int TIMES = 16;

  /** Steps of 8 %: half a step is within the gap's tolerance. */
  static final int LIFTS = 41;

  static final int SIZE = TIMES * LIFTS;

  private static final Row TIME_S = spaced(TIMES, TIME_MIN_S, TIME_MAX_S);
  private static final Row KELVIN_PER_W =
      spaced(LIFTS, POWER_MIN / COUPLING_MAX, POWER_MAX / COUPLING_MIN);

  private PlateGrid() {}

  static double timeS(int t) {
    return TIME_S.at(t);
  }

  static double kelvinPerW(int g) {
    return KELVIN_PER_W.at(g);
  }

  /** Whether some power within belief makes candidate {@code i} a plate that can be. */
  static boolean possible(int i) {
    double kelvinPerW = kelvinPerW(i % LIFTS);
    double leastWPerK = Math.max(COUPLING_MIN, POWER_MIN / kelvinPerW);
    double mostWPerK = Math.min(COUPLING_MAX, POWER_MAX / kelvinPerW);
    double timeS = timeS(i / LIFTS);
    return mostWPerK * timeS >= CAPACITY_MIN && leastWPerK * timeS <= CAPACITY_MAX;
  }

  private static Row spaced(int n, double from, double to) {
    double[] all = new double[n];
    for (int k = 0; k < n; k++) {
      all[k] = from * Math.pow(to / from, k / (double) (n - 1));
    }
    return Row.owning(all);
  }
}
