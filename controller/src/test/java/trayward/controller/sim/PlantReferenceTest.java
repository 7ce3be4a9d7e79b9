package trayward.controller.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Rows E4, E5, E6, E7, E10 and F0 of the check values: simulated from the equations of the
 * reference tray, the liquid's level kept. Where water leaves, it is topped up here in place.
 */
class PlantReferenceTest {

  private static final double STEP_S = 0.1;

  /** Tolerance of section E. */
  private static final double SHARE = 0.02;

  private static final ToDoubleFunction<Plant> BATH = Plant::bathC;
  private static final ToDoubleFunction<Plant> PLATE = Plant::plateC;

  /** F0: hold duty 0.4307, hold plate 45.279 °C, evaporation 45.02 W. */
  @Test
  void theHoldDutyHoldsTheBathAtFortyDegreesAndThePlateAboveIt() {
    Plant plant = new Plant(Trays.startingAt(40, 250));
    run(plant, 4 * 3600, 0.4307 * 250);
    assertEquals(40, plant.bathC(), 0.02);
    assertEquals(45.279, plant.plateC(), 0.02);
  }

  /** E4 and E5: stuck on from the hold at 40 °C, 1 L, uncovered. */
  @ParameterizedTest(name = "{0} W: bath at {1} °C after {2} s")
  @CsvSource({
    "250, 45, 264",
    "250, 50, 562",
    "250, 55, 1090",
    "400, 45, 144",
    "400, 50, 259",
    "400, 55, 394",
    "400, 60, 566"
  })
  void aHeaterStuckOnWarmsTheBathInTheReferenceTime(double heaterW, double bathC, double seconds) {
    Plant plant = Trays.holdingForty(1, heaterW);
    assertEquals(1, secondsUntil(plant, BATH, bathC, heaterW) / seconds, SHARE);
  }

  /** E4 and E5: the plate reaches 70 °C. */
  @ParameterizedTest(name = "{0} W: after {1} s")
  @CsvSource({"250, 1830", "400, 302"})
  void aHeaterStuckOnBringsThePlateToSeventyInTheReferenceTime(double heaterW, double seconds) {
    Plant plant = Trays.holdingForty(1, heaterW);
    assertEquals(1, secondsUntil(plant, PLATE, 70, heaterW) / seconds, SHARE);
  }

  /** E4 and E5: after four hours. */
  @ParameterizedTest(name = "{0} W")
  @CsvSource({"250, 58.7, 71.1", "400, 71.5, 91.8"})
  void fourHoursStuckOnEndWhereLossesBalance(double heaterW, double bathC, double plateC) {
    Plant plant = Trays.holdingForty(1, heaterW);
    run(plant, 4 * 3600, heaterW);
    assertEquals(bathC, plant.bathC(), 0.1);
    assertEquals(plateC, plant.plateC(), 0.1);
  }

  /** E6: the same covered, 250 W, from the hold of the covered tray. */
  @ParameterizedTest(name = "bath at {0} °C after {1} s")
  @CsvSource({"45, 197", "50, 361", "55, 541", "60, 742"})
  void aCoveredTrayStuckOnWarmsFaster(double bathC, double seconds) {
    Plant plant = new Plant(Trays.startingAt(40, 250));
    plant.cover(true);
    run(plant, 4 * 3600, 50 + 0.5 * (20 + 50 / 18.0));
    assertEquals(40, plant.bathC(), 1e-3);
    assertEquals(1, secondsUntil(plant, BATH, bathC, 250) / seconds, SHARE);
  }

  /** E7: a dry plate from 45.3 °C. */
  @ParameterizedTest(name = "{0} W: plate at {1} °C after {2} s")
  @CsvSource({
    "250, 60, 69", "250, 70, 118", "250, 100, 269", "250, 150, 548",
    "400, 60, 42", "400, 70, 71", "400, 100, 161", "400, 150, 320"
  })
  void aDryPlateRunsAwayInTheReferenceTime(double heaterW, double plateC, double seconds) {
    Plant plant = new Plant(Trays.startingAt(45.3, heaterW));
    plant.dry(true);
    assertEquals(1, secondsUntil(plant, PLATE, plateC, heaterW) / seconds, SHARE);
    assertEquals(0, plant.evaporatedMl());
  }

  /** E10: a healthy cold start at 20 °C with 250 W. */
  @ParameterizedTest(name = "{0} K after {1} s")
  @CsvSource({"0.25, 27.4", "0.5, 39.2", "1, 57.6", "2, 87.7", "3, 114.7"})
  void aColdStartShowsInTheBathAfterTheReferenceTime(double riseK, double seconds) {
    Plant plant = new Plant(PlantParameters.REFERENCE);
    assertEquals(1, secondsUntil(plant, BATH, 20 + riseK, 250) / seconds, SHARE);
  }

  private static void run(Plant plant, double seconds, double heatW) {
    double litres = plant.liquidL();
    for (long i = Math.round(seconds / STEP_S); i > 0; i--) {
      plant.advance(STEP_S, heatW);
      plant.refill(litres);
    }
  }

  private static double secondsUntil(
      Plant plant, ToDoubleFunction<Plant> what, double celsius, double heatW) {
    double seconds = 0;
    while (what.applyAsDouble(plant) < celsius) {
      run(plant, STEP_S, heatW);
      seconds += STEP_S;
    }
    return seconds;
  }
}
