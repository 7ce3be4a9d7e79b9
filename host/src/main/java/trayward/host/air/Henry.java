package trayward.host.air;

/**
 * How strongly water holds formaldehyde, by one measurement: Henry's law with its temperature
 * dependence by van 't Hoff,
 *
 * <pre>
 *   H(T) = H(298.15 K) exp(B (1/T - 1/298.15 K))     mol/(m³ Pa)
 * </pre>
 *
 * <p>All values are effective ones for water, hydration included, as compiled in Sander,
 * Atmospheric Chemistry and Physics 15 (2015) 4399. Immutable.
 */
public enum Henry {
  /** Staudinger and Roberts 2001, a review: what the planners use. */
  STAUDINGER(32, 6800),
  /** Sander and others 2011, a review. */
  SANDER(32, 7100),
  /** Betterton and Hoffmann 1988, measured. */
  BETTERTON(31, 7200),
  /** Zhou and Mopper 1990, measured. */
  ZHOU(31, 6500),
  /** Allou and others 2011, measured. */
  ALLOU(34, 6400),
  /** Liu and others 2015, measured. */
  LIU(35, 5700),
  /** Seyfioglu and Odabasi 2007, measured: far from all others. */
  SEYFIOGLU(53, 1600);

  private static final double KELVIN = 273.15;
  private static final double REFERENCE_K = 298.15;

  private final double molPerM3Pa;
  private final double slopeK;

  Henry(double molPerM3Pa, double slopeK) {
    this.molPerM3Pa = molPerM3Pa;
    this.slopeK = slopeK;
  }

  /** Solubility at {@code celsius}, mol/(m³ Pa). */
  public double at(double celsius) {
    return molPerM3Pa * Math.exp(slopeK * (1 / (celsius + KELVIN) - 1 / REFERENCE_K));
  }

  /** How many times the pressure over the same liquid is at {@code hotC} what it is at coldC. */
  public double rise(double coldC, double hotC) {
    return at(coldC) / at(hotC);
  }

  /** Pressure of formaldehyde over water that holds so much of it, free, Pa. */
  public double pascal(double molPerM3, double celsius) {
    return molPerM3 / at(celsius);
  }
}
