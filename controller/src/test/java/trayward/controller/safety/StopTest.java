package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;

/** SR-14: stop works from every state within one scan and cannot be refused. */
class StopTest {

  /** Before any heat OFF, after heat AFTER_RUN; at rest and in lockout it stays where it is. */
  private static State afterStop(State state) {
    return switch (state) {
      case OFF, PROVING, PURGING, READY -> State.OFF;
      case HEATING, HOLDING, AFTER_RUN -> State.AFTER_RUN;
      case LOCKOUT -> State.LOCKOUT;
    };
  }

  private static void stopped(Bench bench, State from) {
    assertFalse(bench.last().permitted());
    assertFalse(bench.last().safetyRelay());
    assertEquals(afterStop(from), bench.state());
    assertEquals(Map.of(), bench.last().refused());
  }

  @ParameterizedTest
  @EnumSource(State.class)
  @Verifies(value = "SR-14", side = Side.WITHHOLDS)
  void aStopThatIsAskedForActsInTheSameScan(State state) {
    Bench bench = Bench.in(state);
    bench.ask(Request.STOP).scan();
    stopped(bench, state);
  }

  @ParameterizedTest
  @EnumSource(State.class)
  @Verifies(value = "SR-14", side = Side.WITHHOLDS)
  void theNormallyClosedCircuitStopsWhenItOpens(State state) {
    Bench bench = Bench.in(state).stopCircuit(false);
    bench.scan();
    stopped(bench, state);
  }

  @ParameterizedTest
  @EnumSource(State.class)
  @Verifies(value = "SR-14", side = Side.WITHHOLDS)
  void inputsThatAnswerNoMoreStop(State state) {
    Bench bench = Bench.in(state).stopCircuit(false).given(c -> c.lines = false);
    bench.air(Proof.ABSENT).scan();
    stopped(bench, state);
  }

  @ParameterizedTest
  @EnumSource(State.class)
  @Verifies(value = "SR-14", side = Side.WITHHOLDS)
  void stopWinsOverAStartInTheSameScan(State state) {
    Bench bench = Bench.in(state);
    bench.ask(Request.STOP, Request.START).scan();
    assertFalse(bench.last().permitted());
    assertFalse(bench.state().inRun());
    assertTrue(bench.last().refused().containsKey(Request.START));
    assertFalse(bench.last().refused().containsKey(Request.STOP));
  }

  @Test
  @Verifies(value = "SR-14", side = Side.WITHHOLDS)
  void aStopAfterHeatThatIsWithheldJustNowIsStillAfterHeat() {
    Bench bench = Bench.in(State.HEATING);
    bench.bath(41).run(5);
    bench.ask(Request.STOP).scan();
    assertEquals(State.AFTER_RUN, bench.state());
  }

  @Test
  @Verifies(value = "SR-14", side = Side.WITHHOLDS)
  void aStopInTheScanOfATripIsALockout() {
    Bench bench = Bench.in(State.HEATING);
    bench.ask(Request.STOP).late(1000).scan();
    assertEquals(State.LOCKOUT, bench.state());
    assertFalse(bench.last().permitted());
  }

  @Test
  @Verifies(value = "SR-14", side = Side.WITHHOLDS)
  void whileTheCircuitIsOpenNothingCanBeStarted() {
    Bench bench = Bench.in(State.OFF).stopCircuit(false);
    for (int i = 0; i < 20; i++) {
      bench.run(1);
      bench.ask(Request.START).scan();
      assertEquals(Map.of(Request.START, Refusal.STOP_PRESSED), bench.last().refused());
      assertEquals(State.OFF, bench.state());
    }
  }

  @Test
  @Verifies(value = "SR-14", side = Side.ALLOWS)
  void releasedAndWholeAgainTheCircuitLetsAPersonStart() {
    Bench bench = Bench.in(State.HEATING).stopCircuit(false);
    bench.run(2);
    bench.stopCircuit(true).ask(Request.START).until(State.HEATING);
    assertTrue(bench.last().permitted());
  }
}
