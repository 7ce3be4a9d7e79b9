package trayward.controller.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Rows F1 to F3 of the check values: simulated from the equations of the reference tray. */
class TimeOptimalTest {

  private static final double STEP_S = 0.1;
  private static final double BAND_K = 0.2;
  private static final double PLATE_LIMIT_C = 75;
  private static final double TOLERANCE_S = 0.5;

  /**
   * F1 and F2: 20 to 40 °C with the liquid's level kept. With its loss the bound is a bit lower.
   */
  @ParameterizedTest(name = "{0} L, {1} W/K, {2} W: {3} s")
  @CsvSource({
    "1, 18, 250, 612.2",
    "1, 12, 250, 648.2",
    "1, 25, 250, 592.6",
    "2, 18, 250, 1059.4",
    "3, 18, 250, 1505.1",
    "1, 18, 400, 369.4",
    "1, 12, 400, 406.1"
  })
  void aWarmUpTakesTheReferenceTime(
      double litres, double coupling, double heaterW, double seconds) {
    Plant plant = new Plant(Trays.tray(litres, coupling, heaterW));
    double kept =
        TimeOptimal.secondsToBandLevelKept(plant, 40, PLATE_LIMIT_C, BAND_K).orElseThrow();
    assertEquals(seconds, kept, TOLERANCE_S);
    double lost = bound(plant, 40);
    assertTrue(lost < kept && lost > 0.995 * kept, "with the liquid lost: " + lost);
  }

  /** F3: 0.3 L at 20 °C into the steady hold. */
  @Test
  void aPourIsMadeUpForInTheReferenceTime() {
    Plant plant = Trays.holdingForty(1, 250);
    plant.pour(0.3, 20);
    double seconds =
        TimeOptimal.secondsToBandLevelKept(plant, 40, PLATE_LIMIT_C, BAND_K).orElseThrow();
    assertEquals(201.1, seconds, TOLERANCE_S);
  }

  /**
   * F3: a sheet of 210 J/K at 15 °C into the 1.3 L the pour left; the reference leaves the sheet's
   * heat capacity in the bath. The plant takes the sheet out again, and so is back sooner.
   */
  @Test
  void aColdSheetIsMadeUpForInTheReferenceTime() {
    Plant plant = Trays.holdingForty(1.3, 250);
    plant.sheet(210, 15);
    double sooner = bound(plant, 40);
    plant.refill(1.3 + 210 / HeatFlow.LITRE_J_PER_K);
    double seconds =
        TimeOptimal.secondsToBandLevelKept(plant, 40, PLATE_LIMIT_C, BAND_K).orElseThrow();
    assertEquals(64.7, seconds, TOLERANCE_S);
    assertTrue(sooner < seconds && sooner > 0.96 * seconds, "without the sheet " + sooner);
  }

  /** By trying a switching time each 0.3 s, with the plate held by a thermostat. */
  @ParameterizedTest(name = "plate limit {0} °C")
  @ValueSource(doubles = {75, 60, 52})
  void noSwitchingTimeTriedIsSoonerThanTheBound(double plateLimitC) {
    Plant start = new Plant(Trays.tray(1, 12, 400));
    double bound = TimeOptimal.secondsToBand(start, 40, plateLimitC, BAND_K).orElseThrow();
    Plant plant = new Plant(start);
    double soonest = Double.POSITIVE_INFINITY;
    for (int i = 0; plant.bathC() < 40 + BAND_K; i++) {
      plant.advance(STEP_S, plant.plateC() < plateLimitC ? 400 : 0);
      if (plant.bathC() > 38 && i % 3 == 0) {
        soonest = Math.min(soonest, coastedEntryS(plant, (i + 1) * STEP_S, bound));
      }
    }
    assertEquals(bound, soonest, 0.5);
  }

  /** Entry time when switched off now; endless where the coast leaves the band or misses it. */
  private static double coastedEntryS(Plant now, double nowS, double boundS) {
    Plant plant = new Plant(now);
    double entryS = plant.bathC() >= 40 - BAND_K ? Math.min(nowS, boundS) : Double.NaN;
    double beforeC = Double.NEGATIVE_INFINITY;
    for (int i = 1; plant.bathC() > beforeC; i++) {
      beforeC = plant.bathC();
      plant.advance(STEP_S, 0);
      if (Double.isNaN(entryS) && plant.bathC() >= 40 - BAND_K) {
        entryS = nowS + i * STEP_S;
      }
    }
    boolean stays = beforeC <= 40 + BAND_K && !Double.isNaN(entryS);
    return stays ? entryS : Double.POSITIVE_INFINITY;
  }

