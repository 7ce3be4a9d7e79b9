package trayward.host.exposure;

/**
 * How a paper answers to dim light: blackening goes with I t^p. With p = 1 light and time may be
 * exchanged at will; most papers are a little below. Schwarzschild 1900 found p of about 0.86 on
 * plates (from memory). p is a property of one paper in one range of times: it must be tested.
 *
 * @param p exponent, {@value #LEAST} to 1
 */
public record Reciprocity(double p) {

  /** Least exponent: below it is no paper anybody has described. */
  public static final double LEAST = 0.5;

  /** Light and time may be exchanged. */
  public static final Reciprocity HOLDS = new Reciprocity(1);

  /** Refuses what is out of range. */
  public Reciprocity {
    if (!(p >= LEAST && p <= 1)) {
      throw new IllegalArgumentException("no exponent: " + p);
    }
  }

  /**
   * Time that gives as much blackening when the light is weaker by so many stops, or that many
   * stops more of it under the same light.
   */
  public double seconds(double fromS, double stops) {
    return Stops.seconds(fromS, stops / p);
  }
}
