package trayward.controller.safety;

/**
 * A number for each candidate of {@link PlateGrid}. Kept by time constant, so that what follows
 * shares the memory of every time constant in which nothing changes: once a plate is known that is
 * most of them. Compared by content. Immutable.
 */
final class PlateRow {

  private final double[][] byTime;

  private PlateRow(double[][] byTime) {
    this.byTime = byTime;
  }

  /** The same number for every candidate. */
  static PlateRow of(double value) {
    double[] lifts = new double[PlateGrid.LIFTS];
    java.util.Arrays.fill(lifts, value);
    double[][] all = new double[PlateGrid.TIMES][];
    java.util.Arrays.fill(all, lifts);
    return new PlateRow(all);
  }

  /** Of one number for each candidate, in the order of the grid. */
  static PlateRow copyOf(double[] values) {
    double[][] all = new double[PlateGrid.TIMES][];
    for (int t = 0; t < all.length; t++) {
      int from = t * PlateGrid.LIFTS;
      all[t] = java.util.Arrays.copyOfRange(values, from, from + PlateGrid.LIFTS);
    }
    return new PlateRow(all);
  }

  /** Takes {@code byTime} over: the caller keeps no hand on it. */
  static PlateRow owning(double[][] byTime) {
    return new PlateRow(byTime);
  }

  double at(int i) {
    return at(i / PlateGrid.LIFTS, i % PlateGrid.LIFTS);
  }

  double at(int t, int g) {
    return byTime[t][g];
  }

  /** The numbers by time constant: a new list of the same parts, which are to be replaced whole. */
  double[][] parts() {
    return byTime.clone();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof PlateRow row && java.util.Arrays.deepEquals(byTime, row.byTime);
  }

  @Override
  public int hashCode() {
    return java.util.Arrays.deepHashCode(byTime);
  }
}
