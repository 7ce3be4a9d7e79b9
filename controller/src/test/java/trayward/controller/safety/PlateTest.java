package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.event.TripCause;

/** SR-07, as far as built: the plate trips at 72 °C as a dry tray and at 75 °C as too hot. */
class PlateTest {

  private static Set<TripCause> causes(Bench bench) {
    return bench.between().latch().causes();
  }

  @ParameterizedTest
  @EnumSource(State.class)
  @Verifies(value = "SR-07", side = Side.WITHHOLDS)
  void seventyTwoDegreesOfThePlateTripAsADryTrayInEveryState(State state) {
    Bench bench = Bench.in(state);
    bench.given(c -> c.plate = Conditions.read(72)).scan();
    assertTrue(causes(bench).contains(TripCause.TRAY_DRY));
    assertFalse(causes(bench).contains(TripCause.PLATE_TOO_HOT));
    assertEquals(State.LOCKOUT, bench.state());
  }

  @ParameterizedTest
  @EnumSource(State.class)
  @Verifies(value = "SR-07", side = Side.WITHHOLDS)
  void seventyFiveDegreesOfThePlateTripInEveryState(State state) {
    Bench bench = Bench.in(state);
    bench.given(c -> c.plate = Conditions.read(75)).scan();
    assertTrue(causes(bench).contains(TripCause.PLATE_TOO_HOT));
    assertEquals(State.LOCKOUT, bench.state());
  }

  @ParameterizedTest
  @EnumSource(
      value = State.class,
      names = {"HEATING", "HOLDING"})
  @Verifies(value = "SR-07", side = Side.ALLOWS)
  void aPlateJustUnderSeventyTwoHeatsOn(State state) {
    Bench bench = Bench.in(state);
    bench.given(c -> c.plate = Conditions.read(71.99)).run(60);
    assertTrue(bench.last().permitted());
    assertEquals(state, bench.state());
  }

  @Test
  @Verifies(value = "SR-07", side = Side.WITHHOLDS)
  void aDryTrayThatTheModelFindsTripsAtOnce() {
    Bench bench = Bench.in(State.HEATING);
    bench.given(c -> c.findings = Set.of(TripCause.TRAY_DRY)).scan();
    assertEquals(TripCause.TRAY_DRY, bench.firstOut());
    bench.ask(Request.ACKNOWLEDGE).scan();
    bench.ask(Request.RESET).scan();
    assertEquals(Refusal.CAUSE_PRESENT, bench.last().refused().get(Request.RESET));
  }

  @Test
  @Verifies(value = "SR-07", side = Side.ALLOWS)
  void aPlateCooledBelowSeventyCanBeReset() {
    Bench bench = Bench.in(State.HEATING);
    bench.given(c -> c.plate = Conditions.read(72)).scan();
    bench.given(c -> c.plate = Conditions.read(70)).ask(Request.ACKNOWLEDGE).scan();
    bench.ask(Request.RESET).scan();
    assertEquals(Refusal.CAUSE_PRESENT, bench.last().refused().get(Request.RESET));
    bench.given(c -> c.plate = Conditions.read(69.9)).ask(Request.RESET).scan();
    assertEquals(State.OFF, bench.state());
  }

  @Test
  @Verifies(value = "SR-07", side = Side.ALLOWS)
  void whereNoPlateProbeIsFittedNothingOfItStandsInTheWay() {
    Bench bench = Bench.in(State.HEATING);
    bench.given(c -> c.plate = Temperature.NOT_FITTED).run(60);
    assertTrue(bench.last().permitted());
  }
}
