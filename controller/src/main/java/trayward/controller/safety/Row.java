package trayward.controller.safety;

/** A row of numbers that nobody changes after it is made. Compared by content. Immutable. */
final class Row {

  private final double[] values;

  private Row(double[] values) {
    this.values = values;
  }

  /** A row of {@code size} equal numbers. */
  static Row of(int size, double value) {
    double[] all = new double[size];
    java.util.Arrays.fill(all, value);
    return new Row(all);
  }

  /** Takes {@code values} over: the caller keeps no hand on it. */
  static Row owning(double[] values) {
    return new Row(values);
  }

  double at(int index) {
    return values[index];
  }

  int size() {
    return values.length;
  }

  double last() {
    return values[values.length - 1];
  }

  double[] copy() {
    return values.clone();
  }

  /** With {@code value} in front and the last one dropped. */
  Row pushed(double value) {
    double[] all = new double[values.length];
    System.arraycopy(values, 0, all, 1, values.length - 1);
    all[0] = value;
    return new Row(all);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Row row && java.util.Arrays.equals(values, row.values);
  }

  @Override
  public int hashCode() {
    return java.util.Arrays.hashCode(values);
  }
}
