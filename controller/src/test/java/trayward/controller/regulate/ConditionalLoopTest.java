package trayward.controller.regulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/**
 * Loops whose locus passes the real axis more than once. L = k (1 + 2 s)^2/(s^2 (1 + 10 s)) closes
 * to 10 s^3 + (1 + 4 k) s^2 + 4 k s + k: by Routh stable where k is above 3/8, and only there. Own
 * algebra.
 */
class ConditionalLoopTest {

  private static TransferFunction loop(double gain, double delayS) {
    return TransferFunction.lags(gain, delayS, 10).withZeros(2, 2).integrating(2);
  }

  private static LoopRobustness judged(double gain) {
    return LoopRobustness.of(loop(gain, 0), 1e-4, 1e4);
  }

  @Test
  void aLoopThatNeedsGainIsStableWithItAndMayHaveAnyMore() {
    LoopRobustness r = judged(0.75);
    assertTrue(r.stable());
    assertEquals(Double.POSITIVE_INFINITY, r.gainMargin());
    assertTrue(judged(0.376).stable());
  }

  @Test
  void withoutItTheLoopIsNotStableAndTheMarginSaysHowMuchIsMissing() {
    LoopRobustness r = judged(0.3);
    assertFalse(r.stable());
    assertEquals(0.375 / 0.3, r.gainMargin(), 1e-9);
    assertFalse(judged(0.374).stable());
  }

  /** With a delay there is an upper end as well: that is the margin, and the ultimate point. */
  @Test
  void theMarginAndTheUltimatePointAreWhereThePhaseFallsForGood() {
    UltimatePoint u = UltimatePoint.of(loop(1, 0.1)).orElseThrow();
    assertTrue(u.gain() > 0.375, "Ku " + u.gain());
    assertEquals(-Math.PI, loop(1, 0.1).phaseRad(u.radPerS()), 1e-9);
    assertTrue(loop(1, 0.1).phaseRad(0.9 * u.radPerS()) > -Math.PI, "from above");
    LoopRobustness r = LoopRobustness.of(loop(0.75, 0.1), 1e-4, 1e4);
    assertTrue(r.stable());
    assertEquals(u.gain() / 0.75, r.gainMargin(), 1e-6);
  }

  /** A lead turns the phase through 0 degrees first: that is no margin. */
  @Test
  void onlyTheNegativeRealAxisCounts() {
    TransferFunction loop = TransferFunction.lags(0.5, 0.1, 1, 0.3).withZeros(2);
    UltimatePoint u = UltimatePoint.of(loop).orElseThrow();
    LoopRobustness r = LoopRobustness.of(loop, 1e-4, 1e3);
    assertTrue(r.stable());
    assertEquals(u.gain(), r.gainMargin(), 1e-6);
  }
}
