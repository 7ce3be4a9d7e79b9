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

/** SR-21: the fan is commanded on whenever the bath is above 30 °C or nobody knows. */
class FanOnTest {

  @ParameterizedTest
  @EnumSource(State.class)
  @Verifies(value = "SR-21", side = Side.WITHHOLDS)
  void aBathAboveThirtyHasTheFanOnInEveryState(State state) {
    Bench bench = Bench.in(state).given(c -> c.setC = 50);
    bench.bath(30.1).scan();
    assertTrue(bench.last().fan(), "in the same scan");
    assertTrue(bench.run(600).fan());
  }

  @ParameterizedTest
  @EnumSource(State.class)
  @Verifies(value = "SR-21", side = Side.WITHHOLDS)
  void aBathNobodyKnowsHasTheFanOnInEveryState(State state) {
    Bench bench = Bench.in(state).bathBad();
    bench.run(3);
    assertTrue(bench.last().fan());
    assertTrue(bench.run(600).fan());
  }

  @Test
  @Verifies(value = "SR-21", side = Side.WITHHOLDS)
  void aSecondBathProbeThatIsBadOrWarmHasTheFanOn() {
    Bench bench = Bench.in(State.OFF);
    bench.given(c -> c.second = Conditions.read(30.1)).scan();
    assertTrue(bench.last().fan());
    Bench other = Bench.in(State.OFF);
    other.given(c -> c.second = new Temperature(true, false, Double.NaN)).scan();
    assertTrue(other.last().fan());
  }

  @Test
  @Verifies(value = "SR-21", side = Side.WITHHOLDS)
  void aLockoutThatPowerCameBackToHasTheFanOnAfterTheLook() {
    Bench before = Bench.in(State.LOCKOUT);
    before.ask(Request.ACKNOWLEDGE).scan();
    Bench back = Bench.powerUp(new KeepLoad.Loaded(before.between().keep())).bath(45);
    assertFalse(back.run(5.9).fan(), "the look of SR-03");
    assertTrue(back.scan().fan());
    assertTrue(back.run(600).fan());
  }

  @Test
  @Verifies(value = "SR-21", side = Side.WITHHOLDS)
  void aFanThatDoesNotRunStaysCommandedOverAWarmBath() {
    Bench bench = Bench.in(State.LOCKOUT).bath(45);
    bench.ask(Request.ACKNOWLEDGE).scan();
    assertTrue(bench.run(3600).fan());
  }

  @Test
  @Verifies(value = "SR-21", side = Side.ALLOWS)
  void aColdKnownBathLeavesTheFanAtRest() {
    Bench bench = Bench.in(State.OFF).bath(30);
    assertFalse(bench.run(600).fan());
  }

  @Test
  @Verifies(value = "SR-21", side = Side.ALLOWS)
  void aBathThatHasCooledAtRestLetsTheFanStopWithoutChatter() {
    Bench bench = Bench.in(State.OFF).bath(31);
    assertTrue(bench.run(10).fan());
    assertTrue(bench.bath(29.6).run(10).fan(), "half a kelvin of dead band");
    assertFalse(bench.bath(29.4).run(10).fan());
    assertFalse(bench.bath(29.9).run(10).fan());
  }

  @Test
  @Verifies(value = "SR-21", side = Side.ALLOWS)
  void aLockoutOverAColdBathThatNobodyHeatedMayRest() {
    Bench bench = Bench.in(State.OFF);
    bench.late(1000).scan();
    assertEquals(State.LOCKOUT, bench.state());
    assertFalse(bench.run(60).fan());
  }
}
