package trayward.controller.sense;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.calibrate.Correction;
import trayward.controller.port.RawReading;

/** What a calibration changes in the classes of SR-08, and what it must not. */
class CorrectedTrackTest {

  private static final long SECOND = 1_000_000_000L;
  private static final ProbeLimits LIMITS = new ProbeLimits(0, 80, 8, 4 * SECOND);
  private static final ProbeLimits WIDE = new ProbeLimits(-55, 125, 1000, 4 * SECOND);
  private static final Correction UP = new Correction(1, 1.5);
  private static final Correction DOWN = new Correction(1, -1.5);

  private static Reading read(double rawC, ProbeLimits limits, Correction correction) {
    return ProbeTrack.start(0)
        .next(RawReading.frame(rawC, SECOND), SECOND, limits, correction)
        .reading();
  }

  @Test
  @Verifies(value = "SR-08", side = Side.ALLOWS)
  void theCorrectedValueIsWhatIsActedOn() {
    assertEquals(new Reading(ReadingKind.VALID, 41.5, SECOND), read(40, LIMITS, UP));
    assertEquals(new Reading(ReadingKind.VALID, 38.5, SECOND), read(40, LIMITS, DOWN));
  }

  /** Row B1.t: 85 °C is the power-on value (DS18B20 data sheet, read in a secondary source). */
  @ParameterizedTest
  @ValueSource(doubles = {-2, -0.5, 0.5, 2})
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void thePowerOnValueIsRecognisedAsItCame(double offsetK) {
    Reading reading = read(85, WIDE, new Correction(1, offsetK));
    assertEquals(ReadingKind.POWER_ON_VALUE, reading.kind());
    assertEquals(85, reading.celsius());
  }

  @Test
  @Verifies(value = "SR-08", side = Side.ALLOWS)
  void aReadingCorrectedToThePowerOnValueIsAReading() {
    assertEquals(ReadingKind.VALID, read(83.5, WIDE, UP).kind());
    assertEquals(ReadingKind.VALID, read(86.5, WIDE, DOWN).kind());
  }

  @ParameterizedTest
  @EnumSource(
      value = RawReading.Kind.class,
      names = {"ABSENT", "CRC_ERROR", "ALL_ZERO_FRAME"})
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void aReadWithoutATemperatureStaysWhatItWas(RawReading.Kind kind) {
    ProbeTrack track =
        ProbeTrack.start(0).next(RawReading.failed(kind, SECOND), SECOND, LIMITS, UP);
    assertEquals(ReadingKind.valueOf(kind.name()), track.reading().kind());
    assertEquals(Double.NaN, track.reading().celsius());
  }

  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void rangeAndRateAreJudgedOnTheCorrectedValue() {
    assertEquals(ReadingKind.OUT_OF_RANGE, read(79, LIMITS, UP).kind());
    assertEquals(ReadingKind.VALID, read(81, LIMITS, DOWN).kind());
    assertEquals(ReadingKind.OUT_OF_RANGE, read(1, LIMITS, DOWN).kind());
    ProbeTrack track = ProbeTrack.start(0).next(RawReading.frame(40, SECOND), SECOND, LIMITS, UP);
    assertEquals(
        ReadingKind.IMPOSSIBLE_RATE,
        track.next(RawReading.frame(48.0625, 2 * SECOND), 2 * SECOND, LIMITS, UP).reading().kind());
  }

  /** From the lowest to the highest correction there is: 4 K, and 4 K in half a second pass. */
  @Test
  void aNewCorrectionIsSeenWithTheNextScanAndIsNoImpossibleRate() {
    RawReading same = RawReading.frame(40, SECOND);
    ProbeTrack low = ProbeTrack.start(0).next(same, SECOND, LIMITS, new Correction(1, -2));
    ProbeTrack high = low.next(same, SECOND + SECOND / 10, LIMITS, new Correction(1, 2));
    assertEquals(new Reading(ReadingKind.VALID, 42, SECOND), high.reading());
  }
}
