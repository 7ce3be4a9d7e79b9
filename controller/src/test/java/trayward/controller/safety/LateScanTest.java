package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
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

/** SR-17, the interlock's part: two periods of 0.1 s withhold for that scan, 1 s trips. */
class LateScanTest {

  @ParameterizedTest
  @ValueSource(ints = {200, 500, 999})
  @Verifies(value = "SR-17", side = Side.WITHHOLDS)
  void aScanLateByTwoPeriodsWithholdsHeatForThatScanOnly(int ms) {
    Bench bench = Bench.in(State.HEATING);
    bench.late(ms).scan();
    assertEquals(Set.of(WithheldReason.SCAN_LATE), bench.withheld());
    assertEquals(State.READY, bench.state());
    assertTrue(bench.scan().permitted());
    assertNull(bench.firstOut());
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 100, 199})
  @Verifies(value = "SR-17", side = Side.ALLOWS)
  void jitterOfLessWithholdsNothing(int ms) {
    Bench bench = Bench.in(State.HEATING);
    assertTrue(bench.late(ms).scan().permitted());
  }

  @ParameterizedTest
  @EnumSource(State.class)
  @Verifies(value = "SR-17", side = Side.WITHHOLDS)
  void aScanLateByOneSecondTripsInEveryState(State state) {
    Bench bench = Bench.in(state);
    bench.late(1000).scan();
    assertFalse(bench.last().permitted());
    assertEquals(State.LOCKOUT, bench.state());
    assertTrue(bench.between().latch().causes().contains(TripCause.SCAN_LATE));
  }

  @Test
  @Verifies(value = "SR-17", side = Side.WITHHOLDS)
  void aStallExplainsWhatElseIsFoundAfterItAndIsFirstOut() {
    Bench bench = Bench.in(State.HEATING);
    bench.air(Proof.ABSENT).bath(56).late(20_000).scan();
    assertEquals(TripCause.SCAN_LATE, bench.firstOut());
  }

  @Test
  @Verifies(value = "SR-17", side = Side.ALLOWS)
  void aStallThatIsOverCanBeReset() {
    Bench bench = Bench.in(State.HEATING);
    bench.late(5000).scan();
    bench.ask(Request.ACKNOWLEDGE).scan();
    bench.ask(Request.RESET).scan();
    assertEquals(State.OFF, bench.state());
  }

  @Test
  @Verifies(value = "SR-17", side = Side.WITHHOLDS)
  void aResetInAScanThatIsItselfASecondLateIsRefused() {
    Bench bench = Bench.in(State.HEATING);
    bench.late(1000).scan();
    bench.ask(Request.ACKNOWLEDGE).scan();
    bench.ask(Request.RESET).late(1000).scan();
    assertEquals(Refusal.CAUSE_PRESENT, bench.last().refused().get(Request.RESET));
    bench.ask(Request.RESET).late(999).scan();
    assertEquals(State.OFF, bench.state());
  }
}
