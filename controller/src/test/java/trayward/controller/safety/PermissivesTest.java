package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.event.WithheldReason;

/** SR-01: heat in a scan only if every permissive holds in that same scan. */
class PermissivesTest {

  /** Each permissive broken alone, in a way that trips nothing within one scan. */
  static Stream<Arguments> brokenAlone() {
    return Stream.of(
        one("airflow absent", WithheldReason.PROOF_BREAK, c -> c.airflow = Proof.ABSENT),
        one("tachometer absent", WithheldReason.PROOF_BREAK, c -> c.tachometer = Proof.ABSENT),
        one("tachometer unsure", WithheldReason.PROOF_BREAK, c -> c.tachometer = Proof.UNSURE),
        one(
            "bath 0.6 K above set",
            WithheldReason.ABOVE_SET,
            c -> c.bath = Conditions.read(Bench.SET_C + 0.6)),
        one(
            "second bath probe 0.6 K above set",
            WithheldReason.ABOVE_SET,
            c -> c.second = Conditions.read(Bench.SET_C + 0.6)),
        one(
            "plate probe never read",
            WithheldReason.PROBE_UNSURE,
            c -> c.plate = new Temperature(true, false, Double.NaN)),
        one(
            "second bath probe never read",
            WithheldReason.PROBE_UNSURE,
            c -> c.second = new Temperature(true, false, Double.NaN)),
        one("scan 0.2 s late", WithheldReason.SCAN_LATE, c -> c.lateMs = 200),
        one("a look at the heat", WithheldReason.LOOKING, c -> c.looking = true),
        one("level unsure", WithheldReason.LEVEL_UNSURE, c -> c.level = Level.UNSURE),
        one("host silent for 60 s", WithheldReason.HOST_LOST, c -> c.hostSilentMs = 60_000));
  }

  private static Arguments one(String name, WithheldReason reason, Consumer<Conditions> change) {
    return Arguments.of(name, reason, change);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("brokenAlone")
  @Verifies(value = "SR-01", side = Side.WITHHOLDS)
  void onePermissiveMissingWithholdsHeatInThatVeryScanAndSaysWhy(
      String name, WithheldReason reason, Consumer<Conditions> change) {
    Bench bench = Bench.in(State.HEATING);
    bench.given(change).scan();
    assertFalse(bench.last().permitted(), name);
    assertEquals(Set.of(reason), bench.withheld());
    assertEquals(State.READY, bench.state());
    assertTrue(bench.last().tripped().isEmpty());
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("brokenAlone")
  @Verifies(value = "SR-01", side = Side.ALLOWS)
  void heatIsBackInTheScanInWhichTheMissingPermissiveHoldsAgain(
      String name, WithheldReason reason, Consumer<Conditions> change) {
    Bench bench = Bench.in(State.HEATING);
    bench.given(change).scan();
    assertEquals(Set.of(reason), bench.withheld());
    bench.air(null).bath(20).given(c -> c.second = Temperature.NOT_FITTED);
    bench.given(c -> c.hostSilentMs = 0).given(c -> c.plate = Conditions.read(20));
    bench.given(c -> c.looking = false).given(c -> c.level = Level.WELL).scan();
    // A host that was lost and is back starts no heat (SR-13): that run is over.
    boolean runOver = reason == WithheldReason.HOST_LOST;
    assertEquals(!runOver, bench.last().permitted(), name);
    assertEquals(runOver ? State.AFTER_RUN : State.HEATING, bench.state());
  }

  @ParameterizedTest
  @EnumSource(
      value = State.class,
      names = {"HEATING", "HOLDING"},
      mode = EnumSource.Mode.EXCLUDE)
  @Verifies(value = "SR-01", side = Side.WITHHOLDS)
  void noOtherStatePermitsHeat(State state) {
    Bench bench = Bench.in(state);
    assertFalse(bench.last().permitted());
    assertFalse(bench.withheld().isEmpty(), "and the reason is never left out");
    bench.scan();
    assertFalse(bench.last().permitted());
  }

  @Test
  @Verifies(value = "SR-01", side = Side.WITHHOLDS)
  void severalReasonsAreAllNamed() {
    Bench bench = Bench.in(State.HOLDING);
    bench.airflow(Proof.ABSENT).bath(41).late(300).scan();
    assertEquals(
        Set.of(WithheldReason.PROOF_BREAK, WithheldReason.ABOVE_SET, WithheldReason.SCAN_LATE),
        bench.withheld());
  }

  @ParameterizedTest
  @EnumSource(
      value = State.class,
      names = {"HEATING", "HOLDING"})
  @Verifies(value = "SR-01", side = Side.ALLOWS)
  void withEveryPermissiveHeatIsPermittedForThisScanAlone(State state) {
    Bench bench = Bench.in(state);
    HeaterPermit permit = assertInstanceOf(HeaterPermit.class, bench.scan().permission());
    assertTrue(permit.isFor(bench.scanNumber()));
    assertFalse(permit.isFor(bench.scanNumber() + 1));
    assertEquals(Set.of(), bench.withheld());
  }

  @Test
  @Verifies(value = "SR-01", side = Side.ALLOWS)
  void halfAKelvinUnderSetIsWhereHeatingBecomesHolding() {
    Bench bench = Bench.in(State.HEATING);
    bench.bath(Bench.SET_C - 0.51).scan();
    assertEquals(State.HEATING, bench.state());
    bench.bath(Bench.SET_C - 0.5).scan();
    assertEquals(State.HOLDING, bench.state());
    assertTrue(bench.last().permitted());
  }
}
