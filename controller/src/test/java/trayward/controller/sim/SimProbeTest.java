package trayward.controller.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.port.RawReading;

/** Cadence, age, lag, rounding and noise as the reference tray page states them. */
class SimProbeTest {

  private static final double STEP_S = 0.1;
  private static final ProbeParameters QUIET = new ProbeParameters(true, 5, 0, 0);

  @Test
  void aReadingComesEverySecondAndIsThreeQuartersOfASecondOld() {
    ProbeBench bench = new ProbeBench(ProbeParameters.BATH, 20, 1).run(600, 20);
    assertEquals(600, bench.readings.size());
    for (int i = 0; i < 600; i++) {
      assertEquals(i + 1, bench.cameS.get(i), 1e-6);
      assertEquals(i + 0.25, bench.readings.get(i).takenNanos() / 1e9, 1e-6);
    }
  }

  @Test
  void aProbeHasAReadingFromTheStart() {
    RawReading first = new SimProbe(QUIET, 21.5, 1).reading();
    assertEquals(RawReading.frame(21.5, -750_000_000L), first);
  }

  @Test
  void everyReadingIsAWholeNumberOfSixteenths() {
    ProbeBench bench = new ProbeBench(ProbeParameters.PLATE, 20, 9).run(1000, 43.21);
    for (RawReading reading : bench.readings) {
      assertEquals(Math.rint(reading.celsius() * 16), reading.celsius() * 16);
    }
  }

  @ParameterizedTest(name = "lag {0} s")
  @ValueSource(doubles = {3, 5, 15})
  void aStepIsFollowedWithTheLag(double lagS) {
    ProbeBench bench = new ProbeBench(new ProbeParameters(true, lagS, 0, 0), 20, 1).run(100, 60);
    for (RawReading reading : bench.readings) {
      double takenS = reading.takenNanos() / 1e9;
      double expected = 20 + 40 * -Math.expm1(-takenS / lagS);
      assertEquals(expected, reading.celsius(), 1 / 32.0 + 0.01, "at " + takenS);
    }
  }

  @Test
  void afterOneLagSixtyThreePercentOfAStepIsSeen() {
    // A lag of 5.25 s ends at the moment of a reading.
    ProbeBench bench = new ProbeBench(new ProbeParameters(true, 5.25, 0, 0), 0, 1).run(6, 100);
    assertEquals(5_250_000_000L, bench.last().takenNanos());
    assertEquals(100 * (1 - Math.exp(-1)), bench.last().celsius(), 0.05);
  }

  @Test
  void aProbeWithoutLagReadsWhatIsThere() {
    ProbeBench bench = new ProbeBench(new ProbeParameters(true, 0, 0, 0), 20, 1).run(2, 55.5);
    assertEquals(55.5, bench.last().celsius());
  }

  /** One kelvin, against which a sixteenth does not matter: 30000 readings give 1 +- 0.02. */
  @Test
  void theNoiseHasItsStandardDeviationAndNoMean() {
    ProbeBench bench = new ProbeBench(new ProbeParameters(true, 5, 1, 0), 40, 4).run(30_000, 40);
    double sum = 0;
    double squares = 0;
    for (RawReading reading : bench.readings) {
      double off = reading.celsius() - 40;
      sum += off;
      squares += off * off;
    }
    double mean = sum / bench.readings.size();
    assertEquals(0, mean, 0.02);
    assertEquals(1, Math.sqrt(squares / bench.readings.size() - mean * mean), 0.02);
  }

  @Test
  void theParametersOffsetIsReadOnTop() {
    ProbeBench bench = new ProbeBench(new ProbeParameters(true, 5, 0, -1.5), 40, 1).run(5, 40);
    assertEquals(38.5, bench.last().celsius());
  }

  @Test
  void oneSeedGivesOneSequenceAndAnotherSeedAnother() {
    ProbeBench first = new ProbeBench(ProbeParameters.BATH, 20, 7).run(300, 40);
    ProbeBench again = new ProbeBench(ProbeParameters.BATH, 20, 7).run(300, 40);
    ProbeBench other = new ProbeBench(ProbeParameters.BATH, 20, 8).run(300, 40);
    assertEquals(first.readings, again.readings);
    assertNotEquals(first.readings, other.readings);
  }

