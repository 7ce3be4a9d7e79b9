package trayward.controller.regulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/**
 * Rows A2 of the check values. Ziegler and Nichols 1942, Trans. ASME 64:759; Tyreus and Luyben
 * 1992; Luyben and Luyben 1997: all read second-hand. A2.num is our own arithmetic, recomputed.
 */
class TuningRulesTest {

  private static final double NONE = Double.POSITIVE_INFINITY;
  private static final UltimatePoint U = new UltimatePoint(10, 60);

  /** A2.ZN.P, A2.ZN.PI, A2.ZN.PID: 0.5 Ku; 0.45 Ku, Pu/1.2; 0.6 Ku, Pu/2, Pu/8. */
  @Test
  void zieglerAndNicholsFromTheUltimateCycle() {
    same(new IsaPid(5, NONE, 0, NONE), ZieglerNichols.p(U));
    same(new IsaPid(4.5, 50, 0, NONE), ZieglerNichols.pi(U));
    same(new IsaPid(6, 30, 7.5, NONE), ZieglerNichols.pid(U));
  }

  /** A2.ZNstep: tau/(K theta); 0.9 of it, 3.33 theta; 1.2 of it, 2 theta, 0.5 theta. */
  @Test
  void zieglerAndNicholsFromTheReactionCurve() {
    ZieglerNichols.ReactionCurve curve = new ZieglerNichols.ReactionCurve(2, 100, 10);
    same(new IsaPid(5, NONE, 0, NONE), ZieglerNichols.p(curve));
    same(new IsaPid(4.5, 33.3, 0, NONE), ZieglerNichols.pi(curve));
    same(new IsaPid(6, 20, 5, NONE), ZieglerNichols.pid(curve));
  }

  /** A2.TL.PI: Ku/3.2, 2.2 Pu; A2.TL.PID: Ku/2.2, 2.2 Pu, Pu/6.3. */
  @Test
  void tyreusAndLuyben() {
    same(new IsaPid(3.125, 132, 0, NONE), TyreusLuyben.pi(U));
    same(new IsaPid(10 / 2.2, 132, 60 / 6.3, NONE), TyreusLuyben.pid(U));
  }

  /** A2.num: 1/(s+1)^3. */
  @Test
  void threeEqualLagsTunedFromTheirUltimatePoint() {
    UltimatePoint u = UltimatePoint.of(TransferFunction.lags(1, 0, 1, 1, 1)).orElseThrow();
    same(new IsaPid(4.8, 1.813799364, 0.453449841, NONE), ZieglerNichols.pid(u));
  }

  /**
   * What the rules are known for: the first lively, the second calmer. On the reference tray, which
   * nearly integrates, the first has next to no margin left, and the second less than SIMC. Own
   * arithmetic, twice.
   */
  @Test
  void onTheReferenceTrayTheFirstIsLivelyAndTheSecondCalmer() {
    TransferFunction tray = TransferFunction.lags(41.6044, 3.75, 905.576, 46.943, 5);
    UltimatePoint u = UltimatePoint.of(tray).orElseThrow();
    LoopRobustness lively = LoopRobustness.of(tray.times(ZieglerNichols.pi(u)), 1e-6, 10);
    LoopRobustness calm = LoopRobustness.of(tray.times(TyreusLuyben.pi(u)), 1e-6, 10);
    assertTrue(lively.stable());
    assertEquals(22.75, lively.ms(), 0.01);
    assertEquals(1.18, lively.gainMargin(), 0.01);
    assertTrue(calm.stable());
    assertEquals(3.117, calm.ms(), 0.01);
  }

  /** At half of the ultimate gain the gain margin is 2; beyond it the loop is not stable. */
  @Test
  void theUltimateGainIsWhereTheLoopCeasesToBeStable() {
    TransferFunction plant = TransferFunction.lags(1, 2, 10);
    UltimatePoint u = UltimatePoint.of(plant).orElseThrow();
    LoopRobustness half = LoopRobustness.of(plant.times(ZieglerNichols.p(u)), 1e-4, 1e3);
    assertTrue(half.stable());
    assertEquals(2, half.gainMargin(), 1e-9);
    LoopRobustness beyond = LoopRobustness.of(plant.times(IsaPid.p(1.25 * u.gain())), 1e-4, 1e3);
    assertFalse(beyond.stable());
    assertEquals(0.8, beyond.gainMargin(), 1e-9);
    assertEquals(0, beyond.delayMarginS());
    assertTrue(beyond.phaseMarginDeg() < 0);
  }

  private static void same(IsaPid expected, IsaPid actual) {
    assertEquals(expected.gain(), actual.gain(), 1e-8);
    assertEquals(expected.integralS(), actual.integralS(), 1e-8);
    assertEquals(expected.derivativeS(), actual.derivativeS(), 1e-8);
    assertEquals(expected.filter(), actual.filter());
  }
}
