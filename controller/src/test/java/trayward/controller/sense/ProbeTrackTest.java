package trayward.controller.sense;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.Verifies;
import trayward.controller.port.RawReading;

/** Every class of SR-08, and the way back from each. */
class ProbeTrackTest {

  private static final long SECOND = 1_000_000_000L;
  private static final ProbeLimits LIMITS = new ProbeLimits(0, 80, 8, 4 * SECOND);
  private static final ProbeLimits WIDE = new ProbeLimits(-55, 125, 1000, 4 * SECOND);

  @Test
  void beforeAnythingWasReadTheProbeIsAbsent() {
    ProbeTrack start = ProbeTrack.start(7);
    assertEquals(ReadingKind.ABSENT, start.reading().kind());
    assertFalse(start.reading().valid());
    assertFalse(start.everGood());
    assertTrue(Double.isNaN(start.goodCelsius()));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 0.0625, 20, 40, 79.9375, 80})
  @Verifies(value = "SR-08", side = Verifies.Side.ALLOWS)
  void aFreshFrameWithinRangeIsValid(double celsius) {
    ProbeTrack track = ProbeTrack.start(0).next(frame(celsius, 1), SECOND * 7 / 4, LIMITS);
    assertTrue(track.reading().valid());
    assertEquals(new Reading(ReadingKind.VALID, celsius, SECOND), track.reading());
    assertTrue(track.everGood());
    assertEquals(celsius, track.goodCelsius());
    assertEquals(SECOND, track.goodTakenNanos());
  }

  @ParameterizedTest
  @EnumSource(
      value = RawReading.Kind.class,
      names = {"ABSENT", "CRC_ERROR", "ALL_ZERO_FRAME"})
  void aReadWithoutATemperatureIsNamedForWhatItWas(RawReading.Kind kind) {
    ProbeTrack track = good(40, 1).next(RawReading.failed(kind, 2 * SECOND), 2 * SECOND, LIMITS);
    assertEquals(ReadingKind.valueOf(kind.name()), track.reading().kind());
    assertTrue(Double.isNaN(track.reading().celsius()));
    keepsGood(40, 1, track);
  }

  /** Row B1.t: 85 °C is the power-on value (DS18B20 data sheet, read in a secondary source). */
  @Test
  void eightyFiveDegreesIsThePowerOnValueEvenAtFirstAndWhereTheRangeWouldAllowIt() {
    assertEquals(
        ReadingKind.POWER_ON_VALUE,
        ProbeTrack.start(0).next(frame(85, 1), SECOND, WIDE).reading().kind());
    ProbeTrack later = good(84.9375, 1).next(frame(85, 2), 2 * SECOND, WIDE);
    assertEquals(ReadingKind.POWER_ON_VALUE, later.reading().kind());
    keepsGood(84.9375, 1, later);
    assertTrue(good(84.9375, 1).next(frame(85.0625, 2), 2 * SECOND, WIDE).reading().valid());
  }

  @ParameterizedTest
  @ValueSource(
      doubles = {
        -0.0625,
        -55,
        80.0625,
        125,
        Double.NaN,
        Double.POSITIVE_INFINITY,
        Double.NEGATIVE_INFINITY
      })
  void whatThePlaceCannotHaveIsOutOfRange(double celsius) {
    ProbeTrack track = good(40, 1).next(frame(celsius, 2), 2 * SECOND, LIMITS);
    assertEquals(ReadingKind.OUT_OF_RANGE, track.reading().kind());
    keepsGood(40, 1, track);
  }

  @Test
  void aReadingOlderThanTheLimitIsStaleAndFreshOnesAreValidAgain() {
    RawReading old = frame(40, 1);
    ProbeTrack track = good(40, 1);
    assertTrue(track.next(old, 5 * SECOND, LIMITS).reading().valid());
    ProbeTrack stale = track.next(old, 5 * SECOND + 1, LIMITS);
    assertEquals(ReadingKind.STALE, stale.reading().kind());
    keepsGood(40, 1, stale);
    assertSame(stale, stale.next(old, 60 * SECOND, LIMITS));
    assertTrue(stale.next(frame(41, 61), 61 * SECOND, LIMITS).reading().valid());
  }

  @ParameterizedTest(name = "{0} K in {1} s")
  @CsvSource({
    "8, 1, VALID",
    "-8, 1, VALID",
    "8.0625, 1, IMPOSSIBLE_RATE",
    "-8.0625, 1, IMPOSSIBLE_RATE",
    "16, 2, VALID",
    "16.0625, 2, IMPOSSIBLE_RATE",
    "-16.0625, 2, IMPOSSIBLE_RATE"
  })
  void aChangeFasterThanLiquidCanMakeIsImpossible(double kelvin, int seconds, ReadingKind kind) {
    ProbeTrack track =
        good(40, 1).next(frame(40 + kelvin, 1 + seconds), (1 + seconds) * SECOND, LIMITS);
    assertEquals(kind, track.reading().kind());
  }

  @Test
  void withinHalfASecondARateIsJudgedAsOverHalfASecond() {
    long soon = SECOND + 1_000_000;
    ProbeTrack limit = good(40, 1).next(RawReading.frame(44, soon), soon, LIMITS);
    assertTrue(limit.reading().valid());
    ProbeTrack far = good(40, 1).next(RawReading.frame(44.0625, soon), soon, LIMITS);
    assertEquals(ReadingKind.IMPOSSIBLE_RATE, far.reading().kind());
  }

  @Test
  void twoTemperaturesOfOneMomentAreJudgedByTheirRateToo() {
    ProbeTrack track = good(40, 1).next(frame(60, 1), SECOND, LIMITS);
    assertEquals(ReadingKind.IMPOSSIBLE_RATE, track.reading().kind());
    keepsGood(40, 1, track);
  }

  @Test
  void aReadingFromBeforeTheLastGoodOneIsJudgedOverTheShortestSpan() {
    ProbeTrack track = good(40, 3).next(frame(50, 1), 3 * SECOND, LIMITS);
    assertEquals(ReadingKind.IMPOSSIBLE_RATE, track.reading().kind());
  }

  /** 30 K at 8 K/s are believed once 3.75 s have passed since the last good reading. */
  @Test
  void aJumpThatStaysIsBelievedAfterAsLongAsAnHonestChangeWouldTake() {
    ProbeTrack track = good(30, 10);
    for (int s = 11; s <= 13; s++) {
      track = track.next(frame(60, s), s * SECOND, LIMITS);
      assertEquals(ReadingKind.IMPOSSIBLE_RATE, track.reading().kind(), "second " + s);
      keepsGood(30, 10, track);
    }
    track = track.next(frame(60, 14), 14 * SECOND, LIMITS);
    assertTrue(track.reading().valid());
    assertEquals(60, track.goodCelsius());
  }

  @Test
  @Verifies(value = "SR-08", side = Verifies.Side.WITHHOLDS)
  void oneBadReadingAmongGoodOnesLeavesTheLastGoodOneAndTheNextIsBelieved() {
    RawReading[] bad = {
      RawReading.failed(RawReading.Kind.ABSENT, 2 * SECOND),
      RawReading.failed(RawReading.Kind.CRC_ERROR, 2 * SECOND),
      RawReading.failed(RawReading.Kind.ALL_ZERO_FRAME, 2 * SECOND),
      frame(85, 2),
      frame(-40, 2),
      frame(70, 2),
    };
    for (RawReading raw : bad) {
      ProbeTrack track = good(40, 1).next(raw, 2 * SECOND, LIMITS);
      assertFalse(track.reading().valid(), raw.toString());
      keepsGood(40, 1, track);
      ProbeTrack after = track.next(frame(40.125, 3), 3 * SECOND, LIMITS);
      assertTrue(after.reading().valid(), raw.toString());
      keepsGood(40.125, 3, after);
    }
  }

  @Test
  void theSameReadingAgainIsTheSameTrack() {
    ProbeTrack track = good(40, 1);
    assertSame(track, track.next(frame(40, 1), 2 * SECOND, LIMITS));
    RawReading failed = RawReading.failed(RawReading.Kind.CRC_ERROR, 2 * SECOND);
    ProbeTrack bad = track.next(failed, 2 * SECOND, LIMITS);
    assertSame(bad, bad.next(failed, 3 * SECOND, LIMITS));
  }

  @Test
  void anUnchangedTemperatureOfALaterMomentIsANewReading() {
    ProbeTrack track = good(40, 1).next(frame(40, 2), 2 * SECOND, LIMITS);
    assertEquals(2 * SECOND, track.reading().takenNanos());
    keepsGood(40, 2, track);
  }

  private static ProbeTrack good(double celsius, int second) {
    return ProbeTrack.start(0).next(frame(celsius, second), second * SECOND, WIDE);
  }

  private static RawReading frame(double celsius, int second) {
    return RawReading.frame(celsius, second * SECOND);
  }

  private static void keepsGood(double celsius, int second, ProbeTrack track) {
    assertTrue(track.everGood());
    assertEquals(celsius, track.goodCelsius());
    assertEquals(second * SECOND, track.goodTakenNanos());
  }
}
