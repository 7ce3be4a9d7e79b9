package trayward.controller.regulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.sim.HeatFlow;

/** Row F0 of the check values: own integration of the reference tray's equations, recomputed. */
class TrayModelTest {

  private static final TrayModel TRAY = TrayModel.REFERENCE;
  private static final RoomModel ROOM = RoomModel.REFERENCE;

  /** F0: 41.6044 K per unit duty, 905.576 s, 46.943 s, to 1e-3. */
  @Test
  void linearisedAtFortyDegreesItHasTheReferenceGainAndTimes() {
    TrayModel.Linear linear = TRAY.linearAt(40, ROOM);
    relative(41.6044, linear.gainKPerDuty());
    relative(905.576, linear.slowS());
    relative(46.943, linear.fastS());
  }

  /** F0: hold duty 0.4307, hold plate 45.279 °C, evaporation 45.02 W, to 1e-3. */
  @Test
  void holdingFortyDegreesItGivesTheReferenceDutyPlateAndEvaporation() {
    relative(0.4307, TRAY.holdDuty(40, ROOM));
    relative(45.279, TRAY.holdPlateC(40, ROOM));
    relative(45.02, TRAY.evaporationW(40, ROOM));
    relative(45.02 + 2.5 * 20, TRAY.bathLossW(40, ROOM));
  }

  @ParameterizedTest
  @ValueSource(doubles = {22, 30, 40, 50})
  void theGainIsTheSlopeOfTheTemperatureHeldOverTheDuty(double bathC) {
    double duties = TRAY.holdDuty(bathC + 0.05, ROOM) - TRAY.holdDuty(bathC - 0.05, ROOM);
    assertEquals(0.1 / duties, TRAY.linearAt(bathC, ROOM).gainKPerDuty(), 1e-3);
  }

  /** Vieta: the rates of the two lumps add up and multiply to those of their equations. */
  @ParameterizedTest
  @ValueSource(doubles = {22, 40, 50})
  void theTwoTimesAreTheRootsOfTheTwoLumps(double bathC) {
    TrayModel.Linear linear = TRAY.linearAt(bathC, ROOM);
    double slope = TRAY.bathLossW(bathC + 0.5, ROOM) - TRAY.bathLossW(bathC - 0.5, ROOM);
    double sum = (18 + slope) / 4180 + (18 + 0.5) / 1100;
    double product = ((18 + slope) * (18 + 0.5) - 18.0 * 18) / (4180.0 * 1100);
    assertEquals(1, (1 / linear.slowS() + 1 / linear.fastS()) / sum, 1e-4);
    assertEquals(1, 1 / linear.slowS() / linear.fastS() / product, 1e-3);
    assertTrue(linear.slowS() > linear.fastS());
  }

  @Test
  void moreLiquidSlowsTheSlowTimeAndLeavesTheGain() {
    TrayModel three = new TrayModel(3, 0.072, 1100, 18, 2.5, 0.5, 250, 1);
    TrayModel.Linear small = TRAY.linearAt(40, ROOM);
    TrayModel.Linear large = three.linearAt(40, ROOM);
    assertEquals(small.gainKPerDuty(), large.gainKPerDuty(), 1e-9);
    assertTrue(large.slowS() > 2.5 * small.slowS());
  }

  @Test
  void aCoveredTrayEvaporatesNothingAndLosesOnlyDryHeat() {
    TrayModel covered = new TrayModel(1, 0.072, 1100, 18, 2.5, 0.5, 250, 0);
    assertEquals(0, covered.evaporationW(40, ROOM));
    assertEquals(50, covered.bathLossW(40, ROOM), 1e-12);
    assertEquals(40 + 50 / 18.0, covered.holdPlateC(40, ROOM), 1e-12);
    assertEquals((50 + 0.5 * (20 + 50 / 18.0)) / 250, covered.holdDuty(40, ROOM), 1e-12);
  }

  @Test
  void aColdBathUnderDampAirGainsNothingByEvaporation() {
    assertEquals(0, TRAY.evaporationW(5, new RoomModel(25, 0.9, 0.15)));
  }

  @Test
  void evaporationGrowsWithDraughtAndDrynessAsThePoolFormSays() {
    double still = TRAY.evaporationW(40, new RoomModel(20, 0.5, 0));
    double draught = TRAY.evaporationW(40, new RoomModel(20, 0.5, 0.15));
    assertEquals((0.089 + 0.0782 * 0.15) / 0.089, draught / still, 1e-9);
    double dry = TRAY.evaporationW(40, new RoomModel(20, 0, 0));
    double fullW = 1000 * 0.072 * 0.089 * TrayModel.saturationKPa(40);
    assertEquals(fullW, dry, 1e-9);
  }

  @Test
  void aHeaterTooSmallAsksForMoreThanAllOfItself() {
    TrayModel weak = new TrayModel(1, 0.072, 1100, 18, 2.5, 0.5, 100, 1);
    assertTrue(weak.holdDuty(40, ROOM) > 1);
  }

  /**
   * The believed tray and the simulated one use the same vapour pressure, each written for itself.
   */
  @Test
  void believedAndSimulatedVapourPressureAgree() {
    for (double celsius = 0; celsius <= 80; celsius += 0.5) {
      assertEquals(1, TrayModel.saturationKPa(celsius) / HeatFlow.saturationKPa(celsius), 1e-12);
    }
  }

  private static void relative(double expected, double actual) {
    assertEquals(1, actual / expected, 1e-3);
  }
}
