package trayward.controller.quantity;

/**
 * A closed range of finite numbers with their unit, both ends included.
 *
 * <p>Immutable; safe on any thread.
 *
 * @param min smallest accepted value, finite
 * @param max largest accepted value, finite, not below {@code min}
 * @param unit unit symbol for messages, empty for a plain ratio
 */
public record Range(double min, double max, String unit) {

  /** Refuses ends that are not finite or stand in the wrong order. */
  public Range {
    if (!Double.isFinite(min) || !Double.isFinite(max) || min > max) {
      throw new IllegalArgumentException("a range needs two finite ends in order");
    }
  }

  /** Whether {@code value} is finite and inside; NaN and infinities are outside. */
  public boolean contains(double value) {
    return value >= min && value <= max;
  }

  /** The range in words for an error message, such as {@code 15 to 50 °C}. */
  public String words() {
    String span = plain(min) + " to " + plain(max);
    return unit.isEmpty() ? span : span + " " + unit;
  }

  /** A number without a superfluous {@code .0}. */
  public static String plain(double value) {
    if (value == Math.rint(value) && Math.abs(value) < 1e15) {
      return Long.toString((long) value);
    }
    return Double.toString(value);
  }
}
