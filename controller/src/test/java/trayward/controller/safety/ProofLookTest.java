package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.event.TripCause;

/** SR-03: each proof seen absent since the fan was last commanded off. Spin-down 4 s: look 6 s. */
class ProofLookTest {

  private static Bench stuck(String which, Proof proof) {
    Bench bench = Bench.powerUp();
    return which.equals("airflow") ? bench.airflow(proof) : bench.tachometer(proof);
  }

  @Test
  @Verifies(value = "SR-03", side = Side.WITHHOLDS)
  void theLookIsSpinDownAndTwoSecondsAndAtMostFifteen() {
    assertEquals(6000, new Interlock(Limits.STANDARD, 4).lookMs());
    assertEquals(15_000, new Interlock(Limits.STANDARD, 13).lookMs());
    assertEquals(15_000, new Interlock(Limits.STANDARD, 100).lookMs());
  }

  @ParameterizedTest
  @CsvSource({"airflow,PRESENT", "tachometer,PRESENT", "tachometer,UNSURE"})
  @Verifies(value = "SR-03", side = Side.WITHHOLDS)
  void aProofThatShowsThroughoutTheLookLocksOutAtStart(String which, Proof proof) {
    Bench bench = stuck(which, proof);
    bench.run(10);
    assertEquals(State.OFF, bench.state());
    bench.ask(Request.START).run(0.2);
    assertEquals(TripCause.PROOF_STUCK, bench.firstOut());
    assertEquals(State.LOCKOUT, bench.state());
    assertFalse(bench.last().fan(), "a fan for a cold bath would hide the stuck proof");
  }

  @ParameterizedTest
  @ValueSource(strings = {"airflow", "tachometer"})
  @Verifies(value = "SR-03", side = Side.WITHHOLDS)
  void aStartDuringTheLookWaitsForItsEnd(String which) {
    Bench bench = stuck(which, Proof.PRESENT);
    bench.ask(Request.START).run(5.9);
    assertEquals(State.PROVING, bench.state());
    assertFalse(bench.last().fan());
    bench.run(0.2);
    assertEquals(TripCause.PROOF_STUCK, bench.firstOut());
  }

  @ParameterizedTest
  @ValueSource(strings = {"airflow", "tachometer"})
  @Verifies(value = "SR-03", side = Side.WITHHOLDS)
  void aProofThatSticksWhileTheFanRestsIsCaughtAtTheNextStart(String which) {
    Bench bench = Bench.powerUp();
    bench.run(20);
    bench.now.airflow = which.equals("airflow") ? Proof.PRESENT : null;
    bench.now.tachometer = which.equals("tachometer") ? Proof.PRESENT : null;
    bench.run(1);
    bench.ask(Request.START).run(0.2);
    assertEquals(TripCause.PROOF_STUCK, bench.firstOut());
  }

  @Test
  @Verifies(value = "SR-03", side = Side.ALLOWS)
  void aWheelThatSpinsDownDuringTheLookIsNoStuckProof() {
    Bench bench = Bench.powerUp().air(Proof.UNSURE);
    bench.run(4);
    bench.air(null).ask(Request.START).until(State.HEATING);
    assertTrue(bench.last().permitted());
  }

  @ParameterizedTest
  @ValueSource(doubles = {20, 45})
  @Verifies(value = "SR-03", side = Side.ALLOWS)
  void aFanSeenAtRestAtPowerUpMayBeStartedColdOrHot(double bathC) {
    Bench bench = Bench.powerUp().bath(bathC).given(c -> c.setC = 50);
    bench.run(6);
    bench.ask(Request.START).until(State.HEATING);
    assertTrue(bench.last().permitted());
  }

  @Test
  @Verifies(value = "SR-03", side = Side.WITHHOLDS)
  void evenOverAHotBathTheFanStaysOffForTheLookAtPowerUpAndNoLonger() {
    Bench bench = Bench.powerUp().bath(45);
    for (int scan = 1; scan < 60; scan++) {
      assertFalse(bench.scan().fan(), "at " + scan * 0.1 + " s");
    }
    assertTrue(bench.scan().fan());
  }

  @ParameterizedTest
  @ValueSource(strings = {"airflow", "tachometer"})
  @Verifies(value = "SR-03", side = Side.WITHHOLDS)
  void aStuckProofOverAHotBathRefusesHeatAndLeavesTheFanOn(String which) {
    Bench bench = stuck(which, Proof.PRESENT).bath(45);
    bench.run(10);
    assertTrue(bench.last().fan());
    bench.ask(Request.START).run(0.2);
    assertEquals(TripCause.PROOF_STUCK, bench.firstOut());
    assertTrue(bench.last().fan());
    bench.ask(Request.ACKNOWLEDGE).run(20);
    bench.ask(Request.RESET).scan();
    assertEquals(Refusal.CAUSE_PRESENT, bench.last().refused().get(Request.RESET));
  }

  @ParameterizedTest
  @ValueSource(strings = {"airflow", "tachometer"})
  @Verifies(value = "SR-03", side = Side.ALLOWS)
  void aStuckProofThatLetsGoCanBeClearedUnderAHotBathByALookAtAcknowledgement(String which) {
    Bench bench = stuck(which, Proof.PRESENT).bath(45);
    bench.run(10);
    bench.ask(Request.START).run(0.2);
    bench.ask(Request.ACKNOWLEDGE).run(10); // too early: it still sticks
    bench.air(null).run(5);
    bench.ask(Request.ACKNOWLEDGE).scan();
    assertFalse(bench.last().fan(), "the look");
    bench.run(5.9);
    assertFalse(bench.last().fan());
    assertTrue(bench.between().looking());
    bench.run(0.2);
    assertTrue(bench.last().fan(), "only as long as the look");
    assertFalse(bench.between().looking());
    bench.ask(Request.RESET).scan();
    assertEquals(State.OFF, bench.state());
    bench.given(c -> c.setC = 50).ask(Request.START).until(State.HEATING);
  }

  @Test
  @Verifies(value = "SR-03", side = Side.ALLOWS)
  void acknowledgingOnceMoreAfterTheProofWasSeenToLetGoLeavesTheFanOn() {
    Bench bench = stuck("airflow", Proof.PRESENT).bath(45);
    bench.run(10);
    bench.ask(Request.START).run(0.2);
    bench.air(null).ask(Request.ACKNOWLEDGE).run(7);
    assertTrue(bench.last().fan());
    bench.ask(Request.ACKNOWLEDGE).scan();
    assertTrue(bench.last().fan(), "SR-21: there is nothing left to look for");
  }

  @Test
  @Verifies(value = "SR-03", side = Side.WITHHOLDS)
  void whileTheProofSticksEveryResetIsRefusedDuringTheLookToo() {
    Bench bench = stuck("airflow", Proof.PRESENT).bath(45);
    bench.run(10);
    bench.ask(Request.START).run(0.2);
    bench.ask(Request.ACKNOWLEDGE).scan();
    for (int scan = 0; scan < 200; scan++) {
      bench.ask(Request.RESET).scan();
      assertEquals(Refusal.CAUSE_PRESENT, bench.last().refused().get(Request.RESET));
    }
  }

  @Test
  @Verifies(value = "SR-03", side = Side.WITHHOLDS)
  void aProofThatShowsAgainAtTheVeryEndOfTheLookRefusesTheStart() {
    Bench bench = Bench.powerUp().ask(Request.START);
    bench.run(5.9);
    bench.airflow(Proof.PRESENT).scan();
    assertFalse(bench.last().fan());
    bench.scan();
    assertEquals(TripCause.PROOF_STUCK, bench.firstOut());
  }
}
