package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.event.Alarm;
import trayward.controller.event.AlarmState;
import trayward.controller.event.Warning;

/** Warnings and their life cycle by the state names of ISA-18.2 / IEC 62682. */
class WarningTest {

  private static List<Alarm> warnings(Bench bench) {
    return bench.last().alarms().stream().filter(a -> a.cause() instanceof Warning).toList();
  }

  private static Alarm noAir(AlarmState state) {
    return new Alarm(Warning.BATH_WITHOUT_AIR, state);
  }

  @ParameterizedTest
  @EnumSource(State.class)
  @Verifies(value = "SR-27", side = Side.WITHHOLDS)
  void aWarmBathWithoutProvenAirAlarmsInEveryState(State state) {
    Bench bench = Bench.in(state).bath(36).air(Proof.ABSENT);
    bench.run(14.9);
    assertFalse(warnings(bench).contains(noAir(AlarmState.UNACKNOWLEDGED)), "not yet");
    bench.scan();
    assertTrue(warnings(bench).contains(noAir(AlarmState.UNACKNOWLEDGED)));
    assertTrue(bench.last().buzzer());
  }

  @ParameterizedTest
  @EnumSource(State.class)
  @Verifies(value = "SR-27", side = Side.ALLOWS)
  void aCoolBathWithoutAirAndAWarmOneWithAirDoNotAlarm(State state) {
    Bench cool = Bench.in(state).bath(30).air(Proof.ABSENT);
    cool.run(25);
    assertFalse(warnings(cool).contains(noAir(AlarmState.UNACKNOWLEDGED)));
    Bench aired = Bench.in(state).bath(36).air(null);
    aired.run(40);
    assertFalse(warnings(aired).contains(noAir(AlarmState.UNACKNOWLEDGED)));
  }

  @Test
  @Verifies(value = "SR-27", side = Side.ALLOWS)
  void theLookAndTheSpinUpAtPowerUpOverAHotBathAreNoAlarm() {
    Bench bench = Bench.powerUp().bath(45);
    for (int i = 0; i < 400; i++) {
      bench.scan();
      assertEquals(List.of(), bench.last().alarms());
    }
    assertTrue(bench.last().fan());
  }

  @Test
  @Verifies(value = "SR-27", side = Side.WITHHOLDS)
  void theLastReadingCountsWhereTheProbeHasFailed() {
    Bench bench = Bench.in(State.OFF).bath(45);
    bench.scan();
    bench.bathBad().air(Proof.ABSENT).run(16);
    assertEquals(List.of(noAir(AlarmState.UNACKNOWLEDGED)), warnings(bench));
  }

  @Test
  void anAcknowledgedWarningThatGoesIsNormalAgain() {
    Bench bench = Bench.in(State.OFF).bath(45).air(Proof.ABSENT);
    bench.run(16);
    bench.ask(Request.ACKNOWLEDGE).scan();
    assertEquals(List.of(noAir(AlarmState.ACKNOWLEDGED)), warnings(bench));
    assertFalse(bench.last().buzzer());
    bench.bath(25).run(9.9);
    assertEquals(List.of(noAir(AlarmState.ACKNOWLEDGED)), warnings(bench), "held against chatter");
    bench.scan();
    assertEquals(List.of(), warnings(bench));
  }

  @Test
  void aWarningNobodyAcknowledgedStaysAsReturnedUntilSomebodyDoes() {
    Bench bench = Bench.in(State.OFF).bath(45).air(Proof.ABSENT);
    bench.run(16);
    bench.bath(25).run(3600);
    assertEquals(List.of(noAir(AlarmState.RETURNED_UNACKNOWLEDGED)), warnings(bench));
    assertTrue(bench.last().buzzer());
    bench.ask(Request.ACKNOWLEDGE).scan();
    assertEquals(List.of(), warnings(bench));
    assertFalse(bench.last().buzzer());
  }

