package trayward.controller.regulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Rows A3.1, A3.4, A3.6, A3.7 and A4 of the check values. The families of A4 are those of Åström
 * and Hägglund, Benchmark systems for PID control, IFAC PID'00 (from memory); all values are our
 * own arithmetic, recomputed, or follow by the algebra beside the check.
 */
class UltimatePointTest {

  private static final double TOLERANCE = 1e-8;

  private static UltimatePoint of(TransferFunction plant) {
    return UltimatePoint.of(plant).orElseThrow();
  }

  private static void check(TransferFunction plant, double gain, double radPerS) {
    UltimatePoint u = of(plant);
    assertEquals(radPerS, u.radPerS(), TOLERANCE);
    assertEquals(gain, u.gain(), TOLERANCE);
    assertEquals(2 * Math.PI / radPerS, u.periodS(), 1e-7);
  }

  /** A3.1: 2 w + atan(10 w) = pi. */
  @Test
  void oneLagAndADelay() {
    check(TransferFunction.lags(1, 2, 10), 8.5024249884, 0.8443413450);
    assertEquals(7.4415227260, of(TransferFunction.lags(1, 2, 10)).periodS(), TOLERANCE);
  }

  /** A3.4. */
  @Test
  void twoLagsAndADelay() {
    check(TransferFunction.lags(1, 1, 10, 2), 13.1482121669, 0.7336708589);
    assertEquals(8.5640382614, of(TransferFunction.lags(1, 1, 10, 2)).periodS(), TOLERANCE);
  }

  /** A3.6. */
  @Test
  void twoEqualLagsAndADelay() {
    check(TransferFunction.lags(1, 1, 1, 1), 2.7070529756, 1.3065423742);
    assertEquals(4.8090176265, of(TransferFunction.lags(1, 1, 1, 1)).periodS(), TOLERANCE);
  }

  /** A3.7, to 1e-4: the reference tray at 40 °C. */
  @Test
  void theReferenceTray() {
    UltimatePoint u = of(TransferFunction.lags(41.6044, 3.75, 905.576, 46.943, 5));
    assertEquals(1, u.gain() / 2.811541, 1e-4);
    assertEquals(1, u.periodS() / 126.862, 1e-4);
    assertEquals(1, u.radPerS() / 0.0495278, 1e-4);
  }

  /** A4.1, A4.2, A4.3: 1/(s+1)^n swings at tan(pi/n) with the gain cos(pi/n)^-n. */
  @Test
  void equalLags() {
    check(TransferFunction.lags(1, 0, 1, 1, 1), 8, Math.sqrt(3));
    assertEquals(3.6275987285, of(TransferFunction.lags(1, 0, 1, 1, 1)).periodS(), TOLERANCE);
    check(TransferFunction.lags(1, 0, 1, 1, 1, 1), 4, 1);
    check(TransferFunction.lags(1, 0, 1, 1, 1, 1, 1, 1, 1, 1), 1.8839840975, 0.4142135624);
  }

  /**
   * A4.4: 1/((s+1)(1+a s)(1+a^2 s)(1+a^3 s)). The lags pair off around a^1.5, and each pair turns
   * by 90 degrees where w^2 a^3 = 1.
   */
  @ParameterizedTest
  @ValueSource(doubles = {0.1, 0.2, 0.5})
  void lagsInGeometricalOrderSwingInTheMiddle(double a) {
    UltimatePoint u = of(TransferFunction.lags(1, 0, 1, a, a * a, a * a * a));
    double w = Math.pow(a, -1.5);
    double outer = Math.hypot(1, w) * Math.hypot(1, w * a * a * a);
    double inner = Math.hypot(1, w * a) * Math.hypot(1, w * a * a);
    assertEquals(1, u.radPerS() / w, TOLERANCE);
    assertEquals(1, u.gain() / (outer * inner), TOLERANCE);
  }

  /** A4.4: (1 - a s)/(s+1)^3. By Routh K = 8/(1 + 3 a) and w^2 = 3 - a K. */
  @ParameterizedTest
  @ValueSource(doubles = {0.1, 0.2, 0.5, 1, 2, 5})
  void aZeroInTheRightHalfPlaneTakesGainAway(double a) {
    double gain = 8 / (1 + 3 * a);
    check(TransferFunction.lags(1, 0, 1, 1, 1).withZeros(-a), gain, Math.sqrt(3 - a * gain));
  }

  /** A4.4: exp(-s)/(1 + T s): w T = tan(pi - w), hence K = -1/cos w. */
  @ParameterizedTest
  @ValueSource(doubles = {0.1, 0.2, 0.5, 1, 2, 5, 10})
  void oneLagOfAnyLength(double lagS) {
    UltimatePoint u = of(TransferFunction.lags(1, 1, lagS));
    assertEquals(Math.tan(Math.PI - u.radPerS()), lagS * u.radPerS(), 1e-7);
    assertEquals(-1 / Math.cos(u.radPerS()), u.gain(), 1e-7);
  }

  /** A4.4: exp(-s)/(1 + T s)^2: w T = cot(w/2), hence K = 1/sin(w/2)^2. */
  @ParameterizedTest
  @ValueSource(doubles = {0.1, 0.2, 0.5, 1, 2, 5, 10})
  void twoEqualLagsOfAnyLength(double lagS) {
    UltimatePoint u = of(TransferFunction.lags(1, 1, lagS, lagS));
    assertEquals(1 / Math.tan(u.radPerS() / 2), lagS * u.radPerS(), TOLERANCE);
    assertEquals(Math.pow(Math.sin(u.radPerS() / 2), -2), u.gain(), 1e-7);
  }

  /** exp(-s)/s: the phase is -90 degrees and the delay's, so w = pi/2 = K. */
  @Test
  void anIntegratorWithADelay() {
    check(TransferFunction.lags(1, 1).integrating(1), Math.PI / 2, Math.PI / 2);
  }

  @Test
  void aPlantThatStandsAnyGainHasNoUltimatePoint() {
    assertTrue(UltimatePoint.of(TransferFunction.lags(1, 0, 3)).isEmpty());
    assertTrue(UltimatePoint.of(TransferFunction.lags(1, 0, 3, 1)).isEmpty());
    assertTrue(UltimatePoint.of(TransferFunction.lags(1, 0)).isEmpty());
    assertTrue(UltimatePoint.of(TransferFunction.lags(1, 0, 1, 1).withZeros(2, 2)).isEmpty());
  }

  /** Two integrators and a lag begin below -180 degrees: no gain is small enough. */
  @Test
  void aPlantThatStandsNoGainHasNoUltimatePoint() {
    assertTrue(UltimatePoint.of(TransferFunction.lags(1, 0, 1).integrating(2)).isEmpty());
  }

  @Test
  void timesFromTheFloorToTheSkyAreNoPlant() {
    assertTrue(UltimatePoint.of(TransferFunction.lags(1, 1e-8, 1e8)).isEmpty());
    assertTrue(UltimatePoint.of(TransferFunction.lags(1, 1e-3, 1e8)).isPresent());
  }
}
