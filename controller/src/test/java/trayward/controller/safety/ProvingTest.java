package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.event.TripCause;

/**
 * SR-02: running is what is proven for 5 s without a break; no proof 30 s after start locks out.
 */
class ProvingTest {

  @Test
  @Verifies(value = "SR-02", side = Side.ALLOWS)
  void airProvenForFiveSecondsFromItsFirstSightIsEnough() {
    Bench bench = Bench.in(State.PROVING);
    bench.run(5.0); // the first of these scans sees the proof for the first time: 4.9 s of it
    assertEquals(State.PROVING, bench.state());
    bench.scan();
    assertEquals(State.PURGING, bench.state());
    assertTrue(bench.last().fan());
  }

  @Test
  @Verifies(value = "SR-02", side = Side.WITHHOLDS)
  void aScanThatCameLateDoesNotCountTheTimeBeforeTheProofWasFirstSeen() {
    Bench bench = Bench.in(State.PROVING);
    bench.late(900).scan(); // the proof may be as young as this scan
    bench.run(4.9);
    assertEquals(State.PROVING, bench.state());
    bench.scan();
    assertEquals(State.PURGING, bench.state());
  }

  @ParameterizedTest
  @CsvSource({"ABSENT,PRESENT", "PRESENT,ABSENT", "PRESENT,UNSURE", "ABSENT,ABSENT"})
  @Verifies(value = "SR-02", side = Side.WITHHOLDS)
  void aBreakOfAnyProofBeginsTheFiveSecondsAnew(Proof airflow, Proof tachometer) {
    Bench bench = Bench.in(State.PROVING);
    bench.run(4.9);
    bench.airflow(airflow).tachometer(tachometer).scan();
    bench.air(null).run(5.0);
    assertEquals(State.PROVING, bench.state());
    bench.scan();
    assertEquals(State.PURGING, bench.state());
  }

  @ParameterizedTest
  @CsvSource({"ABSENT,PRESENT", "PRESENT,ABSENT", "PRESENT,UNSURE", "ABSENT,ABSENT"})
  @Verifies(value = "SR-02", side = Side.WITHHOLDS)
  void thirtySecondsWithoutAllProofsAtOnceLockOut(Proof airflow, Proof tachometer) {
    Bench bench = Bench.in(State.PROVING);
    bench.airflow(airflow).tachometer(tachometer).run(29.9);
    assertEquals(State.PROVING, bench.state());
    bench.scan();
    assertEquals(State.LOCKOUT, bench.state());
    assertEquals(TripCause.AIR_NOT_PROVEN, bench.firstOut());
  }

  @Test
  @Verifies(value = "SR-02", side = Side.WITHHOLDS)
  void proofsThatTakeTurnsNeverProve() {
    Bench bench = Bench.in(State.PROVING);
    for (int i = 0; i < 300; i++) {
      bench.airflow(i % 2 == 0 ? Proof.ABSENT : null);
      bench.tachometer(i % 2 == 1 ? Proof.ABSENT : null);
      bench.scan();
    }
    assertEquals(TripCause.AIR_NOT_PROVEN, bench.firstOut());
  }

  @Test
  @Verifies(value = "SR-02", side = Side.ALLOWS)
  void aFanThatNeedsTwentySecondsIsStillProven() {
    Bench bench = Bench.in(State.PROVING);
    bench.air(Proof.ABSENT).run(20);
    bench.air(null).run(5.1);
    assertEquals(State.PURGING, bench.state());
  }

  @ParameterizedTest
  @CsvSource({
    // rated 1500 1/min; limits 70 to 130 %, at rest below 10 %
    "0,ABSENT",
    "150,ABSENT",
    "151,UNSURE",
    "1049,UNSURE",
    "1050,PRESENT",
    "1500,PRESENT",
    "1950,PRESENT",
    "1951,UNSURE",
    "NaN,ABSENT",
    "-100,ABSENT",
    "Infinity,UNSURE"
  })
  @Verifies(value = "SR-02", side = Side.WITHHOLDS)
  void theTachometerProvesFromSeventyToAHundredAndThirtyPercent(double rpm, Proof expected) {
    assertEquals(expected, Proof.ofTachometer(rpm, 1500, Limits.STANDARD));
  }

  @ParameterizedTest
  @EnumSource(Proof.class)
  @Verifies(value = "SR-02", side = Side.WITHHOLDS)
  void noProofFittedAtAllProvesNothing(Proof only) {
    Conditions c = new Conditions();
    c.airflow = Proof.NOT_FITTED;
    c.tachometer = only;
    assertEquals(only == Proof.PRESENT, c.take(true).airProven());
  }

  @Test
  @Verifies(value = "SR-02", side = Side.WITHHOLDS)
  void theCommandAloneIsNoProof() {
    Bench bench = Bench.in(State.PROVING).air(Proof.ABSENT);
    bench.run(10);
    assertTrue(bench.last().fan());
    assertFalse(bench.last().permitted());
    assertEquals(State.PROVING, bench.state());
    assertEquals(Set.of(), bench.last().tripped());
  }
}
