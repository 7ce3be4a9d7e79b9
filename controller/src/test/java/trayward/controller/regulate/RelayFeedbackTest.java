package trayward.controller.regulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;

/**
 * Rows A3.f, A3.2, A3.3 and A3.5 of the check values. Åström and Hägglund 1984, Automatica 20:645:
 * 4 d/(pi a) read second-hand, the form with hysteresis from memory. The limit cycles are our own
 * arithmetic, recomputed; here each is simulated as well.
 */
class RelayFeedbackTest {

  private static final double TOLERANCE = 1e-8;

  private static UltimatePoint estimate(RelayFeedback relay, double swingK, double periodS) {
    return relay.estimate(swingK, periodS).orElseThrow();
  }

  /** A3.f. */
  @Test
  void theGainIsThatOfTheFundamentalWave() {
    UltimatePoint u = estimate(RelayFeedback.ideal(0.5), 0.2, 60);
    assertEquals(4 * 0.5 / (Math.PI * 0.2), u.gain(), 1e-12);
    assertEquals(60, u.periodS());
    assertEquals(-Math.PI, RelayFeedback.ideal(0.5).phaseRad(0.2));
    RelayFeedback wide = new RelayFeedback(0.5, 0.12);
    assertEquals(4 * 0.5 / (Math.PI * 0.16), estimate(wide, 0.2, 60).gain(), 1e-12);
    assertEquals(-Math.PI + Math.asin(0.6), wide.phaseRad(0.2), 1e-12);
  }

  @Test
  void noSwingBeyondTheHysteresisTellsNothing() {
    assertTrue(new RelayFeedback(0.5, 0.2).estimate(0.2, 60).isEmpty());
    assertTrue(RelayFeedback.ideal(0.5).estimate(0, 60).isEmpty());
    assertTrue(RelayFeedback.ideal(0.5).estimate(Double.NaN, 60).isEmpty());
    assertTrue(RelayFeedback.ideal(0.5).estimate(0.2, 0).isEmpty());
    assertTrue(RelayFeedback.ideal(0).estimate(0.2, 60).isEmpty());
  }

  /** A3.2: exp(-2 s)/(10 s + 1); a = 1 - E, P = 2 tau ln(2/E - 1), E = exp(-theta/tau). */
  @Test
  void oneLagUnderAnIdealRelay() {
    double e = Math.exp(-0.2);
    double swing = 1 - e;
    double periodS = 20 * Math.log(2 / e - 1);
    assertEquals(0.1812692469, swing, TOLERANCE);
    assertEquals(7.3317898677, periodS, TOLERANCE);
    UltimatePoint u = estimate(RelayFeedback.ideal(1), swing, periodS);
    assertEquals(7.0240240215, u.gain(), TOLERANCE);
    UltimatePoint truth = UltimatePoint.of(TransferFunction.lags(1, 2, 10)).orElseThrow();
    assertEquals(-0.1739, u.gain() / truth.gain() - 1, 5e-5);
    assertEquals(-0.0147, u.periodS() / truth.periodS() - 1, 5e-5);
    assertSwing(new RelaySwing(2, 0, 10), swing, periodS);
  }

  /** A3.3: the same with eps = 0.05; a = 1 - E + eps E, P = 2 (theta + tau ln((a+1)/(1-eps))). */
  @Test
  void oneLagUnderARelayWithHysteresis() {
    double e = Math.exp(-0.2);
    double swing = 1 - e + 0.05 * e;
    double periodS = 2 * (2 + 10 * Math.log((swing + 1) / 0.95));
    assertEquals(0.2222057846, swing, TOLERANCE);
    assertEquals(9.0390108155, periodS, TOLERANCE);
    UltimatePoint u = estimate(new RelayFeedback(1, 0.05), swing, periodS);
    assertEquals(5.8808157886, u.gain(), TOLERANCE);
    UltimatePoint naive = estimate(RelayFeedback.ideal(1), swing, periodS);
    assertEquals(5.7300017962, naive.gain(), TOLERANCE);
    assertSwing(new RelaySwing(2, 0.05, 10), swing, periodS);
  }

  /** A3.5: exp(-s)/((10 s + 1)(2 s + 1)), exact limit cycle by Tsypkin's method. */
  @Test
  void twoLagsUnderAnIdealRelay() {
    RelaySwing cycle = new RelaySwing(1, 0, 10, 2).run(400);
    assertEquals(8.808419, cycle.periodS, 1e-5);
    assertEquals(0.10310465, cycle.swing, 1e-5 * 0.1);
    UltimatePoint u = estimate(RelayFeedback.ideal(1), cycle.swing, cycle.periodS);
    assertEquals(12.349002, u.gain(), 1e-4); // 1e-5 of it
    UltimatePoint truth = UltimatePoint.of(TransferFunction.lags(1, 1, 10, 2)).orElseThrow();
    assertEquals(-0.0608, u.gain() / truth.gain() - 1, 5e-5);
    assertEquals(0.0285, u.periodS() / truth.periodS() - 1, 5e-5);
  }

  /**
   * By Tsypkin the limit cycle is where the sum over the odd harmonics of Im G(j n w)/n is nil: the
   * swing found by simulation fulfils it, with the plant as a transfer function.
   */
  @Test
  void theSwingOfTwoLagsFulfilsTsypkinsCondition() {
    RelaySwing cycle = new RelaySwing(1, 0, 10, 2).run(400);
    TransferFunction plant = TransferFunction.lags(1, 1, 10, 2);
    double w = 2 * Math.PI / cycle.periodS;
    double sum = 0;
    double sizes = 0;
    for (int n = 1; n < 2001; n += 2) {
      Complex g = plant.at(n * w);
      sum += g.getImaginary() / n;
      sizes += g.norm() / n;
    }
    assertEquals(0, sum / sizes, 1e-6);
  }

  private static void assertSwing(RelaySwing cycle, double swing, double periodS) {
    cycle.run(600);
    assertEquals(swing, cycle.swing, 1e-7);
    assertEquals(periodS, cycle.periodS, 1e-7);
  }
}
