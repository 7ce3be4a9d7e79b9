package trayward.host.exposure;

/**
 * What a test with coins on flashed paper says of a safelight. Immutable.
 *
 * <p>ISO 8374:1986 accepts at most half of the greatest exposure that gives no detectable change;
 * ANSI IT2.26-1998, 3.14, takes half of the geometric mean of the longest time without and the
 * shortest with a visible change. The paper must be exposed before the test: unexposed paper shows
 * fog late.
 *
 * @param cleanMin longest time without a visible change, min, above 0
 * @param foggedMin shortest time with one, min, at least {@code cleanMin}
 */
public record Safelight(double cleanMin, double foggedMin) {

  /** Refuses what is out of order. */
  public Safelight {
    if (!(cleanMin > 0) || !(foggedMin >= cleanMin) || Double.isInfinite(foggedMin)) {
      throw new IllegalArgumentException("no test: " + cleanMin + ", " + foggedMin);
    }
  }

  /** Longest time a sheet may lie in this light, from box to stop bath, min. */
  public double longestMin() {
    return Math.sqrt(cleanMin * foggedMin) / 2;
  }
}