  @ParameterizedTest
  @CsvSource({"ABSENT, ABSENT", "CRC, CRC_ERROR", "ALL_ZERO, ALL_ZERO_FRAME"})
  void aFaultThatBringsNoTemperatureSaysWhich(ProbeFault fault, RawReading.Kind kind) {
    ProbeBench bench = new ProbeBench(QUIET, 40, 1).run(3, 40);
    bench.probe.fault(fault, 0);
    bench.run(3, 40);
    assertEquals(kind, bench.last().kind());
    assertTrue(Double.isNaN(bench.last().celsius()));
    assertEquals(6, bench.last().takenNanos() / 1e9, 1e-6);
    bench.probe.fault(ProbeFault.NONE, 0);
    bench.run(1, 40);
    assertEquals(RawReading.frame(40, 6_250_000_000L), bench.last());
  }

  /** Row B1.t: 85 °C (DS18B20 data sheet, read in a secondary source). */
  @Test
  void aProbeThatLostPowerSaysEightyFiveDegreesWithAGoodFrame() {
    ProbeBench bench = new ProbeBench(ProbeParameters.BATH, 40, 1).run(3, 40);
    bench.probe.fault(ProbeFault.POWER_ON_VALUE, 0);
    bench.run(1, 40);
    assertEquals(RawReading.frame(85, 3_250_000_000L), bench.last());
  }

  @Test
  void aFrozenProbeKeepsItsValueAndGivesItFreshTimes() {
    ProbeBench bench = new ProbeBench(QUIET, 40, 1).run(3, 40);
    bench.probe.fault(ProbeFault.FROZEN, 0);
    bench.run(60, 50);
    assertEquals(RawReading.frame(40, 62_250_000_000L), bench.last());
    bench.probe.fault(ProbeFault.NONE, 0);
    bench.run(1, 50);
    assertEquals(50, bench.last().celsius(), 0.1);
  }

  @Test
  void anOffsetIsReadOnTopWhileItLasts() {
    ProbeBench bench = new ProbeBench(QUIET, 40, 1);
    bench.probe.fault(ProbeFault.OFFSET, -4);
    assertEquals(36, bench.run(1, 40).last().celsius());
    bench.probe.fault(ProbeFault.NONE, -4);
    assertEquals(40, bench.run(1, 40).last().celsius());
  }

  /** Common practice: about ten times slower in air. */
  @Test
  void aProbeInAirFollowsTheRoomTenTimesMoreSlowly() {
    ProbeBench bench = new ProbeBench(new ProbeParameters(true, 5, 0, 0), 60, 1);
    bench.probe.fault(ProbeFault.IN_AIR, 0);
    bench.run(51, 60);
    assertEquals(20 + 40 * Math.exp(-50.25 / 50), bench.last().celsius(), 0.05);
    assertTrue(bench.run(1000, 60).last().celsius() < 20.1);
  }

  @Test
  void aFaultDoesNotShiftTheNoiseThatFollows() {
    ProbeBench well = new ProbeBench(ProbeParameters.BATH, 40, 3).run(200, 40);
    for (ProbeFault fault : ProbeFault.values()) {
      if (fault == ProbeFault.IN_AIR) {
        continue; // it truly cools, and warms again
      }
      ProbeBench ill = new ProbeBench(ProbeParameters.BATH, 40, 3).run(50, 40);
      ill.probe.fault(fault, 1);
      ill.run(50, 40);
      ill.probe.fault(ProbeFault.NONE, 0);
      ill.run(100, 40);
      assertEquals(well.readings.subList(100, 200), ill.readings.subList(100, 200), fault.name());
    }
  }

  /** A computer that slept: the next readings are of now, not of a time that was skipped. */
  @ParameterizedTest(name = "sleep begins {0} s into a second")
  @ValueSource(doubles = {0.1, 0.5})
  void afterALeapOfTimeTheNextReadingsAreFreshAndTrue(double intoS) {
    SimProbe probe = new SimProbe(QUIET, 40, 1);
    probe.advance(0, intoS, 40, 20);
    double leapS = 10_000;
    for (int i = 0; i < 30; i++) {
      double fromS = leapS + i * STEP_S;
      probe.advance(fromS, fromS + STEP_S, 39, 20);
      double celsius = probe.reading().celsius();
      assertTrue(celsius <= 40 && celsius >= 39, "read " + celsius + " in step " + i);
    }
    double ageS = leapS + 3 - probe.reading().takenNanos() / 1e9;
    assertTrue(ageS >= 0.75 - 1e-6 && ageS < 1.8, "age " + ageS);
  }
}
