package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.EnumSet;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.event.TripCause;

/** SR-12, SR-13: what may be asked when; every refusal is told. */
class RefusalTest {

  private static Map<Request, Refusal> refused(Bench bench, Request request) {
    return bench.ask(request).scan().refused();
  }

  @ParameterizedTest
  @EnumSource(
      value = State.class,
      names = {"LOCKOUT"},
      mode = EnumSource.Mode.EXCLUDE)
  @Verifies(value = "SR-12", side = Side.WITHHOLDS)
  void thereIsNothingToResetOutsideOfALockout(State state) {
    assertEquals(
        Map.of(Request.RESET, Refusal.NOT_LOCKED_OUT), refused(Bench.in(state), Request.RESET));
  }

  @Test
  @Verifies(value = "SR-12", side = Side.WITHHOLDS)
  void resetNeedsTheAcknowledgementTheCauseGoneAndAPersonInThatOrder() {
    Bench bench = Bench.in(State.LOCKOUT).bath(31);
    bench.given(c -> c.atTray = false);
    assertEquals(Map.of(Request.RESET, Refusal.NOT_ACKNOWLEDGED), refused(bench, Request.RESET));
    bench.ask(Request.ACKNOWLEDGE).scan();
    assertEquals(Map.of(Request.RESET, Refusal.CAUSE_PRESENT), refused(bench, Request.RESET));
    bench.air(null);
    assertEquals(Map.of(Request.RESET, Refusal.NOBODY_AT_TRAY), refused(bench, Request.RESET));
    assertEquals(State.LOCKOUT, bench.state());
    bench.given(c -> c.atTray = true);
    assertEquals(Map.of(), refused(bench, Request.RESET));
    assertEquals(State.OFF, bench.state());
  }

  @Test
  @Verifies(value = "SR-12", side = Side.WITHHOLDS)
  void oneCauseStillPresentBarsTheResetOfAll() {
    Bench bench = Bench.in(State.LOCKOUT).air(null);
    bench.given(c -> c.findings = EnumSet.of(TripCause.RELAY_STUCK)).run(1);
    bench.ask(Request.ACKNOWLEDGE).scan();
    assertEquals(Map.of(Request.RESET, Refusal.CAUSE_PRESENT), refused(bench, Request.RESET));
    bench.given(c -> c.findings = Set.of());
    assertEquals(Map.of(), refused(bench, Request.RESET));
  }

  @Test
  @Verifies(value = "SR-12", side = Side.WITHHOLDS)
  void aResetIsRefusedInTheScanInWhichSomethingNewTrips() {
    Bench bench = Bench.in(State.LOCKOUT).air(null);
    bench.ask(Request.ACKNOWLEDGE).scan();
    bench.late(1000);
    assertEquals(Set.of(Request.RESET), refused(bench, Request.RESET).keySet());
    assertEquals(State.LOCKOUT, bench.state());
  }

  @Test
  @Verifies(value = "SR-12", side = Side.WITHHOLDS)
  void aLockoutIsNotLeftByItselfNorByAnythingButReset() {
    Bench bench = Bench.in(State.LOCKOUT).air(null);
    for (Request request : EnumSet.complementOf(EnumSet.of(Request.RESET))) {
      bench.ask(request).run(60);
      assertEquals(State.LOCKOUT, bench.state(), request.name());
    }
  }

  @Test
  @Verifies(value = "SR-12", side = Side.WITHHOLDS)
  void resetNeverStartsHeatNotEvenWithAStartInTheSameScan() {
    Bench bench = Bench.in(State.LOCKOUT).air(null);
    bench.ask(Request.ACKNOWLEDGE).scan();
    bench.ask(Request.RESET, Request.START).scan();
    assertEquals(State.OFF, bench.state());
    for (int i = 0; i < 3000; i++) {
      assertFalse(bench.scan().permitted());
    }
    assertEquals(State.OFF, bench.state());
  }

  @ParameterizedTest
  @EnumSource(
      value = State.class,
      names = {"PROVING", "PURGING", "READY", "HEATING", "HOLDING"})
  @Verifies(value = "SR-13", side = Side.WITHHOLDS)
  void aRunThatIsOnCannotBeStarted(State state) {
    Bench bench = Bench.in(state);
    assertEquals(Map.of(Request.START, Refusal.ALREADY_RUNNING), refused(bench, Request.START));
    assertEquals(state, bench.state());
  }

  @ParameterizedTest
  @EnumSource(
      value = State.class,
      names = {"OFF", "AFTER_RUN"})
  @Verifies(value = "SR-13", side = Side.ALLOWS)
  void aStartIsTakenInOffAndInAfterRun(State state) {
    Bench bench = Bench.in(state);
    assertEquals(Map.of(), refused(bench, Request.START));
    assertEquals(State.PROVING, bench.state());
    bench.until(State.HEATING);
  }

  @ParameterizedTest
  @EnumSource(
      value = State.class,
      names = {"OFF", "AFTER_RUN"})
  @Verifies(value = "SR-13", side = Side.WITHHOLDS)
  void aStartIsRefusedWithTheReason(State state) {
    Bench bench = Bench.in(state).stopCircuit(false);
    assertEquals(Map.of(Request.START, Refusal.STOP_PRESSED), refused(bench, Request.START));
    bench.stopCircuit(true).given(c -> c.store = false);
    assertEquals(Map.of(Request.START, Refusal.STORE_UNWRITABLE), refused(bench, Request.START));
    assertEquals(state, bench.state());
  }

  @Test
  @Verifies(value = "SR-13", side = Side.WITHHOLDS)
  void aStartInLockoutIsRefused() {
    Bench bench = Bench.in(State.LOCKOUT).air(null);
    assertEquals(Map.of(Request.START, Refusal.LOCKED_OUT), refused(bench, Request.START));
    assertEquals(State.LOCKOUT, bench.state());
  }

  @ParameterizedTest
  @EnumSource(State.class)
  @Verifies(value = "SR-12", side = Side.ALLOWS)
  void acknowledgeIsTakenAtAnyTime(State state) {
    Bench bench = Bench.in(state);
    assertEquals(Map.of(), refused(bench, Request.ACKNOWLEDGE));
    assertEquals(state, bench.state());
  }

  @ParameterizedTest
  @EnumSource(Refusal.class)
  @Verifies(value = "SR-12", side = Side.WITHHOLDS)
  void everyRefusalHasWordsForThePerson(Refusal refusal) {
    assertFalse(refusal.words().isBlank());
  }
}
