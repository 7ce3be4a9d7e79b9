package trayward.controller.calibrate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;

/** A straight line that moves no reading beyond its bound. */
class CorrectionTest {

  @Test
  void aProbeNobodyCalibratedReadsAsItReads() {
    for (double c = -55; c <= 125; c += 0.0625) {
      assertEquals(c, Correction.NONE.apply(c));
    }
    assertTrue(Double.isNaN(new Correction(1.01, 0.5).apply(Double.NaN)));
  }

  @Test
  void aLineIsAppliedAsItIs() {
    assertEquals(40.5, new Correction(1.01, 0.1).apply(40), 1e-12);
    assertEquals(-0.3, new Correction(0.99, -0.3).apply(0), 1e-12);
  }

  /** Whatever stands in a record, over the whole range of the probe. */
  @ParameterizedTest
  @CsvSource({"1, 2", "1, -2", "1.02, 2", "0.98, -2", "1, 50", "1, -50", "2, 0", "-1, 0"})
  @Verifies(value = "SR-06", side = Side.WITHHOLDS)
  void noLineMovesAReadingByMoreThanTwoKelvin(double slope, double offsetK) {
    Correction line = new Correction(slope, offsetK);
    for (double c = -55; c <= 125; c += 0.0625) {
      assertTrue(Math.abs(line.apply(c) - c) <= 2 + 1e-12, c + " becomes " + line.apply(c));
    }
  }

  @ParameterizedTest
  @CsvSource({
    "1, 0, true",
    "1, 2, true",
    "1, -2, true",
    "1, 2.001, false",
    "1, -2.001, false",
    "1.02, 0.5, true",
    "1.0201, 0.5, false",
    "0.98, -0.5, true",
    "0.9799, -0.5, false",
    "1.02, 0.61, false",
    "NaN, 0, false",
    "1, NaN, false",
    "Infinity, 0, false"
  })
  void onlyWhatASoundProbeCanNeedIsPlausible(double slope, double offsetK, boolean plausible) {
    Correction line = new Correction(slope, offsetK);
    assertEquals(plausible, line.plausible(), line.toString());
  }

  @Test
  void aLineThatIsNoNumberMovesNothingUnbounded() {
    double made = new Correction(Double.NEGATIVE_INFINITY, 0).apply(40);
    assertTrue(Math.abs(made - 40) <= 2);
    assertFalse(new Correction(Double.NaN, 0).plausible());
  }
}
