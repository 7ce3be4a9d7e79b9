package trayward.host.air;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Air changes against the tables others have printed. */
class RoomTest {

  /**
   * CDC, MMWR 1994;43(RR-13), table S3-1, and guidelines for environmental infection control 2003,
   * appendix B: air changes an hour, minutes to remove 99 % and 99.9 %.
   */
  @ParameterizedTest(name = "{0} air changes an hour")
  @CsvSource({
    "1, 276, 414", "2, 138, 207", "3, 92, 138", "4, 69, 104", "5, 55, 83", "6, 46, 69",
    "7, 39, 59", "8, 35, 52", "9, 31, 46", "10, 28, 41", "11, 25, 38", "12, 23, 35",
    "13, 21, 32", "14, 20, 30", "15, 18, 28", "16, 17, 26", "17, 16, 24", "18, 15, 23",
    "19, 15, 22", "20, 14, 21", "25, 11, 17", "30, 9, 14", "35, 8, 12", "40, 7, 10",
    "45, 6, 9", "50, 6, 8"
  })
  void thePurgeIsThatOfThePrintedTable(double changes, long ninetyNine, long threeNines) {
    assertEquals(ninetyNine, Math.round(Room.ofChanges(changes).purgeMinutes(99)));
    assertEquals(threeNines, Math.round(Room.ofChanges(changes).purgeMinutes(99.9)));
  }

  /** The equation under the same table: t2 - t1 = -[ln(C2/C1)/(Q/V)] 60, C2/C1 = 1 - eff/100. */
  @ParameterizedTest
  @CsvSource({"15, 150, 90", "20, 100, 99", "8, 300, 99.9"})
  void thePurgeIsThatOfTheEquationUnderTheTable(double v, double q, double percent) {
    double expected = -(Math.log(1 - percent / 100) / (q / v)) * 60;
    assertEquals(expected, new Room(v, q, 1).purgeMinutes(percent), expected * 1e-9);
  }

  /**
   * The same source: the time of the table is multiplied by K, 1 for perfect to 10 for very poor.
   */
  @ParameterizedTest
  @ValueSource(doubles = {1, 3, 10})
  void poorMixingMultipliesTheTime(double mixing) {
    assertEquals(
        mixing * new Room(15, 150, 1).purgeMinutes(99),
        new Room(15, 150, mixing).purgeMinutes(99),
        1e-9);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.9, 10.1, Double.NaN})
  void noMixingIsBetterThanPerfectOrWorseThanVeryPoor(double mixing) {
    assertThrows(IllegalArgumentException.class, () -> new Room(15, 150, mixing));
  }

  /** C = (G/Q)(1 - exp(-Q t/V)), recomputed: 100 mg/h into 15 m³ with 150 m³/h. */
  @Test
  void aSourceRisesToItsSteadyConcentration() {
    Room room = new Room(15, 150, 1);
    assertEquals(0.66667, room.steadyMgPerM3(100), 1e-5);
    assertEquals(0.54075, room.mgPerM3After(10, 100, 0), 1e-5);
    Room poor = new Room(15, 150, 3);
    assertEquals(0.85249, poor.mgPerM3After(10, 100, 0), 1e-5);
    assertEquals(2.0, poor.steadyMgPerM3(100), 1e-12);
  }

  /** c = q/(nV)(1 - exp(-nt)), own arithmetic: unit source and volume. */
  @ParameterizedTest
  @CsvSource({"4, 20, 0.1841", "2, 40, 0.3682", "1, 160, 0.9305"})
  void unitSourceInAUnitRoom(double changes, double minutes, double c) {
    assertEquals(c, Room.ofChanges(changes).mgPerM3After(minutes, 1, 0), 5e-5);
  }

  /** V/Q ln(C1/C2), recomputed: from 0.66667 to 0.05 mg/m³ at 10 air changes. */
  @Test
  void withItsSourceOffAConcentrationDecays() {
    Room room = new Room(15, 150, 1);
    assertEquals(15.54, room.minutesBetween(0.66667, 0.05), 0.01);
    assertEquals(0.05, room.mgPerM3After(15.5416, 0, 0.66667), 1e-5);
    assertEquals(0, room.minutesBetween(0.04, 0.05));
  }

  /** G/Q, recomputed: 110 g/h of vapour into 150 and into 7.5 m³/h. */
  @ParameterizedTest
  @CsvSource({"150, 0.733", "7.5, 14.67"})
  void vapourSpreadsOverTheAirThatIsChanged(double flow, double gPerM3) {
    assertEquals(gPerM3, new Room(15, flow, 1).vapourAddedGPerM3(110), 0.005);
  }

  /** Read second-hand 12 (since removed), from memory 10, and 9.144 m³/h m², 3.81 by conversion. */
  @Test
  void recommendationsAreThoseThatWereFound() {
    assertEquals(12, Advice.OLD_RULE.changesPerHour());
    assertEquals(10, Advice.HANDBOOK.changesPerHour());
    assertEquals(9.144, Advice.FLOOR_M3_PER_H_M2, 0.01);
    assertEquals(3.81, Advice.BY_FLOOR.changesPerHour(), 0.01);
    for (Advice each : Advice.values()) {
      assertTrue(each.source().matches(".*(memory|removed|no source).*"), each.source());
    }
  }

  /** 150 m³/h at 1 m/s through 417 cm²; 20 K colder outside 1 kW: own arithmetic. */
  @Test
  void whatGoesOutMustComeInAndBeWarmed() {
    MakeUpAir air = new MakeUpAir(150, 1);
    assertEquals(416.7, air.inletCm2(), 0.1);
    assertEquals(1006, air.heatW(20, 0), 5);
    assertTrue(air.heatW(20, 30) < 0);
    assertThrows(IllegalArgumentException.class, () -> new MakeUpAir(0, 1));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
  void aRoomOfNoVolumeOrAFlowOfNothingIsRefused(double bad) {
    assertThrows(IllegalArgumentException.class, () -> new Room(bad, 150, 1));
    assertThrows(IllegalArgumentException.class, () -> new Room(15, bad, 1));
  }
}
