package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.event.TripCause;
import trayward.controller.event.WithheldReason;

/** SR-06: 55 °C always; set + 5 K once arrived; no heat above set + 0.5 K. */
class BathTooHotTest {

  private static boolean latched(Bench bench) {
    return bench.between().latch().causes().contains(TripCause.BATH_TOO_HOT);
  }

  @ParameterizedTest
  @EnumSource(State.class)
  @Verifies(value = "SR-06", side = Side.WITHHOLDS)
  void fiftyFiveDegreesTripInEveryState(State state) {
    Bench bench = Bench.in(state);
    bench.bath(55).scan();
    assertTrue(latched(bench));
    assertEquals(State.LOCKOUT, bench.state());
    assertFalse(bench.last().permitted());
  }

  @ParameterizedTest
  @EnumSource(State.class)
  @Verifies(value = "SR-06", side = Side.ALLOWS)
  void justUnderFiftyFiveTripsInNoStateWhileTheBathHasNotArrivedAtThisSet(State state) {
    Bench bench = Bench.in(state);
    bench.given(c -> c.setC = 50).bath(54.99).run(1);
    assertFalse(latched(bench));
  }

  @Test
  @Verifies(value = "SR-06", side = Side.WITHHOLDS)
  void theSecondBathProbeTripsToo() {
    Bench bench = Bench.in(State.HEATING);
    bench.given(c -> c.second = Conditions.read(55)).scan();
    assertEquals(TripCause.BATH_TOO_HOT, bench.firstOut());
  }

  @ParameterizedTest
  @ValueSource(doubles = {39, 40, 41})
  @Verifies(value = "SR-06", side = Side.WITHHOLDS)
  void onceWithinOneKelvinOfSetFiveAboveItTrips(double arrivedC) {
    Bench bench = Bench.in(State.HEATING);
    bench.bath(arrivedC).scan();
    bench.bath(44.99).scan();
    assertFalse(latched(bench));
    bench.bath(45).scan();
    assertEquals(TripCause.BATH_TOO_HOT, bench.firstOut());
  }

  @Test
  @Verifies(value = "SR-06", side = Side.ALLOWS)
  void beforeTheBathHasArrivedFiveAboveSetOnlyWithholds() {
    Bench bench = Bench.in(State.HEATING);
    bench.bath(38.99).scan();
    bench.bath(50).run(10);
    assertFalse(latched(bench));
    assertEquals(Set.of(WithheldReason.ABOVE_SET), bench.withheld());
  }

  @Test
  @Verifies(value = "SR-06", side = Side.ALLOWS)
  void anewSetTemperatureMustBeArrivedAtAnew() {
    Bench bench = Bench.in(State.HOLDING);
    bench.given(c -> c.setC = 30).run(60); // ten above the new set: lowered on purpose
    assertFalse(latched(bench));
    bench.bath(31).scan();
    bench.bath(35).scan();
    assertEquals(TripCause.BATH_TOO_HOT, bench.firstOut());
  }

  @Test
  @Verifies(value = "SR-06", side = Side.WITHHOLDS)
  void heatThatGoesOnArrivingInAfterRunTripsAtSetAndFive() {
    Bench bench = Bench.in(State.HOLDING);
    bench.ask(Request.STOP).scan();
    assertEquals(State.AFTER_RUN, bench.state());
    bench.bath(44.99).scan();
    assertEquals(State.AFTER_RUN, bench.state());
    bench.bath(45).scan();
    assertEquals(TripCause.BATH_TOO_HOT, bench.firstOut());
  }

  @Test
  @Verifies(value = "SR-06", side = Side.WITHHOLDS)
  void noHeatAboveSetAndHalfAKelvin() {
    Bench bench = Bench.in(State.HOLDING);
    bench.bath(40.51).scan();
    assertFalse(bench.last().permitted());
    assertEquals(Set.of(WithheldReason.ABOVE_SET), bench.withheld());
  }

  @Test
  @Verifies(value = "SR-06", side = Side.ALLOWS)
  void heatAtSetAndHalfAKelvinExactly() {
    Bench bench = Bench.in(State.HOLDING);
    bench.bath(40.5).scan();
    assertTrue(bench.last().permitted());
    assertEquals(State.HOLDING, bench.state());
  }

  @Test
  @Verifies(value = "SR-06", side = Side.WITHHOLDS)
  void theHigherOfTwoProbesDecidesWhetherTheBathIsAboveSet() {
    Bench bench = Bench.in(State.HOLDING);
    bench.bath(39.5).given(c -> c.second = Conditions.read(40.6)).scan();
    assertEquals(Set.of(WithheldReason.ABOVE_SET), bench.withheld());
    bench.given(c -> c.second = Conditions.bad(c.second)).scan();
    assertFalse(bench.last().permitted(), "a bad reading does not unsay the last good one");
  }

  @Test
  @Verifies(value = "SR-06", side = Side.ALLOWS)
  void onceCooledItCanBeResetAndChatterAtTheLimitCannot() {
    Bench bench = Bench.in(State.OFF);
    bench.bath(55).scan();
    bench.bath(54).ask(Request.ACKNOWLEDGE).scan();
    bench.ask(Request.RESET).scan();
    assertEquals(Refusal.CAUSE_PRESENT, bench.last().refused().get(Request.RESET));
    bench.bath(53).ask(Request.RESET).scan();
    assertEquals(Refusal.CAUSE_PRESENT, bench.last().refused().get(Request.RESET));
    bench.bath(52.9).ask(Request.RESET).scan();
    assertEquals(State.OFF, bench.state());
    assertNotEquals(TripCause.BATH_TOO_HOT, bench.firstOut());
  }

  @Test
  @Verifies(value = "SR-06", side = Side.ALLOWS)
  void afterATripAboveSetItCanBeResetTwoKelvinUnderTheLimit() {
    Bench bench = Bench.in(State.HOLDING);
    bench.bath(45).scan();
    bench.bath(43).ask(Request.ACKNOWLEDGE).scan();
    bench.ask(Request.RESET).scan();
    assertEquals(Refusal.CAUSE_PRESENT, bench.last().refused().get(Request.RESET));
    bench.bath(42.99).ask(Request.RESET).scan();
    assertEquals(State.OFF, bench.state());
  }
}
