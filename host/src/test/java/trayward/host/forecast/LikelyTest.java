package trayward.host.forecast;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.hipparchus.distribution.continuous.TDistribution;
import org.junit.jupiter.api.Test;

class LikelyTest {

  /** Against drawing: of residuals that are Student's t, those that have not come yet. */
  @Test
  void aSheetThatIsLateHasTheWindowOfThoseThatAreAsLate() {
    Likely likely = new Likely(0, 0.12, 9);
    double floor = Math.log(1.15);
    Random random = new Random(31);
    TDistribution t = new TDistribution(9);
    double[] left =
        random
            .doubles(200_000)
            .map(u -> 0.12 * t.inverseCumulativeProbability(u))
            .filter(x -> x > floor)
            .sorted()
            .toArray();
    assertTrue(left.length > 20_000);
    for (double share : new double[] {0.025, 0.1, 0.5, 0.9, 0.975}) {
      double drawn = left[(int) (share * left.length)];
      assertEquals(drawn, likely.quantileBeyond(floor, share), 0.015 * (drawn - floor) + 0.002);
    }
  }

  @Test
  void farBeyondEveryPrintTheTruncatedQuantilesStayExact() {
    Likely likely = new Likely(0, 0.1, 30);
    double floor = 3; // thirty scales out: a share of about 1e-23 is left
    double before = floor;
    for (double share : new double[] {0.025, 0.5, 0.975}) {
      double quantile = likely.quantileBeyond(floor, share);
      assertTrue(quantile > before, quantile + " after " + before);
      assertEquals(1 - share, likely.above(quantile) / likely.above(floor), 1e-6);
      before = quantile;
    }
    // Where the shares themselves underflow the tail is a power of the distance: own arithmetic.
    Likely narrow = new Likely(0, 0.01, 500);
    assertEquals(8 * Math.pow(2, 1 / 500.0), narrow.quantileBeyond(8, 0.5), 1e-9);
  }
}
