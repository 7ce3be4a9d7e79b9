package trayward.controller.regulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The responses against complex arithmetic written out, and the search against known answers. */
class TransferFunctionTest {

  @ParameterizedTest
  @ValueSource(doubles = {0.01, 0.3, 1, 7, 200})
  void itIsItsFormulaInComplexNumbers(double w) {
    Complex s = new Complex(0, w);
    Complex formula =
        s.multiply(-0.3)
            .add(1)
            .multiply(s.multiply(2).add(1))
            .multiply(s.multiply(-0.7).exp())
            .multiply(4)
            .divide(s.multiply(s.multiply(5).add(1)).multiply(s.add(1)));
    TransferFunction g = TransferFunction.lags(4, 0.7, 5, 1).withZeros(-0.3, 2).integrating(1);
    near(formula, g.at(w));
    assertEquals(formula.norm(), g.sizeAt(w), 1e-12 * formula.norm());
  }

  @Test
  void itsPhaseAddsUpBeyondOneTurn() {
    assertEquals(-100 - Math.PI / 2, TransferFunction.lags(1, 1).integrating(1).phaseRad(100));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.001, 0.02, 0.5, 10})
  void aFilteredPidIsItsFormulaInComplexNumbers(double w) {
    Complex s = new Complex(0, w);
    Complex integral = s.multiply(50).reciprocal();
    Complex derivative = s.multiply(8).divide(s.multiply(8.0 / 5).add(1));
    near(integral.add(derivative).add(1).multiply(0.4), new IsaPid(0.4, 50, 8, 5).at(w));
    near(new Complex(0.4), IsaPid.p(0.4).at(w));
    near(integral.add(1).multiply(0.4), IsaPid.pi(0.4, 50).at(w));
    near(integral.add(1).add(s.multiply(8)).multiply(0.4), IsaPid.pid(0.4, 50, 8).at(w));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.001, 0.02, 0.5, 10})
  void cascadeAndIsaFormAreOneController(double w) {
    Simc.Series series = new Simc.Series(1.3, 20, 6);
    near(TransferFunction.controller(series).at(w), IsaPid.of(series).at(w));
  }

  @Test
  void whatIsNoTransferFunctionIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> TransferFunction.lags(0, 0, 1));
    assertThrows(IllegalArgumentException.class, () -> TransferFunction.lags(Double.NaN, 0, 1));
    assertThrows(IllegalArgumentException.class, () -> TransferFunction.lags(1, -1, 1));
    assertThrows(IllegalArgumentException.class, () -> TransferFunction.lags(1, 0, 0));
    assertThrows(IllegalArgumentException.class, () -> TransferFunction.lags(1, 0, -3));
    TransferFunction good = TransferFunction.lags(1, 0, 1);
    assertThrows(IllegalArgumentException.class, () -> good.withZeros(Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> good.integrating(-1));
  }

  @Test
  void itKeepsItsOwnCopyOfTheTimes() {
    List<Double> lags = new ArrayList<>(List.of(1.0, 2.0));
    TransferFunction g = new TransferFunction(1, List.of(), lags, 0, 0);
    lags.add(3.0);
    assertEquals(List.of(1.0, 2.0), g.lagsS());
  }

  @Test
  void theSweepFindsEveryCrossingAndTheHighestPeak() {
    FrequencySweep sweep = new FrequencySweep(0.1, 100);
    double[] found = sweep.crossings(Math::sin);
    assertEquals(31, found.length);
    assertEquals(7 * Math.PI, found[6], 1e-12);
    assertEquals(2, sweep.peak(w -> 2 - Math.pow(w - 3, 2)), 1e-9);
    assertEquals(100, sweep.peak(w -> w), 1e-12, "at the end of the band");
    assertEquals(-0.1, sweep.peak(w -> -w), 1e-12, "at its beginning");
  }

  @Test
  void aBandNeedsTwoEndsInOrderNotTooFarApart() {
    assertThrows(IllegalArgumentException.class, () -> new FrequencySweep(0, 1));
    assertThrows(IllegalArgumentException.class, () -> new FrequencySweep(1, 1));
    assertThrows(IllegalArgumentException.class, () -> new FrequencySweep(2, 1));
    assertThrows(IllegalArgumentException.class, () -> new FrequencySweep(1, Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> new FrequencySweep(1e-11, 1e11));
  }

  /** L = 4/(s+1) passes -1 nowhere: S is at most 1, the closed loop 0.8 at rest. */
  @Test
  void aLoopThatCannotSwingHasMarginsWithoutEnd() {
    LoopRobustness r = LoopRobustness.of(TransferFunction.lags(4, 0, 1), 1e-5, 1e5);
    assertTrue(r.stable());
    assertEquals(1, r.ms(), 1e-6);
    assertEquals(0.8, r.mt(), 1e-6);
    assertEquals(Double.POSITIVE_INFINITY, r.gainMargin());
    assertEquals(Math.sqrt(15), r.crossoverRadPerS(), 1e-9);
    assertEquals(Math.PI - Math.atan(Math.sqrt(15)), r.phaseMarginRad(), 1e-9);
  }

  @Test
  void aWeakLoopHasNoCrossover() {
    LoopRobustness r = LoopRobustness.of(TransferFunction.lags(0.3, 0, 1), 1e-5, 1e5);
    assertTrue(r.stable());
    assertTrue(Double.isNaN(r.crossoverRadPerS()));
    assertEquals(Double.POSITIVE_INFINITY, r.phaseMarginRad());
    assertEquals(Double.POSITIVE_INFINITY, r.delayMarginS());
  }

  /** Where the band ends before the loop's gain has fallen nothing is known of its stability. */
  @Test
  void aLoopNotSeenToItsEndIsNotCalledStable() {
    TransferFunction loop = TransferFunction.lags(4, 0, 1);
    assertFalse(LoopRobustness.of(loop, 1e-5, 1).stable());
  }

  /** 1/(s^2 (s+1)) turns about -1 at any gain: Routh, s^3 + s^2 + k has a missing term. */
  @Test
  void twoIntegratorsAndALagAreNeverStable() {
    for (double gain : new double[] {1e-3, 1, 1e3}) {
      TransferFunction loop = TransferFunction.lags(gain, 0, 1).integrating(2);
      assertFalse(LoopRobustness.of(loop, 1e-4, 1e4).stable(), "gain " + gain);
    }
  }

  /** k (1 + 2 s)/(s^2 (s+1)): by Routh s^3 + s^2 + 2 k s + k is stable at any gain. */
  @Test
  void aLeadBeforeTheLagMakesThemStable() {
    for (double gain : new double[] {1e-3, 1, 1e3}) {
      TransferFunction loop = TransferFunction.lags(gain, 0, 1).withZeros(2).integrating(2);
      assertTrue(LoopRobustness.of(loop, 1e-4, 1e5).stable(), "gain " + gain);
    }
  }

  private static void near(Complex expected, Complex actual) {
    assertEquals(0, actual.subtract(expected).norm() / expected.norm(), 1e-12);
  }
}
