package trayward.controller.regulate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/**
 * Rows A6.1 to A6.4 of the check values: what SIMC settings give in time. Skogestad 2003, J.
 * Process Control 13:291-309, prints 2.17 theta (A6.1) and 16 k' theta^2 (A6.4): from memory; the
 * rest is our own arithmetic, recomputed. All loops are simulated here.
 */
class StepAnswerTest {

  private static final double NONE = Double.POSITIVE_INFINITY;

  /** A6.1: L = 0.5 exp(-theta s)/(theta s), theta = 1 s. */
  @Test
  void aNewSetPointOnTheSimcLoopCostsTwoDelays() {
    DelayedLoop.Answer a = new DelayedLoop(1, NONE, 1, 0.5, NONE).step(1, 0, 1000, 60);
    assertEquals(0, a.lastError(), 1e-9);
    assertEquals(2.16869, a.iae(), 1e-4);
    assertEquals(0.040520, a.peak() - 1, 1e-4);
  }

  /** A6.2: k = 1, tau = 10 s, theta = 1 s; by the rule Kc = 5, tauI = 8 s. */
  @Test
  void aNewSetPointOnOneLagWithDelay() {
    DelayedLoop.Answer a = tuned().step(1, 0, 1000, 150);
    assertEquals(0, a.lastError(), 1e-6);
    assertEquals(2.500, a.iae(), 0.01);
    assertEquals(10.61, a.totalVariation(), 0.01);
    assertEquals(1.0813, a.peak(), 0.01);
  }

  /** A6.3: the same under a unit load; the error keeps its sign, so its integral is tauI/Kc. */
  @Test
  void aLoadOnOneLagWithDelay() {
    DelayedLoop.Answer a = tuned().step(0, 1, 1000, 150);
    assertEquals(0, a.lastError(), 1e-6);
    assertEquals(8.0 / 5, a.iae(), 0.005);
    assertEquals(1.163, a.totalVariation(), 0.005);
    assertEquals(0.1689, a.peak(), 0.005);
  }

  /** A6.4: k' = 1, theta = 1 s; by the rule Kc = 0.5, tauI = 8 s. */
  @Test
  void aLoadOnAnIntegratorWithDelay() {
    DelayedLoop.Answer a = new DelayedLoop(1, NONE, 1, 0.5, 8).step(0, 1, 1000, 300);
    assertEquals(0, a.lastError(), 1e-6);
    assertEquals(16.000, a.iae(), 0.01);
    assertEquals(1.555, a.totalVariation(), 0.01);
    assertEquals(1.962, a.peak(), 0.01);
  }

  private static DelayedLoop tuned() {
    Simc.Series series = Simc.tune(1, 10, 0, 1, 1);
    assertEquals(new Simc.Series(5, 8, 0), series);
    return new DelayedLoop(1, 10, 1, series.gain(), series.integralS());
  }
}
