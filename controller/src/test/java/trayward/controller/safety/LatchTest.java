package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.event.Alarm;
import trayward.controller.event.AlarmState;
import trayward.controller.event.TripCause;
import trayward.controller.event.WithheldReason;
import trayward.controller.keep.KeepLoad;
import trayward.controller.keep.KeepRecord;

/** SR-12: the latch, its first-out, and how it outlives power. */
class LatchTest {

  /** The controller after power was lost and came back. */
  private static Bench again(Bench before) {
    return Bench.powerUp(new KeepLoad.Loaded(before.between().keep()));
  }

  @Test
  @Verifies(value = "SR-12", side = Side.WITHHOLDS)
  void aTripOutlivesLossOfPowerWithAllItsCausesAndItsFirstOut() {
    Bench bench = Bench.in(State.LOCKOUT);
    bench.bath(55).scan();
    Bench back = again(bench);
    assertEquals(State.LOCKOUT, back.state());
    assertEquals(TripCause.AIR_LOST, back.firstOut());
    assertEquals(
        Set.of(TripCause.AIR_LOST, TripCause.BATH_TOO_HOT), back.between().latch().causes());
    back.ask(Request.START).run(100);
    assertEquals(State.LOCKOUT, back.state());
    back.ask(Request.RESET).scan();
    assertEquals(Refusal.NOT_ACKNOWLEDGED, back.last().refused().get(Request.RESET));
  }

  @Test
  @Verifies(value = "SR-12", side = Side.ALLOWS)
  void anAcknowledgementOutlivesLossOfPowerAndResetThenClears() {
    Bench bench = Bench.in(State.LOCKOUT);
    bench.ask(Request.ACKNOWLEDGE).scan();
    Bench back = again(bench);
    assertFalse(back.scan().buzzer());
    back.ask(Request.RESET).scan();
    assertEquals(State.OFF, back.state());
    assertEquals(Set.of(), back.between().keep().latched());
    assertEquals(State.OFF, again(back).state());
  }

  @Test
  @Verifies(value = "SR-12", side = Side.WITHHOLDS)
  void anUnreadableRecordIsALockoutAndClearsByHand() {
    Bench bench = Bench.powerUp(new KeepLoad.Unreadable("its check sum is wrong"));
    assertEquals(State.LOCKOUT, bench.state());
    assertEquals(TripCause.STORE_FAILED, bench.firstOut());
    bench.ask(Request.START, Request.RESET).scan();
    assertEquals(Refusal.LOCKED_OUT, bench.last().refused().get(Request.START));
    assertEquals(Refusal.NOT_ACKNOWLEDGED, bench.last().refused().get(Request.RESET));
    bench.ask(Request.ACKNOWLEDGE).scan();
    bench.ask(Request.RESET).scan();
    assertEquals(State.OFF, bench.state());
    bench.ask(Request.START).until(State.HEATING);
  }

  @Test
  @Verifies(value = "SR-12", side = Side.WITHHOLDS)
  void anUnreadableRecordLeavesItOpenWhetherHeatWasOnSoTheFanRunsOn() {
    Bench bench = Bench.powerUp(new KeepLoad.Unreadable("torn"));
    assertTrue(bench.run(6).fan(), "after the look, though the bath is cold");
  }

  @ParameterizedTest
  @EnumSource(
      value = State.class,
      names = {"PROVING", "PURGING", "READY", "HEATING", "HOLDING"})
  @Verifies(value = "SR-12", side = Side.WITHHOLDS)
  void aRecordThatCannotBeWrittenTripsInARun(State state) {
    Bench bench = Bench.in(state).given(c -> c.store = false);
    bench.scan();
    assertFalse(bench.last().permitted());
    assertEquals(Set.of(WithheldReason.NOT_RUNNING), bench.withheld());
    assertEquals(TripCause.STORE_FAILED, bench.firstOut());
    bench.ask(Request.ACKNOWLEDGE).scan();
    bench.ask(Request.RESET).scan();
    assertEquals(Refusal.CAUSE_PRESENT, bench.last().refused().get(Request.RESET));
  }

