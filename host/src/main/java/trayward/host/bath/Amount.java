package trayward.host.bath;

/**
 * A quantity and how unsure it is. Immutable. Sums and products take their parts as independent:
 * GUM (JCGM 100:2008), 5.1.2.
 *
 * @param value the best estimate, in whatever unit its owner says
 * @param standard standard uncertainty in the same unit, 0 or more
 */
public record Amount(double value, double standard) {

  /** Nothing, exactly. */
  public static final Amount ZERO = new Amount(0, 0);

  /** Refuses what is no number. */
  public Amount {
    if (!Double.isFinite(value) || !(standard >= 0) || Double.isInfinite(standard)) {
      throw new IllegalArgumentException("no amount: " + value + " ± " + standard);
    }
  }

  /** A value that is taken as exact. */
  public static Amount exactly(double value) {
    return new Amount(value, 0);
  }

  /** A value known to a share of itself, such as 0.02 for a jug read to 2 %. */
  public static Amount within(double value, double share) {
    return new Amount(value, Math.abs(value) * share);
  }

  /** The sum of two independent amounts. */
  public Amount plus(Amount other) {
    return new Amount(value + other.value, Math.hypot(standard, other.standard));
  }

  /** The product of two independent amounts. */
  public Amount times(Amount other) {
    return new Amount(
        value * other.value, Math.hypot(standard * other.value, other.standard * value));
  }

  /** This many times it. */
  public Amount times(double factor) {
    return new Amount(value * factor, standard * Math.abs(factor));
  }

  /** What is left when this share is taken out, which is itself unsure. */
  public Amount without(Amount share) {
    return new Amount(
        value * (1 - share.value),
        Math.hypot(standard * (1 - share.value), value * share.standard));
  }

  /** Half width of an interval with a coverage factor of 2. */
  public double expanded() {
    return 2 * standard;
  }
}
