package trayward.controller.scan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.calibrate.Correction;
import trayward.controller.event.TripCause;
import trayward.controller.port.ProbeRole;
import trayward.controller.port.RawReading;
import trayward.controller.safety.Limit;
import trayward.controller.safety.Limits;
import trayward.controller.safety.Request;
import trayward.controller.safety.State;
import trayward.controller.sense.ReadingKind;

/** Calibrated probes in whole scans: when a correction is taken, and what the limits see. */
class CorrectedProbesTest {

  private static final double HARD_C = Limits.STANDARD.get(Limit.BATH_HARD_C);

  private static Answer correct(Deck deck, ProbeRole role, double slope, double offsetK) {
    var answer = deck.mailbox.correct(role, new Correction(slope, offsetK));
    deck.scan();
    return answer.join();
  }

  /** The bath probe says this from now on, and the track has time to believe it. */
  private static Snapshot bathReads(Deck deck, double rawC) {
    deck.bathProbe = raw -> RawReading.frame(rawC, raw.takenNanos());
    return deck.run(15);
  }

  @Test
  void anOffsetIsSeenByEverythingFromTheNextScanOn() {
    Deck deck = new Deck();
    double before = bathReads(deck, 20).bath().celsius();
    assertEquals(Answer.DONE, correct(deck, ProbeRole.BATH, 1, -0.75));
    Snapshot after = deck.scan();
    assertEquals(20, before);
    assertEquals(19.25, after.bath().celsius());
    assertEquals(20, after.probes().bath().raw().celsius());
    assertEquals(new Correction(1, -0.75), after.probes().bath().correction());
    assertTrue(
        deck.told.stream()
            .anyMatch(e -> e.detail().equals("corrected: slope 1.0000, offset -0.75 K")));
  }

  /** SR-06: the trip at the hard limit, with a probe that reads low and one that reads high. */
  @ParameterizedTest
  @CsvSource({"1.5", "-1.5", "2", "-2", "0"})
  @Verifies(value = "SR-06", side = Side.WITHHOLDS)
  void theHardLimitTripsOnTheCorrectedBath(double offsetK) {
    Deck deck = new Deck();
    deck.run(5);
    assertEquals(Answer.DONE, correct(deck, ProbeRole.BATH, 1, offsetK));
    Snapshot at = bathReads(deck, HARD_C - offsetK);
    assertEquals(Optional.of(TripCause.BATH_TOO_HOT), at.firstOut());
  }

  @ParameterizedTest
  @ValueSource(doubles = {1.5, -1.5, 2, -2, 0})
  @Verifies(value = "SR-06", side = Side.ALLOWS)
  void aStepUnderTheHardLimitDoesNotTrip(double offsetK) {
    Deck deck = new Deck();
    deck.run(5);
    assertEquals(Answer.DONE, correct(deck, ProbeRole.BATH, 1, offsetK));
    Snapshot under = bathReads(deck, HARD_C - offsetK - 1.0 / 16);
    assertEquals(Optional.empty(), under.firstOut());
  }

  /** The worst record there can be raises the true bath at the trip by the bound and no more. */
  @ParameterizedTest
  @CsvSource({"1, -2", "0.99, -1.29"})
  @Verifies(value = "SR-06", side = Side.WITHHOLDS)
  void noCalibrationRaisesTheBathAtTheTripByMoreThanItsBound(double slope, double offsetK) {
    Deck deck = new Deck();
    deck.run(5);
    assertEquals(Answer.DONE, correct(deck, ProbeRole.BATH, slope, offsetK));
    Snapshot at = bathReads(deck, HARD_C + Correction.BOUND_K);
    assertEquals(Optional.of(TripCause.BATH_TOO_HOT), at.firstOut());
  }

  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void thePowerOnValueIsRecognisedThroughACorrection() {
    Deck deck = new Deck();
    deck.run(5);
    correct(deck, ProbeRole.BATH, 1, 0.5);
    deck.bathProbe = raw -> RawReading.frame(85, raw.takenNanos());
    assertEquals(ReadingKind.POWER_ON_VALUE, deck.run(2).bath().kind());
    deck.bathProbe = raw -> RawReading.failed(RawReading.Kind.ALL_ZERO_FRAME, raw.takenNanos());
    assertEquals(ReadingKind.ALL_ZERO_FRAME, deck.run(2).bath().kind());
  }

