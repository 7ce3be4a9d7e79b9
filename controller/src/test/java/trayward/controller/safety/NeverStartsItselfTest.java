package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.keep.KeepLoad;

/** SR-13: power-up, restart and reconnection never start heat; only a person's new start does. */
class NeverStartsItselfTest {

  private static void staysWithoutHeat(Bench bench, double seconds) {
    for (int scan = 0; scan < seconds * 10; scan++) {
      assertFalse(bench.scan().permitted());
      assertFalse(bench.last().safetyRelay());
      assertFalse(bench.state().inRun(), bench.state().name());
    }
  }

  @ParameterizedTest
  @EnumSource(State.class)
  @Verifies(value = "SR-13", side = Side.WITHHOLDS)
  void powerLostInAnyStateComesBackWithoutHeat(State state) {
    Bench before = Bench.in(state);
    Bench back = Bench.powerUp(new KeepLoad.Loaded(before.between().keep()));
    assertEquals(state == State.LOCKOUT ? State.LOCKOUT : State.OFF, back.state());
    staysWithoutHeat(back, 600);
  }

  @ParameterizedTest
  @EnumSource(
      value = Request.class,
      names = {"START"},
      mode = EnumSource.Mode.EXCLUDE)
  @Verifies(value = "SR-13", side = Side.WITHHOLDS)
  void nothingElseThatAPersonAsksStartsHeat(Request request) {
    Bench bench = Bench.in(State.OFF);
    bench.ask(request);
    staysWithoutHeat(bench, 120);
    bench.ask(EnumSet.complementOf(EnumSet.of(Request.START)).toArray(Request[]::new));
    staysWithoutHeat(bench, 120);
  }

  @Test
  @Verifies(value = "SR-13", side = Side.WITHHOLDS)
  void inputsThatComeBackDoNotBringBackARunTheyEnded() {
    Bench bench = Bench.in(State.HEATING);
    bench.given(c -> c.lines = false).stopCircuit(false).scan();
    assertEquals(State.AFTER_RUN, bench.state());
    bench.given(c -> c.lines = true).stopCircuit(true);
    staysWithoutHeat(bench, 600);
  }

  @Test
  @Verifies(value = "SR-13", side = Side.WITHHOLDS)
  void tenMinutesReadyWithoutHeatEndTheRun() {
    Bench bench = Bench.in(State.READY);
    double alreadyS = bench.between().stateMs() / 1000.0;
    bench.run(600 - alreadyS - 0.1);
    assertEquals(State.READY, bench.state());
    bench.scan();
    assertEquals(State.AFTER_RUN, bench.state());
    bench.bath(20);
    staysWithoutHeat(bench, 600);
  }

  @Test
  @Verifies(value = "SR-13", side = Side.ALLOWS)
  void readyForJustUnderTenMinutesHeatsAgain() {
    Bench bench = Bench.in(State.READY);
    bench.run(595);
    assertEquals(State.READY, bench.state());
    bench.bath(39).scan();
    assertTrue(bench.last().permitted());
    bench.bath(41).run(595);
    assertEquals(State.READY, bench.state(), "and the ten minutes begin anew");
  }

  @Test
  @Verifies(value = "SR-13", side = Side.ALLOWS)
  void aStartByAPersonAfterPowerUpHeats() {
    Bench bench = Bench.powerUp();
    bench.ask(Request.START).until(State.HEATING);
    assertTrue(bench.last().permitted());
  }
}
