package trayward.controller.regulate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Rows A1.E1 to A1.E10 of the check values, tc = theta: Skogestad 2003, J. Process Control
 * 13:291-309. The examples are from memory of the source with their values recomputed, except E2,
 * which was read (secondary) and recomputed. The PI rule was read in the author's note to Ind. Eng.
 * Chem. Res. 45 (2006) 7817; tauD = tau2, the integrating form and the ideal form are from memory.
 */
class SimcTest {

  private static final double RELATIVE = 1e-6;

  /** A process that integrates, k'/s, is the limit of a long time constant with k/tau1 = k'. */
  private static final double LONG_S = 1e12;

  @ParameterizedTest(name = "A1.{0}")
  @CsvSource({
    "E1.PI, 1, 1.1, 0.1, 5.5, 0.8",
    "E2.PI, 1, 2.5, 1.47, 0.850340, 2.5",
    "E3.PI, 1.5, 1.05, 0.15, 2.333333, 1.05",
    "E4.PI, 1, 1.5, 2.5, 0.3, 1.5",
    "E5.PI, 1, 1.1, 0.148, 3.716216, 1.1",
    "E7.PI, 1, 1.5, 3.5, 0.214286, 1.5",
    "E9.PI, 1, 1.5, 1.5, 0.5, 1.5",
    "E10.PI, 1, 21, 2, 5.25, 16"
  })
  void aPiFollowsTheRule(
      String row, double gain, double slowS, double delayS, double kc, double tauI) {
    Simc.Series series = Simc.tune(gain, slowS, 0, delayS, delayS);
    near(kc, series.gain());
    near(tauI, series.integralS());
    assertEquals(0, series.derivativeS());
    assertEquals(series, series.ideal());
  }

  @ParameterizedTest(name = "A1.{0}")
  @CsvSource({
    "E2.PID, 1, 2, 1.2, 0.77, 1.298701, 2, 2.077922, 3.2, 0.75",
    "E3.PID, 1.5, 1, 0.15, 0.05, 6.666667, 0.4, 9.166667, 0.55, 0.109091",
    "E4.PID, 1, 1.5, 1, 1.5, 0.5, 1.5, 0.833333, 2.5, 0.6",
    "E5.PID, 1, 1, 0.22, 0.028, 17.857143, 0.224, 35.395408, 0.444, 0.110991",
    "E7.PID, 1, 1.5, 1, 2.5, 0.3, 1.5, 0.5, 2.5, 0.6",
    "E9.PID, 1, 1, 1, 1, 0.5, 1, 1, 2, 0.5",
    "E10.PID, 1, 20, 2, 1, 10, 8, 12.5, 10, 1.6"
  })
  void aPidFollowsTheRuleInBothForms(
      String row,
      double gain,
      double slowS,
      double fastS,
      double delayS,
      double kc,
      double tauI,
      double k,
      double ti,
      double td) {
    Simc.Series series = Simc.tune(gain, slowS, fastS, delayS, delayS);
    near(kc, series.gain());
    near(tauI, series.integralS());
    assertEquals(fastS, series.derivativeS());
    near(k, series.ideal().gain());
    near(ti, series.ideal().integralS());
    near(td, series.ideal().derivativeS());
  }

  /** A1.E8.PI: k' = 1, theta = 1.5. */
  @Test
  void aPiForAnIntegratingProcessIsTheLimitOfALongTimeConstant() {
    Simc.Series series = Simc.tune(LONG_S, LONG_S, 0, 1.5, 1.5);
    near(0.333333, series.gain());
    near(12, series.integralS());
  }

  /** A1.E8.PID: k' = 1, tau2 = 1.5, theta = 0.5. */
  @Test
  void aPidForAnIntegratingProcessIsTheLimitOfALongTimeConstant() {
    Simc.Series series = Simc.tune(LONG_S, LONG_S, 1.5, 0.5, 0.5);
    near(1, series.gain());
    near(4, series.integralS());
    near(1.375, series.ideal().gain());
    near(5.5, series.ideal().integralS());
    near(1.090909, series.ideal().derivativeS());
  }

  /**
   * A1.0 with tc apart from theta: Kc = tau1/(k (tc + theta)), tauI = min(tau1, 4 (tc + theta)).
   */
  @Test
  void theClosedLoopTimeAddsToTheDelay() {
    assertEquals(new Simc.Series(100 / (2.0 * 20), 80, 7), Simc.tune(2, 100, 7, 5, 15));
    assertEquals(new Simc.Series(60 / (2.0 * 20), 60, 7), Simc.tune(2, 60, 7, 5, 15));
  }

  /** The rows print six decimals. */
  private static void near(double expected, double actual) {
    assertEquals(expected, actual, RELATIVE * Math.abs(expected) + 5e-7);
  }
}