  @Test
  @Verifies(value = "SR-12", side = Side.ALLOWS)
  void aRecordThatIsWrittenAgainCanBeReset() {
    Bench bench = Bench.in(State.HEATING).given(c -> c.store = false);
    bench.run(5);
    bench.given(c -> c.store = true).ask(Request.ACKNOWLEDGE).scan();
    bench.ask(Request.RESET).scan();
    assertEquals(State.OFF, bench.state());
  }

  @Test
  @Verifies(value = "SR-12", side = Side.WITHHOLDS)
  void theFirstOutStaysAndIsListedFirstWhateverComesAfter() {
    Bench bench = Bench.in(State.LOCKOUT);
    bench.given(c -> c.plate = Conditions.read(75)).scan();
    bench.late(1000).scan();
    bench.bathBad().run(4);
    assertEquals(TripCause.AIR_LOST, bench.firstOut());
    List<Alarm> alarms = bench.last().alarms();
    assertEquals(TripCause.AIR_LOST, alarms.get(0).cause());
    assertEquals(
        Set.of(
            TripCause.AIR_LOST,
            TripCause.PLATE_TOO_HOT,
            TripCause.TRAY_DRY,
            TripCause.SCAN_LATE,
            TripCause.BATH_PROBE_BAD),
        Set.copyOf(alarms.stream().map(Alarm::cause).toList()));
    assertEquals(5, alarms.size());
  }

  @Test
  @Verifies(value = "SR-12", side = Side.WITHHOLDS)
  void aNewCauseTakesTheAcknowledgementBackAndSoundsAgain() {
    Bench bench = Bench.in(State.LOCKOUT);
    assertFalse(bench.ask(Request.ACKNOWLEDGE).scan().buzzer());
    assertTrue(bench.late(1000).scan().buzzer());
    bench.air(null).ask(Request.RESET).scan();
    assertEquals(Refusal.NOT_ACKNOWLEDGED, bench.last().refused().get(Request.RESET));
  }

  @Test
  @Verifies(value = "SR-12", side = Side.WITHHOLDS)
  void nobodyCanHaveAcknowledgedWhatTripsInTheSameScan() {
    Bench bench = Bench.in(State.LOCKOUT);
    bench.ask(Request.ACKNOWLEDGE).late(1000).scan();
    assertTrue(bench.last().buzzer());
    Bench heating = Bench.in(State.HEATING);
    heating.ask(Request.ACKNOWLEDGE).late(1000).scan();
    assertFalse(heating.between().latch().acknowledged());
  }

  @Test
  @Verifies(value = "SR-12", side = Side.ALLOWS)
  void alarmsGoThroughTheirLifeCycleByName() {
    Bench bench = Bench.in(State.LOCKOUT);
    Alarm present = new Alarm(TripCause.AIR_LOST, AlarmState.UNACKNOWLEDGED);
    assertEquals(List.of(present), bench.last().alarms());
    bench.air(null).scan();
    assertEquals(
        List.of(new Alarm(TripCause.AIR_LOST, AlarmState.LATCHED_UNACKNOWLEDGED)),
        bench.last().alarms());
    bench.ask(Request.ACKNOWLEDGE).scan();
    assertEquals(
        List.of(new Alarm(TripCause.AIR_LOST, AlarmState.LATCHED_ACKNOWLEDGED)),
        bench.last().alarms());
    bench.given(c -> c.findings = Set.of(TripCause.RELAY_STUCK)).scan();
    bench.ask(Request.ACKNOWLEDGE).scan();
    assertTrue(
        bench.last().alarms().contains(new Alarm(TripCause.RELAY_STUCK, AlarmState.ACKNOWLEDGED)));
    bench.given(c -> c.findings = Set.of()).ask(Request.RESET).scan();
    assertEquals(List.of(), bench.last().alarms());
  }

  @Test
  @Verifies(value = "SR-12", side = Side.ALLOWS)
  void aRunWithoutATripLeavesNothingToLatchOnRecord() {
    Bench bench = Bench.in(State.HEATING);
    assertEquals(
        new KeepRecord(Set.of(), java.util.Optional.empty(), false, true), bench.between().keep());
    assertEquals(State.OFF, again(bench).state());
  }
}