  @ParameterizedTest
  @EnumSource(
      value = State.class,
      names = {"PROVING", "PURGING", "READY", "HEATING"})
  @Verifies(value = "SR-06", side = Side.WITHHOLDS)
  void inARunNoCorrectionIsTaken(State state) {
    Deck deck = new Deck();
    var unused = deck.ask(Request.START);
    deck.until(state);
    Answer answer = correct(deck, ProbeRole.BATH, 1, -0.5);
    assertFalse(answer.accepted());
    assertEquals(
        "a probe is calibrated at rest, in OFF or AFTER_RUN with heat off, not in " + state,
        answer.reason());
    assertEquals(Correction.NONE, deck.scan().probes().bath().correction());
  }

  @Test
  @Verifies(value = "SR-06", side = Side.WITHHOLDS)
  void inLockoutNoCorrectionIsTaken() {
    Deck deck = new Deck();
    bathReads(deck, 60);
    assertEquals(State.LOCKOUT, deck.scan().state());
    assertFalse(correct(deck, ProbeRole.BATH, 1, -2).accepted());
  }

  @Test
  void inAfterRunACorrectionIsTaken() {
    Deck deck = Deck.heating();
    var unused = deck.ask(Request.STOP);
    deck.until(State.AFTER_RUN);
    assertEquals(Answer.DONE, correct(deck, ProbeRole.PLATE, 1, 0.5));
  }

  @Test
  void aProbeThatIsNotFittedAndACorrectionNoProbeNeedsAreRefused() {
    Deck deck = new Deck();
    deck.run(5);
    assertEquals("no such probe is fitted", correct(deck, ProbeRole.SECOND_BATH, 1, 0).reason());
    assertFalse(correct(deck, ProbeRole.BATH, 1, 2.01).accepted());
    assertFalse(correct(deck, ProbeRole.BATH, 1.03, 0).accepted());
    assertFalse(correct(deck, ProbeRole.BATH, Double.NaN, 0).accepted());
  }

  /** From ice into a warm flask and back, and corrections from one end to the other. */
  @Test
  void whatAPersonDoesToCalibrateTripsNothing() {
    Deck deck = new Deck();
    deck.run(5);
    bathReads(deck, 0.5);
    deck.run(60);
    assertEquals(Answer.DONE, correct(deck, ProbeRole.BATH, 1, -2));
    deck.run(60);
    assertEquals(Answer.DONE, correct(deck, ProbeRole.BATH, 1, 2));
    bathReads(deck, 40);
    deck.run(120);
    assertEquals(Answer.DONE, correct(deck, ProbeRole.PLATE, 1, 2));
    Snapshot after = bathReads(deck, 20);
    assertEquals(State.OFF, after.state());
    assertEquals(Optional.empty(), after.firstOut());
  }

  /** A healthy tray with a slope and an offset: a whole run to HOLDING, and nothing trips. */
  @ParameterizedTest
  @CsvSource({"1.02, 0.5, 1, 0", "0.98, -0.5, 1, 0", "1, 0.5, 1, -0.5", "1, -0.5, 1.01, 0.5"})
  @Verifies(value = "SR-06", side = Side.ALLOWS)
  void aCalibratedTrayHeatsAndHolds(double slope, double offsetK, double plate, double plateK) {
    Deck deck = new Deck();
    deck.run(5);
    assertEquals(Answer.DONE, correct(deck, ProbeRole.BATH, slope, offsetK));
    assertEquals(Answer.DONE, correct(deck, ProbeRole.PLATE, plate, plateK));
    var unused = deck.ask(Request.START);
    deck.until(State.HOLDING);
    Snapshot held = deck.run(600);
    assertEquals(State.HOLDING, held.state());
    assertEquals(40, held.bath().celsius(), 0.3);
    assertEquals((40 - offsetK) / slope, held.probes().bath().raw().celsius(), 0.3);
  }
}
