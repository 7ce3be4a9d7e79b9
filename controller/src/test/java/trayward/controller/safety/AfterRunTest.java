package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.event.TripCause;
import trayward.controller.keep.KeepLoad;

/** SR-20: after heat the fan runs on until the bath is below 30 °C and then for 300 s. */
class AfterRunTest {

  private static Bench stoppedHot() {
    Bench bench = Bench.in(State.HOLDING);
    bench.ask(Request.STOP).scan();
    return bench;
  }

  @ParameterizedTest
  @ValueSource(doubles = {40, 30})
  @Verifies(value = "SR-20", side = Side.WITHHOLDS)
  void theFanRunsOnForHoursWhileTheBathIsNotBelowThirty(double bathC) {
    Bench bench = stoppedHot().bath(bathC);
    assertTrue(bench.run(3 * 3600).fan());
    assertEquals(State.AFTER_RUN, bench.state());
  }

  @Test
  @Verifies(value = "SR-20", side = Side.WITHHOLDS)
  void belowThirtyTheFanRunsForTheWholeAfterRunTime() {
    Bench bench = stoppedHot();
    bench.run(60);
    bench.bath(29.9).run(299.9);
    assertTrue(bench.last().fan());
    assertEquals(State.AFTER_RUN, bench.state());
  }

  @Test
  @Verifies(value = "SR-20", side = Side.ALLOWS)
  void afterThatTheFanStops() {
    Bench bench = stoppedHot();
    bench.run(60);
    bench.bath(29.4).run(300);
    assertEquals(State.OFF, bench.state());
    assertFalse(bench.last().fan());
    assertFalse(bench.between().keep().heatInProgress());
  }

  @Test
  @Verifies(value = "SR-20", side = Side.WITHHOLDS)
  void aBathThatWarmsAgainBeginsTheTimeAnew() {
    Bench bench = stoppedHot().bath(29);
    bench.run(250);
    bench.bath(30.1).scan();
    bench.bath(29).run(299.9);
    assertEquals(State.AFTER_RUN, bench.state());
    bench.scan();
    assertEquals(State.OFF, bench.state());
  }

  @Test
  @Verifies(value = "SR-20", side = Side.WITHHOLDS)
  void aBathHeatedBelowThirtyGetsItsAfterRunTimeToo() {
    Bench bench = Bench.in(State.OFF).given(c -> c.setC = 25);
    bench.ask(Request.START).until(State.HEATING).run(600);
    bench.ask(Request.STOP).run(299.9);
    assertTrue(bench.last().fan());
    assertEquals(State.AFTER_RUN, bench.state());
    bench.run(0.3);
    assertEquals(State.OFF, bench.state());
  }

  @Test
  @Verifies(value = "SR-20", side = Side.WITHHOLDS)
  void aTripInAWarmUpBelowThirtyLeavesTheFanOnForTheAfterRunTime() {
    Bench bench = Bench.in(State.OFF).given(c -> c.setC = 25);
    bench.ask(Request.START).until(State.HEATING).run(600);
    bench.given(c -> c.findings = Set.of(TripCause.HEAT_NOT_ARRIVING)).scan();
    assertEquals(State.LOCKOUT, bench.state());
    assertTrue(bench.run(299).fan());
    assertFalse(bench.run(2).fan());
  }

  @Test
  @Verifies(value = "SR-20", side = Side.WITHHOLDS)
  void aResetSoonAfterHeatDoesNotEndTheAfterRun() {
    Bench bench = Bench.in(State.HEATING);
    bench.late(1000).scan();
    bench.ask(Request.ACKNOWLEDGE).scan();
    bench.ask(Request.RESET).scan();
    assertEquals(State.OFF, bench.state());
    assertTrue(bench.run(290).fan());
    assertFalse(bench.run(20).fan());
  }

  @Test
  @Verifies(value = "SR-20", side = Side.WITHHOLDS)
  void powerLostAfterHeatDoesNotEndTheAfterRun() {
    Bench before = Bench.in(State.AFTER_RUN);
    Bench back = Bench.powerUp(new KeepLoad.Loaded(before.between().keep()));
    assertTrue(back.run(299).fan(), "on since the look, though the bath is cool");
    assertFalse(back.run(10).fan());
  }

  @Test
  @Verifies(value = "SR-20", side = Side.ALLOWS)
  void aRunStoppedBeforeAnyHeatOverAColdBathNeedsNoAfterRun() {
    Bench bench = Bench.in(State.PURGING);
    bench.ask(Request.STOP).scan();
    assertEquals(State.OFF, bench.state());
    assertFalse(bench.last().fan());
  }

  @Test
  @Verifies(value = "SR-20", side = Side.ALLOWS)
  void onlyHeatAndItsEndBeginTheTimeOfACoolBathAnew() {
    Bench bench = Bench.in(State.OFF);
    bench.run(60);
    int cool = bench.between().run().coolMs();
    bench.ask(Request.START).scan();
    assertEquals(State.PROVING, bench.state());
    assertEquals(cool + 100, bench.between().run().coolMs());
    bench.until(State.PURGING);
    assertTrue(bench.between().run().coolMs() > cool);
  }
}
