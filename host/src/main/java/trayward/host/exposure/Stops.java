package trayward.host.exposure;

/**
 * Exposure in stops: one stop doubles it. Pure arithmetic, after the definition of the aperture
 * scale of ISO 517: light goes with the square of the f-number.
 */
public final class Stops {

  private Stops() {}

  /** Stops from one exposure time to another, both above 0: log2 of their ratio. */
  public static double between(double fromS, double toS) {
    return Math.log(toS / fromS) / Math.log(2);
  }

  /** Stops of light from one f-number to another, both above 0; more light is above 0. */
  public static double betweenApertures(double fromF, double toF) {
    return -2 * between(fromF, toF);
  }

  /** The exact f-number {@code halfSteps} halves of the engraved scale above f/1: 2^(k/2). */
  public static double fNumber(int halfSteps) {
    return Math.pow(2, halfSteps / 2.0);
  }

  /** How many times the exposure this many stops are. */
  public static double factor(double stops) {
    return Math.pow(2, stops);
  }

  /** A time with this many stops added; less than 0 takes away. */
  public static double seconds(double fromS, double stops) {
    return fromS * factor(stops);
  }
}
