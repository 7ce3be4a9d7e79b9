package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;

/** SR-04: 60 s of purge before heat; a break goes back to proving without a latch. */
class PurgeTest {

  @Test
  @Verifies(value = "SR-04", side = Side.WITHHOLDS)
  void noHeatBeforeSixtySecondsOfPurge() {
    Bench bench = Bench.in(State.PURGING);
    for (int scan = 1; scan < 600; scan++) {
      assertFalse(bench.scan().permitted());
      assertEquals(State.PURGING, bench.state(), "at " + scan * 0.1 + " s");
    }
  }

  @Test
  @Verifies(value = "SR-04", side = Side.ALLOWS)
  void heatFollowsSixtySecondsOfPurge() {
    Bench bench = Bench.in(State.PURGING);
    bench.run(60);
    assertEquals(State.READY, bench.state());
    assertTrue(bench.scan().permitted());
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.1, 30, 59.9})
  @Verifies(value = "SR-04", side = Side.WITHHOLDS)
  void aBreakGoesBackToProvingWithoutALatchAndThePurgeBeginsAnew(double afterS) {
    Bench bench = Bench.in(State.PURGING);
    bench.run(afterS);
    bench.airflow(Proof.ABSENT).scan();
    assertEquals(State.PROVING, bench.state());
    assertFalse(bench.between().latch().holds());
    assertTrue(bench.last().fan(), "the fan stays commanded");
    bench.air(null).until(State.PURGING).run(59.9);
    assertEquals(State.PURGING, bench.state());
    bench.scan();
    assertEquals(State.READY, bench.state());
  }

  @Test
  @Verifies(value = "SR-04", side = Side.WITHHOLDS)
  void manyBreaksInPurgeNeverLatchAndNeverHeat() {
    Bench bench = Bench.in(State.PURGING);
    for (int i = 0; i < 20; i++) {
      bench.airflow(Proof.ABSENT).run(0.4);
      bench.air(null).run(20);
      assertFalse(bench.between().latch().holds());
      assertFalse(bench.last().permitted());
    }
  }

  @Test
  @Verifies(value = "SR-04", side = Side.WITHHOLDS)
  void aStartFromAfterRunPurgesAgain() {
    Bench bench = Bench.in(State.AFTER_RUN);
    bench.run(10);
    bench.ask(Request.START).until(State.PURGING).run(59.9);
    assertEquals(State.PURGING, bench.state());
  }

  @Test
  @Verifies(value = "SR-04", side = Side.ALLOWS)
  void theLengthOfThePurgeIsASetting() {
    Bench bench = Bench.in(Limits.STANDARD.with(Limit.PURGE_S, 300), State.PROVING);
    bench.until(State.PURGING).run(299.9);
    assertEquals(State.PURGING, bench.state());
    bench.run(0.2);
    assertEquals(State.HEATING, bench.state());
  }
}
