package trayward.controller.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** What a person does to the tray: pouring, sheets, the cover, and liquid that goes missing. */
class PlantHandlingTest {

  private static final double STEP_S = 0.1;
  private static final int HOUR = 36_000;

  @Test
  void aPourMixesIdeallyAndLeavesThePlateAlone() {
    Plant plant = Trays.holdingForty(1, 250);
    double plateC = plant.plateC();
    double bathC = plant.bathC();
    plant.pour(0.3, 20);
    assertEquals((bathC + 0.3 * 20) / 1.3, plant.bathC(), 1e-9);
    assertEquals(35.38, plant.bathC(), 0.01); // the reference tray page's dip
    assertEquals(1.3, plant.liquidL(), 1e-12);
    assertEquals(plateC, plant.plateC());
  }

  /** After the pour, 1.3 L: the reference tray page's dip to 39.07 °C. */
  @Test
  void aColdSheetMixesAsALumpAndAddsNoLiquid() {
    Plant plant = Trays.holdingForty(1.3, 250);
    plant.sheet(210, 15);
    assertEquals((4180 * 1.3 * 40 + 210 * 15) / (4180 * 1.3 + 210), plant.bathC(), 1e-4);
    assertEquals(39.07, plant.bathC(), 0.01);
    assertEquals(1.3, plant.liquidL(), 1e-12);
  }

  @Test
  void aCoverStopsEvaporationAndItsRemovalStartsItAgain() {
    Plant plant = Trays.holdingForty(1, 250);
    double before = plant.evaporatedMl();
    plant.cover(true);
    assertTrue(plant.covered());
    plant.advance(STEP_S, 100);
    assertEquals(before, plant.evaporatedMl());
    plant.cover(false);
    plant.advance(STEP_S, 100);
    assertTrue(plant.evaporatedMl() > before);
  }

  @Test
  void halfTheLiquidGoneHeatsTwiceAsFastAndItCanBePutBack() {
    Plant whole = Trays.holdingForty(1, 250);
    Plant half = new Plant(whole);
    half.halve();
    assertEquals(0.5, half.liquidL(), 1e-12);
    double bathC = whole.bathC();
    whole.advance(0.001, 0);
    half.advance(0.001, 0);
    double slow = whole.bathC() - bathC;
    half.refill(1);
    assertEquals(1, half.liquidL());
    assertEquals(2 * slow, half.bathC() - bathC, Math.abs(slow) * 0.01 + 1e-12);
  }

  @Test
  void aTrayLeftForDaysKeepsALittleLiquidAndFiniteTemperatures() {
    Plant plant = new Plant(Trays.tray(0.05, 18, 250));
    for (int i = 0; i < 4 * HOUR; i++) {
      plant.advance(STEP_S, 250);
    }
    assertEquals(Plant.MIN_LIQUID_L, plant.liquidL(), 1e-9);
    assertEquals(30, plant.evaporatedMl(), 1e-6);
    assertTrue(plant.bathC() < 70 && plant.bathC() > 20, "bath " + plant.bathC());
  }

  @Test
  void aCopyGoesItsOwnWay() {
    Plant plant = Trays.holdingForty(1, 250);
    Plant copy = new Plant(plant);
    double bathC = plant.bathC();
    copy.pour(1, 20);
    copy.cover(true);
    copy.advance(10, 250);
    assertEquals(bathC, plant.bathC());
    assertEquals(1, plant.liquidL());
    assertFalse(plant.covered());
    assertTrue(copy.covered());
  }
}
