package trayward.controller.calibrate;

/**
 * One comparison of a probe with a known temperature. Immutable.
 *
 * @param celsius the known temperature, °C
 * @param statedK its expanded uncertainty, k = 2, as the person states it, K
 * @param rawC what the probe read, mean, uncorrected, °C
 * @param scatterK standard deviation of its readings, K
 * @param epochDay day it was taken, from 1970-01-01, as the clock showed it: for the record only
 */
public record Point(double celsius, double statedK, double rawC, double scatterK, long epochDay) {

  /** Melting ice, °C. */
  public static final double ICE_C = 0;

  /**
   * What an ice bath is trusted to, k = 2, K. Crushed ice of distilled water, stirred, is within
   * some 0.01 K (common practice); tap water and a little too much of it cost some hundredths, and
   * nobody checks.
   */
  public static final double ICE_STATED_K = 0.05;

  /** 2026-01-01: a clock that shows less is not set. */
  private static final long EARLIEST_DAY = 20_454;

  /** An ice point. */
  public static Point ice(Stand stand, long epochDay) {
    return new Point(ICE_C, ICE_STATED_K, stand.meanC(), stand.scatterK(), epochDay);
  }

  /** A reading against a thermometer. */
  public static Point reference(double celsius, double statedK, Stand stand, long epochDay) {
    return new Point(celsius, statedK, stand.meanC(), stand.scatterK(), epochDay);
  }

  /** Whether the clock can have been right: not before this was written. */
  public boolean dated() {
    return epochDay >= EARLIEST_DAY;
  }

  /** Whether these are numbers of an ice point. */
  public boolean isIce() {
    return celsius == ICE_C && statedK == ICE_STATED_K && measured();
  }

  /** Whether these are numbers of a reference that is taken. */
  public boolean isReference() {
    return Calibration.REFERENCE_C.contains(celsius)
        && Calibration.STATED_K.contains(statedK)
        && measured();
  }

  private boolean measured() {
    return Double.isFinite(rawC) && scatterK >= 0 && scatterK <= Stand.STILL_K;
  }

  /** What must be added to what the probe read, K. */
  public double offK() {
    return celsius - rawC;
  }

  /**
   * Standard uncertainty of {@link #offK}, K: root of the sum of squares (GUM, JCGM 100:2008,
   * 5.1.2). The scatter counts whole and not divided by the root of the number of readings: they
   * follow each other within a drift and on the same few steps, so they are not independent.
   */
  double standardK() {
    double known = statedK / Uncertainty.COVERAGE;
    return Math.sqrt(known * known + scatterK * scatterK + Uncertainty.STEP_VARIANCE_K2);
  }
}
