package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.event.TripCause;
import trayward.controller.event.WithheldReason;

/** SR-05: no heat in the first scan without proof; 0.5 s or three breaks in 60 s latch. */
class AirLostTest {

  @ParameterizedTest
  @CsvSource({
    "HEATING,ABSENT,PRESENT", "HEATING,PRESENT,ABSENT", "HEATING,PRESENT,UNSURE",
    "HOLDING,ABSENT,PRESENT", "HOLDING,PRESENT,ABSENT", "HOLDING,PRESENT,UNSURE"
  })
  @Verifies(value = "SR-05", side = Side.WITHHOLDS)
  void heatIsWithheldInTheFirstScanWithoutAProof(State state, Proof airflow, Proof tachometer) {
    Bench bench = Bench.in(state);
    bench.airflow(airflow).tachometer(tachometer).scan();
    assertFalse(bench.last().permitted());
    assertEquals(Set.of(WithheldReason.PROOF_BREAK), bench.withheld());
    assertTrue(bench.last().fan());
    assertNull(bench.firstOut());
  }

  @ParameterizedTest
  @EnumSource(
      value = State.class,
      names = {"READY", "HEATING", "HOLDING"})
  @Verifies(value = "SR-05", side = Side.WITHHOLDS)
  void halfASecondOfAbsenceLatchesWhateverTheDutyAndLeavesTheFanOn(State state) {
    Bench bench = Bench.in(state);
    bench.airflow(Proof.ABSENT).run(0.4);
    assertEquals(State.READY, bench.state());
    assertNull(bench.firstOut());
    assertEquals(Set.of(TripCause.AIR_LOST), bench.scan().tripped());
    assertEquals(State.LOCKOUT, bench.state());
    assertEquals(TripCause.AIR_LOST, bench.firstOut());
    assertTrue(bench.last().fan());
    assertTrue(bench.last().buzzer());
    assertFalse(bench.last().safetyRelay());
    assertTrue(bench.run(30).fan(), "still commanded, so that it runs once it can");
  }

  @ParameterizedTest
  @EnumSource(
      value = State.class,
      names = {"HEATING", "HOLDING"})
  @Verifies(value = "SR-05", side = Side.ALLOWS)
  void fourTenthsOfASecondLatchNothingAndHeatIsBackWithTheProof(State state) {
    Bench bench = Bench.in(state);
    bench.airflow(Proof.ABSENT).run(0.4);
    bench.air(null).scan();
    assertTrue(bench.last().permitted());
    assertEquals(state, bench.state());
    bench.run(120);
    assertNull(bench.firstOut());
  }

  private static void breakFor(Bench bench, double seconds) {
    bench.airflow(Proof.ABSENT).run(seconds);
    bench.airflow(null);
  }

  @ParameterizedTest
  @CsvSource({"0.1,0.1", "30,29.5", "58,1.5"})
  @Verifies(value = "SR-05", side = Side.WITHHOLDS)
  void threeBreaksWithinAMinuteLatchHoweverShortTheyAre(double firstGapS, double secondGapS) {
    Bench bench = Bench.in(State.HEATING);
    breakFor(bench, 0.1);
    bench.run(firstGapS);
    breakFor(bench, 0.1);
    bench.run(secondGapS);
    assertNull(bench.firstOut());
    breakFor(bench, 0.1);
    assertEquals(TripCause.AIR_LOST, bench.firstOut());
    assertEquals(State.LOCKOUT, bench.state());
  }

  @Test
  @Verifies(value = "SR-05", side = Side.ALLOWS)
  void twoBreaksWithinAMinuteLatchNothing() {
    Bench bench = Bench.in(State.HEATING);
    breakFor(bench, 0.3);
    bench.run(1);
    breakFor(bench, 0.3);
    bench.run(60);
    assertNull(bench.firstOut());
    assertTrue(bench.last().permitted());
  }

  @Test
  @Verifies(value = "SR-05", side = Side.ALLOWS)
  void threeBreaksOverSixtyOneSecondsLatchNothing() {
    Bench bench = Bench.in(State.HEATING);
    for (int i = 0; i < 10; i++) {
      breakFor(bench, 0.1);
      bench.run(30.4); // from one break to the next but one 61 s
    }
    assertNull(bench.firstOut());
    assertTrue(bench.last().permitted());
  }

  @Test
  @Verifies(value = "SR-05", side = Side.WITHHOLDS)
  void theThirdBreakLatchesThoughOlderOnesHaveFallenOutOfTheMinute() {
    Bench bench = Bench.in(State.HEATING);
    breakFor(bench, 0.1);
    bench.run(50);
    breakFor(bench, 0.1);
    bench.run(20);
    breakFor(bench, 0.1);
    assertNull(bench.firstOut(), "the first is 70 s old");
    bench.run(20);
    breakFor(bench, 0.1);
    assertEquals(TripCause.AIR_LOST, bench.firstOut(), "the last three came within 41 s");
  }

  @Test
  @Verifies(value = "SR-05", side = Side.ALLOWS)
  void breaksOfAnEarlierRunDoNotCount() {
    Bench bench = Bench.in(Limits.STANDARD.with(Limit.BREAK_WINDOW_S, 600), State.HEATING);
    breakFor(bench, 0.1);
    bench.run(1);
    breakFor(bench, 0.1);
    bench.run(1);
    bench.ask(Request.STOP).run(1);
    bench.ask(Request.START).until(State.HEATING);
    breakFor(bench, 0.1);
    assertNull(bench.firstOut());
  }

  @Test
  @Verifies(value = "SR-05", side = Side.WITHHOLDS)
  void afterTheTripAirThatComesBackDoesNotBringBackHeat() {
    Bench bench = Bench.in(State.LOCKOUT);
    bench.air(null).run(300);
    assertEquals(State.LOCKOUT, bench.state());
    assertFalse(bench.last().permitted());
  }

  @Test
  @Verifies(value = "SR-05", side = Side.WITHHOLDS)
  void overAColdBathTooTheFanStaysCommandedUntilAPersonHasSeenTheAlarm() {
    Bench bench = Bench.in(State.OFF).given(c -> c.setC = 15);
    bench.ask(Request.START).until(State.READY).run(1);
    bench.air(Proof.ABSENT).run(0.5);
    assertEquals(TripCause.AIR_LOST, bench.firstOut());
    assertTrue(bench.run(600).fan());
    bench.ask(Request.ACKNOWLEDGE).run(0.2);
    assertFalse(bench.last().fan(), "nothing was heated and nothing is warm");
    bench.ask(Request.RESET).scan();
    assertEquals(State.OFF, bench.state());
  }

  @Test
  void breaksOfARunAreForgottenWhenTheNextOneBegins() {
    Bench bench = Bench.in(State.HOLDING);
    bench.air(Proof.ABSENT).scan();
    bench.air(null).run(1);
    assertEquals(1, bench.between().air().breaks());
    bench.ask(Request.STOP).scan();
    assertEquals(State.AFTER_RUN, bench.state());
    assertEquals(1, bench.between().air().breaks());
    bench.ask(Request.START).scan();
    assertEquals(State.PROVING, bench.state());
    assertEquals(0, bench.between().air().breaks());
  }
}
