package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.event.TripCause;

/** SR-08: one bad reading is ridden out, 3 s trip. SR-09: 2.0 K apart for 60 s trip. */
class ProbeTrustTest {

  private static Bench spoil(Bench bench, String probe) {
    switch (probe) {
      case "bath" -> bench.bathBad();
      case "second" -> bench.given(c -> c.second = Conditions.bad(c.second));
      default -> bench.given(c -> c.plate = Conditions.bad(c.plate));
    }
    return bench;
  }

  private static Bench heatingWithAll() {
    Bench bench = Bench.in(State.HEATING).given(c -> c.second = Conditions.read(20));
    bench.scan();
    return bench;
  }

  private static Bench mend(Bench bench) {
    return bench
        .bath(20)
        .given(c -> c.second = Conditions.read(20))
        .given(c -> c.plate = Conditions.read(20));
  }

  @ParameterizedTest
  @ValueSource(strings = {"bath", "second", "plate"})
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void threeSecondsWithoutABelievableReadingTrip(String probe) {
    Bench bench = spoil(heatingWithAll(), probe);
    bench.run(2.9);
    assertNull(bench.firstOut());
    bench.scan();
    assertEquals(
        probe.equals("plate") ? TripCause.PLATE_PROBE_BAD : TripCause.BATH_PROBE_BAD,
        bench.firstOut());
    assertFalse(bench.last().permitted());
    assertTrue(bench.last().fan());
  }

  @ParameterizedTest
  @ValueSource(strings = {"bath", "second", "plate"})
  @Verifies(value = "SR-08", side = Side.ALLOWS)
  void oneBadReadingOfASecondIsRiddenOutWithHeatOn(String probe) {
    Bench bench = heatingWithAll();
    for (int i = 0; i < 10; i++) {
      spoil(bench, probe).run(1);
      assertTrue(bench.last().permitted());
      mend(bench).run(1);
    }
    assertNull(bench.firstOut());
  }

  @ParameterizedTest
  @ValueSource(strings = {"bath", "second", "plate"})
  @Verifies(value = "SR-08", side = Side.ALLOWS)
  void aProbeThatReadsAgainCanBeReset(String probe) {
    Bench bench = spoil(heatingWithAll(), probe);
    bench.run(3);
    bench.ask(Request.ACKNOWLEDGE).scan();
    bench.ask(Request.RESET).scan();
    assertEquals(Refusal.CAUSE_PRESENT, bench.last().refused().get(Request.RESET));
    mend(bench).ask(Request.RESET).scan();
    assertEquals(State.OFF, bench.state());
  }

  @ParameterizedTest
  @EnumSource(
      value = State.class,
      names = {"OFF", "LOCKOUT"},
      mode = EnumSource.Mode.EXCLUDE)
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void aBadBathProbeTripsInEveryStateOfARunAndAfterIt(State state) {
    Bench bench = Bench.in(state).bathBad();
    bench.run(3);
    assertEquals(TripCause.BATH_PROBE_BAD, bench.firstOut());
  }

  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void withoutABathProbeNothingCanBeStarted() {
    Bench bench = Bench.powerUp().bath(Double.NaN).bathBad();
    bench.run(10);
    bench.ask(Request.START).scan();
    assertEquals(Refusal.BATH_PROBE_BAD, bench.last().refused().get(Request.START));
    assertEquals(State.OFF, bench.state());
  }

  private static Bench apart(double kelvin) {
    return Bench.in(State.HEATING).given(c -> c.second = Conditions.read(20 + kelvin));
  }

  @ParameterizedTest
  @ValueSource(doubles = {2.01, -2.01})
  @Verifies(value = "SR-09", side = Side.WITHHOLDS)
  void bathProbesMoreThanTwoKelvinApartForAMinuteTrip(double kelvin) {
    Bench bench = apart(kelvin);
    bench.run(59.9);
    assertNull(bench.firstOut());
    bench.scan();
    assertEquals(TripCause.PROBES_DISAGREE, bench.firstOut());
  }

  @ParameterizedTest
  @ValueSource(doubles = {2.0, -2.0})
  @Verifies(value = "SR-09", side = Side.ALLOWS)
  void twoKelvinExactlyAreBorneForEver(double kelvin) {
    Bench bench = apart(kelvin);
    bench.run(300);
    assertNull(bench.firstOut());
    assertTrue(bench.last().permitted());
  }

  @Test
  @Verifies(value = "SR-09", side = Side.ALLOWS)
  void aPourThatMixesWithinAMinuteTripsNothing() {
    Bench bench = apart(5);
    bench.run(59);
    bench.given(c -> c.second = Conditions.read(20.5)).run(1);
    bench.given(c -> c.second = Conditions.read(25)).run(59);
    assertNull(bench.firstOut());
  }

  @Test
  @Verifies(value = "SR-09", side = Side.WITHHOLDS)
  void oneBadReadingNowAndThenDoesNotHideThatTheProbesDisagree() {
    Bench bench = apart(3);
    for (int i = 0; i < 3; i++) {
      bench.run(29);
      spoil(bench, "second").run(1);
      bench.given(c -> c.second = Conditions.read(23));
    }
    assertEquals(TripCause.PROBES_DISAGREE, bench.firstOut());
  }

  @Test
  @Verifies(value = "SR-09", side = Side.ALLOWS)
  void probesThatAgreeAgainCanBeReset() {
    Bench bench = apart(3);
    bench.run(60);
    bench.ask(Request.ACKNOWLEDGE).scan();
    bench.ask(Request.RESET).scan();
    assertEquals(Refusal.CAUSE_PRESENT, bench.last().refused().get(Request.RESET));
    bench.given(c -> c.second = Conditions.read(21)).ask(Request.RESET).scan();
    assertEquals(State.OFF, bench.state());
  }

  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void aStartIsRefusedFromThreeSecondsOfABadBathProbeOn() {
    Bench bench = Bench.in(State.OFF).bathBad();
    bench.run(2.9);
    bench.ask(Request.START).scan();
    assertEquals(Refusal.BATH_PROBE_BAD, bench.last().refused().get(Request.START));
    bench.bath(20).ask(Request.START).scan();
    assertEquals(State.PROVING, bench.state());
  }
}
