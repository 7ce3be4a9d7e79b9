package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.event.TripCause;
import trayward.controller.keep.KeepLoad;
import trayward.controller.keep.KeepRecord;

/** Properties over seeded random walks of the inputs, and the way out of wherever they end. */
class RandomWalkTest {

  private static final int WALKS = 300;
  private static final int SCANS = 2000;

  @Test
  @Verifies(value = "SR-01", side = Side.WITHHOLDS)
  @Verifies(value = "SR-12", side = Side.WITHHOLDS)
  @Verifies(value = "SR-13", side = Side.WITHHOLDS)
  void whateverTheInputsDoHeatNeedsEveryPermissiveAndStatesFollowEachOtherByTheRules() {
    int walksWithHeat = 0;
    int lockouts = 0;
    for (int seed = 0; seed < WALKS; seed++) {
      Bench bench = Bench.powerUp();
      RandomWalk walk = new RandomWalk(seed, bench.now);
      Oracle oracle = new Oracle(bench.state());
      for (int i = 1; i <= SCANS; i++) {
        walk.step(bench.now);
        bench.scan();
        oracle.judge(bench.found(), bench.last(), "seed " + seed + " scan " + i);
      }
      walksWithHeat += oracle.heated > 0 ? 1 : 0;
      lockouts += oracle.lockouts;
    }
    assertTrue(walksWithHeat > WALKS / 4, "hardly a walk reached heat: " + walksWithHeat);
    assertTrue(lockouts > WALKS / 4, "hardly a walk tripped: " + lockouts);
  }

  /** Healthy inputs and what a person would do; true once it is OFF and can be started. */
  private static boolean leadsOut(Bench bench) {
    bench.air(null).bath(25).stopCircuit(true).given(c -> c.setC = 25);
    bench.given(c -> c.lines = true).given(c -> c.store = true).given(c -> c.atTray = true);
    bench.given(c -> c.second = Temperature.NOT_FITTED).given(c -> c.plate = Conditions.read(25));
    bench.given(c -> c.hostSilentMs = 0).given(c -> c.findings = java.util.Set.of());
    bench.ask(Request.STOP).run(20);
    if (bench.state() == State.LOCKOUT) {
      bench.ask(Request.ACKNOWLEDGE).run(20);
      bench.ask(Request.RESET).scan();
    }
    bench.run(400); // the after-run time and more
    return bench.state() == State.OFF;
  }

  @Test
  @Verifies(value = "SR-12", side = Side.ALLOWS)
  @Verifies(value = "SR-13", side = Side.ALLOWS)
  void fromWhereverAWalkEndsHealthyInputsAndAPersonLeadBackToHeat() {
    for (int seed = 0; seed < 200; seed++) {
      Bench bench = Bench.powerUp();
      RandomWalk walk = new RandomWalk(seed, bench.now);
      for (int i = 0; i < 300 + 7 * seed; i++) {
        walk.step(bench.now);
        bench.scan();
      }
      String where = "seed " + seed + " ended in " + bench.state() + " " + bench.firstOut();
      assertTrue(leadsOut(bench), where + " and is in " + bench.state());
      bench.given(c -> c.setC = 40).ask(Request.START).until(State.HEATING);
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {20, 45})
  @Verifies(value = "SR-12", side = Side.ALLOWS)
  void everyCauseOnRecordCanBeClearedColdOrHotOnceAllIsWell(double bathC) {
    for (TripCause cause : TripCause.values()) {
      KeepRecord record =
          new KeepRecord(java.util.Set.of(cause), java.util.Optional.of(cause), false, true);
      Bench bench = Bench.powerUp(new KeepLoad.Loaded(record)).bath(bathC);
      bench.run(20);
      bench.ask(Request.ACKNOWLEDGE).run(20);
      bench.ask(Request.RESET).scan();
      assertEquals(State.OFF, bench.state(), cause.name());
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"AIR_LOST", "AIR_NOT_PROVEN"})
  @Verifies(value = "SR-12", side = Side.ALLOWS)
  void aDeadFanOverAHotBathIsResetAfterStopWasHeld(TripCause cause) {
    KeepRecord record =
        new KeepRecord(java.util.Set.of(cause), java.util.Optional.of(cause), false, true);
    Bench bench = Bench.powerUp(new KeepLoad.Loaded(record)).bath(45).air(Proof.ABSENT);
    bench.run(20);
    bench.ask(Request.ACKNOWLEDGE).scan();
    bench.ask(Request.RESET).scan();
    assertEquals(Refusal.CAUSE_PRESENT, bench.last().refused().get(Request.RESET));
    bench.stopCircuit(false).run(5.1);
    bench.stopCircuit(true).ask(Request.RESET).scan();
    assertEquals(State.OFF, bench.state());
  }
}
