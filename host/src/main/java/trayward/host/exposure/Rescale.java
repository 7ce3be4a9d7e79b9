package trayward.host.exposure;

/**
 * The same print in another size: light on the easel goes with 1/(m+1)², m the magnification, for a
 * thin lens at the same f-number. It knows nothing of the enlarger's light: one whose lamp house
 * moves with the negative differs a little. Immutable.
 *
 * @param fromMagnification of the print there is: image over negative, above 0 up to {@value #MOST}
 * @param toMagnification of the print to be
 */
public record Rescale(double fromMagnification, double toMagnification) {

  /** Largest magnification: a wall from a small negative. */
  public static final double MOST = 100;

  /** Refuses what is out of range. */
  public Rescale {
    if (!(fromMagnification > 0 && fromMagnification <= MOST)
        || !(toMagnification > 0 && toMagnification <= MOST)) {
      throw new IllegalArgumentException(
          "no magnifications: " + fromMagnification + ", " + toMagnification);
    }
  }

  /** From the length of the same part of the image on both prints and on the negative, mm. */
  public static Rescale ofLengths(double negativeMm, double fromPrintMm, double toPrintMm) {
    return new Rescale(fromPrintMm / negativeMm, toPrintMm / negativeMm);
  }

  /** How many times the exposure the other size takes: ((m2+1)/(m1+1))². */
  public double factor() {
    double side = (toMagnification + 1) / (fromMagnification + 1);
    return side * side;
  }

  /** The same in stops. */
  public double stops() {
    return Math.log(factor()) / Math.log(2);
  }

  /** Exposure time of the other size, s; paper that fails reciprocity takes more. */
  public double seconds(double fromS, Reciprocity paper) {
    return paper.seconds(fromS, stops());
  }
}