  @Test
  void aLowerPlateLimitTakesLongerWhereItBinds() {
    Plant plant = new Plant(Trays.tray(1, 12, 400));
    double at75 = bound(plant, 40);
    double at60 = TimeOptimal.secondsToBand(plant, 40, 60, BAND_K).orElseThrow();
    double at52 = TimeOptimal.secondsToBand(plant, 40, 52, BAND_K).orElseThrow();
    assertTrue(at75 < at60 && at60 < at52, at75 + " " + at60 + " " + at52);
  }

  @ParameterizedTest
  @ValueSource(doubles = {45, 41, 40.5, 40.21})
  void aBathTooHotCoolsIntoTheBandWithHeatOff(double startC) {
    Plant plant = new Plant(Trays.startingAt(startC, 250));
    double seconds = bound(plant, 40);
    for (long i = Math.round(seconds / STEP_S); i > 0; i--) {
      plant.advance(STEP_S, 0);
    }
    assertTrue(seconds > 0);
    assertEquals(40.2, plant.bathC(), 0.002);
  }

  /** A plate at 70 °C under a bath at 39.9 °C carries it past the band, whatever is done. */
  @Test
  void aBathInsideTheBandThatMustLeaveItIsThereOnlyWhenItHasComeBack() {
    Plant plant = Trays.holdingForty(1, 400);
    while (plant.plateC() < 70) {
      plant.advance(STEP_S, 400);
    }
    plant.pour(0.4 * plant.liquidL(), (1.4 * 39.9 - plant.bathC()) / 0.4);
    assertEquals(39.9, plant.bathC(), 1e-9);
    double seconds = bound(plant, 40);
    assertTrue(seconds > 100, "back after " + seconds);
  }

  @ParameterizedTest
  @ValueSource(doubles = {39.85, 40, 40.15})
  void aBathInsideTheBandThatCanStayIsThereAtOnce(double bathC) {
    Plant plant = Trays.holdingForty(1, 250);
    plant.pour(0.1, (1.1 * bathC - plant.bathC()) / 0.1);
    assertEquals(bathC, plant.bathC(), 1e-9);
    assertEquals(0, bound(plant, 40));
  }

  /** 100 W hold less than 39 °C: 40 °C is out of reach, and what they hold is the end of it. */
  @Test
  void aHeaterTooWeakNeverArrivesUnlessItEndsInsideTheBand() {
    Plant plant = new Plant(Trays.tray(1, 18, 100));
    assertTrue(TimeOptimal.secondsToBand(plant, 40, PLATE_LIMIT_C, BAND_K).isEmpty());
    Plant steady = new Plant(plant);
    for (int i = 0; i < 6 * 36_000; i++) {
      steady.advance(STEP_S, 100);
    }
    assertTrue(steady.bathC() < 39, "steady " + steady.bathC());
    double seconds = bound(plant, steady.bathC() + 0.1);
    assertTrue(seconds > 1000 && seconds < 6 * 3600, "there after " + seconds);
  }

  @Test
  void aDryTrayNeverArrives() {
    Plant plant = new Plant(PlantParameters.REFERENCE);
    plant.dry(true);
    assertTrue(TimeOptimal.secondsToBand(plant, 40, PLATE_LIMIT_C, BAND_K).isEmpty());
  }

  @Test
  void aRoomHotterThanTheBandNeverLetsTheBathCoolIntoIt() {
    Plant plant = new Plant(Trays.tray(new Trays.Change(1, 18, 250, 45, 0), 50, 0.99));
    assertTrue(TimeOptimal.secondsToBand(plant, 40, PLATE_LIMIT_C, BAND_K).isEmpty());
  }

  @Test
  void aWallThatMustBeWarmedTooTakesLonger() {
    Plant walled = new Plant(Trays.tray(new Trays.Change(1, 18, 250, 20, 600)));
    double more = bound(walled, 40) - bound(new Plant(PlantParameters.REFERENCE), 40);
    assertTrue(more > 30 && more < 90, "longer by " + more);
  }

  @Test
  void thePlantLookedAtIsLeftAlone() {
    Plant plant = Trays.holdingForty(1, 250);
    plant.pour(0.3, 20);
    Plant before = new Plant(plant);
    assertTrue(bound(plant, 40) > 0);
    assertEquals(before.bathC(), plant.bathC());
    assertEquals(before.plateC(), plant.plateC());
    assertEquals(before.liquidL(), plant.liquidL());
    assertEquals(before.energyJ(), plant.energyJ());
  }

  private static double bound(Plant plant, double setC) {
    return TimeOptimal.secondsToBand(plant, setC, PLATE_LIMIT_C, BAND_K).orElseThrow();
  }
}
