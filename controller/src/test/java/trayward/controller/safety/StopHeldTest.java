package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.keep.KeepLoad;

/** SR-21: the stop button held 5 s in lockout turns the fan off; nothing else does over a bath. */
class StopHeldTest {

  private static Bench hotLockout() {
    Bench bench = Bench.in(State.LOCKOUT).bath(45);
    bench.run(1);
    assertTrue(bench.last().fan());
    return bench;
  }

  @Test
  @Verifies(value = "SR-21", side = Side.WITHHOLDS)
  void heldForFiveSecondsItTurnsTheFanOffUntilTheReset() {
    Bench bench = hotLockout().stopCircuit(false);
    assertTrue(bench.run(4.9).fan());
    assertFalse(bench.scan().fan());
    assertFalse(bench.stopCircuit(true).run(600).fan());
  }

  @Test
  @Verifies(value = "SR-21", side = Side.ALLOWS)
  void heldForLessItDoesNotAndPressesDoNotAddUp() {
    Bench bench = hotLockout();
    for (int i = 0; i < 5; i++) {
      bench.stopCircuit(false).run(4.9);
      bench.stopCircuit(true).run(0.1);
      assertTrue(bench.last().fan());
    }
  }

  @Test
  @Verifies(value = "SR-21", side = Side.ALLOWS)
  void aWireAlreadyBrokenLeavesTheFanOn() {
    Bench bench = Bench.in(State.HEATING).bath(38).stopCircuit(false);
    bench.run(1);
    assertTrue(bench.late(1000).scan().fan());
    assertEquals(State.LOCKOUT, bench.state());
    assertTrue(bench.run(60).fan());
  }

  @Test
  @Verifies(value = "SR-21", side = Side.ALLOWS)
  void aWireBrokenAtPowerUpInLockoutLeavesTheFanOn() {
    Bench before = hotLockout();
    Bench back = Bench.powerUp(new KeepLoad.Loaded(before.between().keep()));
    back.bath(45).stopCircuit(false).run(60);
    assertTrue(back.last().fan());
  }

  @Test
  @Verifies(value = "SR-21", side = Side.ALLOWS)
  void inputsThatHaveGoneDeadLeaveTheFanOnAlsoWhenTheyComeBackWithAnOpenCircuit() {
    Bench bench = hotLockout().stopCircuit(false).given(c -> c.lines = false);
    assertTrue(bench.run(60).fan());
    bench.given(c -> c.lines = true);
    assertTrue(bench.run(60).fan());
  }

  @ParameterizedTest
  @EnumSource(
      value = State.class,
      names = {"HEATING", "HOLDING", "AFTER_RUN"})
  @Verifies(value = "SR-21", side = Side.ALLOWS)
  void outsideOfALockoutAHeldStopLeavesTheFanOnOverAWarmBath(State state) {
    Bench bench = Bench.in(state).bath(38).stopCircuit(false);
    assertTrue(bench.run(60).fan());
    assertEquals(State.AFTER_RUN, bench.state());
  }

  @Test
  @Verifies(value = "SR-21", side = Side.WITHHOLDS)
  void aSeizedFanThatWasTurnedOffLetsThePersonResetAndTheFanIsCommandedAgain() {
    Bench bench = hotLockout().stopCircuit(false);
    bench.run(5);
    bench.stopCircuit(true).ask(Request.ACKNOWLEDGE).scan();
    bench.ask(Request.RESET).scan();
    assertEquals(State.OFF, bench.state());
    assertTrue(bench.run(7).fan(), "the bath is still hot");
    assertFalse(bench.last().permitted());
  }
}