  @Test
  void aReturnedWarningWhoseConditionIsThereAgainIsUnacknowledged() {
    Bench bench = Bench.in(State.OFF).bath(45).air(Proof.ABSENT);
    bench.run(16);
    bench.bath(25).run(20);
    bench.bath(45).run(14.9);
    assertEquals(List.of(noAir(AlarmState.RETURNED_UNACKNOWLEDGED)), warnings(bench));
    bench.scan();
    assertEquals(List.of(noAir(AlarmState.UNACKNOWLEDGED)), warnings(bench));
  }

  @Test
  void aBathThatHoversAroundTheLimitIsOneAlarm() {
    Bench bench = Bench.in(State.OFF).bath(30.1).air(Proof.ABSENT);
    bench.run(16);
    bench.ask(Request.ACKNOWLEDGE).scan();
    for (int i = 0; i < 200; i++) {
      bench.bath(i % 2 == 0 ? 29.6 : 30.2).run(6);
      assertEquals(List.of(noAir(AlarmState.ACKNOWLEDGED)), warnings(bench));
    }
    bench.bath(29.4).run(10);
    assertEquals(List.of(), warnings(bench));
  }

  @Test
  @Verifies(value = "SR-15", side = Side.WITHHOLDS)
  void presenceThatIsDueSoonSoundsAndGoesWhenItIsRenewed() {
    Bench bench = Bench.in(State.HOLDING);
    bench.ask(Request.PRESENCE).run(40 * 60);
    assertEquals(List.of(), warnings(bench));
    bench.scan();
    assertEquals(
        List.of(new Alarm(Warning.PRESENCE_DUE, AlarmState.UNACKNOWLEDGED)), warnings(bench));
    assertTrue(bench.last().buzzer());
    bench.ask(Request.ACKNOWLEDGE).run(10.1);
    assertEquals(List.of(), warnings(bench), "who acknowledges is present");
  }

  @Test
  @Verifies(value = "SR-16", side = Side.WITHHOLDS)
  void aLostHostWarnsInARunOnly() {
    Bench bench = Bench.in(State.HOLDING).given(c -> c.hostSilentMs = 60_000);
    bench.scan();
    assertEquals(List.of(new Alarm(Warning.HOST_LOST, AlarmState.UNACKNOWLEDGED)), warnings(bench));
    Bench off = Bench.in(State.OFF).given(c -> c.hostSilentMs = 60_000);
    off.run(60);
    assertEquals(List.of(), warnings(off));
  }

  @Test
  void aLowLevelWarnsWithoutSoundAndHalfGoneSounds() {
    Bench bench = Bench.in(State.HOLDING).given(c -> c.level = Level.LOW);
    bench.scan();
    assertEquals(List.of(new Alarm(Warning.LEVEL_LOW, AlarmState.UNACKNOWLEDGED)), warnings(bench));
    assertFalse(bench.last().buzzer());
    assertTrue(bench.last().permitted());
    bench.given(c -> c.level = Level.UNSURE).scan();
    assertTrue(
        warnings(bench).contains(new Alarm(Warning.LEVEL_UNSURE, AlarmState.UNACKNOWLEDGED)));
    assertTrue(bench.last().buzzer());
    assertFalse(bench.last().permitted());
  }

  @Test
  void tripsStandBeforeWarningsAndTheMostPressingWarningFirst() {
    Bench bench = Bench.in(State.LOCKOUT).bath(45).given(c -> c.level = Level.LOW);
    bench.run(20);
    assertEquals(
        List.of("AIR_LOST", "BATH_WITHOUT_AIR", "LEVEL_LOW"),
        bench.last().alarms().stream().map(a -> a.cause().name()).toList());
  }

  @Test
  @Verifies(value = "SR-27", side = Side.ALLOWS)
  void aBathJustUnderTheLimitHoldsAnAlarmButBeginsNone() {
    Bench bench = Bench.in(State.OFF).bath(29.8).air(Proof.ABSENT);
    bench.run(60);
    assertEquals(List.of(), warnings(bench));
    bench.bath(30.1).run(16);
    bench.bath(29.8).run(60);
    assertEquals(List.of(noAir(AlarmState.UNACKNOWLEDGED)), warnings(bench));
  }
}
