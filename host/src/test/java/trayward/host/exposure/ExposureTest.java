package trayward.host.exposure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Arithmetic of exposure; where nothing else is said, check values are recomputed by hand. */
class ExposureTest {

  /** t 2^n. */
  @ParameterizedTest
  @CsvSource({"8, 2.3333333333, 40.317", "8, -1, 4", "10, 0, 10"})
  void stopsMultiplyATime(double fromS, double stops, double toS) {
    assertEquals(toS, Stops.seconds(fromS, stops), 0.001);
    assertEquals(stops, Stops.between(fromS, toS), 0.001);
  }

  /** 2^(k/2): the exact numbers that are engraved rounded. */
  @Test
  void theScaleOfAperturesIsThatOfTheRootOfTwo() {
    double[] exact = {1, 1.4142, 2, 2.8284, 4, 5.6569, 8, 11.3137, 16, 22.6274};
    for (int k = 0; k < exact.length; k++) {
      assertEquals(exact[k], Stops.fNumber(k), 1e-4);
      assertEquals(-k, Stops.betweenApertures(1, Stops.fNumber(k)), 1e-12);
    }
  }

  private static void same(List<Double> expected, List<Double> found) {
    assertEquals(expected.size(), found.size());
    for (int i = 0; i < expected.size(); i++) {
      assertEquals(expected.get(i), found.get(i), 0.001);
    }
  }

  /** t 2^(k/3) from 8 s, and the differences. */
  @Test
  void aStripInThirdsOfAStop() {
    TestStrip strip = new TestStrip(8, 1 / 3.0, 7);
    same(List.of(8.0, 10.079, 12.699, 16.0, 20.159, 25.398, 32.0), strip.totalsS());
    same(List.of(8.0, 2.079, 2.620, 3.301, 4.159, 5.240, 6.602), strip.exposuresS());
  }

  /** ((M2+1)/(M1+1))², 4 to 8 times: 3.24 and 1.696 stops. */
  @Test
  void aLargerPrintTakesTheSquareOfTheLensExtension() {
    Rescale rescale = new Rescale(4, 8);
    assertEquals(3.24, rescale.factor(), 1e-12);
    assertEquals(1.696, rescale.stops(), 0.001);
    assertEquals(32.4, rescale.seconds(10, Reciprocity.HOLDS), 1e-9);
    assertEquals(rescale, Rescale.ofLengths(36, 144, 288));
  }

  /** I t^p constant: 10 s at a quarter of the light and p = 0.90; p is from memory. */
  @Test
  void paperThatFailsReciprocityTakesMore() {
    assertEquals(46.66, new Reciprocity(0.90).seconds(10, 2), 0.01);
    assertEquals(40, Reciprocity.HOLDS.seconds(10, 2), 1e-12);
  }

  /** ANSI IT2.26-1998, definition 3.14: half of the geometric mean. */
  @Test
  void aSafelightIsGoodForHalfOfTheMeanOfCleanAndFogged() {
    assertEquals(5.657, new Safelight(8, 16).longestMin(), 0.001);
  }

  /**
   * ISO 8374:1986, scope: at most half of the greatest exposure without detectable change, which
   * lies between the two times of the test.
   */
  @ParameterizedTest
  @CsvSource({"8, 16", "3, 3", "1, 60"})
  void theTimeLiesBetweenTheHalvesOfBoth(double clean, double fogged) {
    double longest = new Safelight(clean, fogged).longestMin();
    assertEquals(Math.max(clean / 2, Math.min(fogged / 2, longest)), longest, 1e-12);
  }

  /**
   * Weights of red, green and blue are those of sRGB (from memory): on a screen of 100 cd/m² and
   * 1000:1 pure red shines with 21.3 cd/m² and still leaks 0.079 of green and blue, 0.37 %; at the
   * same exposure that leak costs 8.1 stops, not more.
   */
  @Test
  void aRedScreenStillLeaks() {
    double floor = 100 / 1000.0;
    double red = 0.2126 * 100 + (1 - 0.2126) * floor;
    double leak = (0.7152 + 0.0722) * floor;
    assertEquals(21.3, red, 0.05);
    assertEquals(0.079, leak, 0.0005);
    assertEquals(8.1, Stops.between(leak, red), 0.05);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -1, Double.NaN, 101})
  void whatIsNoMagnificationIsRefused(double m) {
    assertThrows(IllegalArgumentException.class, () -> new Rescale(m, 4));
    assertThrows(IllegalArgumentException.class, () -> new Rescale(4, m));
  }

  @Test
  void whatIsNoStripNoExponentAndNoTestIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> new TestStrip(0, 1, 5));
    assertThrows(IllegalArgumentException.class, () -> new TestStrip(8, 0, 5));
    assertThrows(IllegalArgumentException.class, () -> new TestStrip(8, 1, 21));
    assertThrows(IllegalArgumentException.class, () -> new Reciprocity(1.1));
    assertThrows(IllegalArgumentException.class, () -> new Reciprocity(Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> new Safelight(16, 8));
  }
}
