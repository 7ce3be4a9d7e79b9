package trayward.controller.regulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import trayward.controller.sim.Plant;
import trayward.controller.sim.PlantParameters;

/** The hold of the reference tray against row F0 of the check values and against the plant. */
class HoldPointTest {

  private static HoldPoint at(double setC, double plateC, double bathC) {
    return HoldPoint.at(setC, new TrayObserver(Believed.REFERENCE, Believed.ROOM, bathC, plateC));
  }

  /** F0: hold duty 0.4307, hold plate 45.279 °C, to 1e-3. */
  @Test
  void theTrayIsHeldByThePublishedDutyAndPlate() {
    HoldPoint hold = at(40, 45.279, 40);
    assertEquals(0.4307, hold.duty(), 1e-3 * 0.4307);
    assertEquals(45.279, hold.plateC(), 1e-3);
  }

  @Test
  void atTheHoldNothingIsToSettleAndTheHoldingDutyIsAsked() {
    HoldPoint hold = at(40, 45.279, 40);
    assertEquals(0, hold.settlingK(hold.plateC(), 40), 1e-12);
    assertEquals(hold.duty(), hold.dutyFor(0, 10), 1e-12);
    assertEquals(40, hold.coastPeakC(hold.plateC(), 40), 1e-3);
  }

  /** A coast is followed on a straight line about the hold: near it as the plant goes. */
  @ParameterizedTest(name = "plate {0}, bath {1}")
  @CsvSource({"51, 39.5", "50, 39", "48, 39.8", "60, 38", "52, 40.5"})
  void aCoastPeaksWhereThePlantDoes(double plateC, double bathC) {
    Plant plant = coasting(plateC, bathC);
    double peak = plant.bathC();
    for (int i = 0; i < 6000; i++) {
      plant.advance(0.1, 0);
      peak = Math.max(peak, plant.bathC());
    }
    assertEquals(peak, at(40, plateC, bathC).coastPeakC(plant(plateC, bathC), bathC), 0.02);
  }

  private static double plant(double plateC, double bathC) {
    return coasting(plateC, bathC).plateC();
  }

  @Test
  void aBathThatFallsAlreadyPeaksNow() {
    assertEquals(39.7, at(40, 39, 39.7).coastPeakC(39, 39.7), 1e-12);
  }

  /** The heat off at F1's 602.6 s: the coast peaks at 40 °C. */
  @Test
  void atThePublishedSwitchingTimeTheCoastEndsAtSet() {
    TrayRun run = new TrayRun(Believed.rates(), 5, 3, 20, 20);
    for (int s = 0; s < 603; s++) {
      run.second(s < 602 ? 1 : 0.6);
      run.share = 1;
    }
    assertEquals(40, at(40, run.plateC, run.bathC).coastPeakC(run.plateC, run.bathC), 0.03);
  }

  /** Left under the holding duty, the bath's way dies with F0's 46.9 s and then with 905.6 s. */
  @ParameterizedTest(name = "plate off by {0} K, bath by {1} K")
  @CsvSource({"1, 0", "0, 0.3", "-2, 0.2"})
  void whatIsToSettleIsWhatIsLeftOnceThePlateHasComeToRest(double plateOffK, double bathOffK) {
    HoldPoint hold = at(40, 45.279, 40);
    double p = plateOffK;
    double q = bathOffK;
    double h = 0.01;
    for (int i = 0; i < 40_000; i++) {
      double dp = hold.plateFromBathPerS() * q - hold.plateSelfPerS() * p;
      double dq = hold.bathFromPlatePerS() * p - hold.bathSelfPerS() * q;
      p += h * dp;
      q += h * dq;
    }
    double settling = hold.settlingK(hold.plateC() + plateOffK, 40 + bathOffK);
    assertEquals(settling * Math.exp(-400 / 905.576), q, 0.003);
  }

  /** The duty asked brings what is to settle to nought with the time constant asked for. */
  @Test
  void whatIsToSettleGoesWithTheTimeConstantAskedFor() {
    HoldPoint hold = at(40, 45.279, 40);
    double p = 0;
    double q = -0.1;
    double began = hold.settlingK(hold.plateC(), 39.9);
    double h = 0.001;
    for (int i = 0; i < 10_000; i++) {
      double settling = hold.settlingK(hold.plateC() + p, 40 + q);
      double u = hold.dutyFor(settling, 10) - hold.duty();
      double dp = hold.heatKPerS() * u + hold.plateFromBathPerS() * q - hold.plateSelfPerS() * p;
      double dq = hold.bathFromPlatePerS() * p - hold.bathSelfPerS() * q;
      p += h * dp;
      q += h * dq;
    }
    double left = hold.settlingK(hold.plateC() + p, 40 + q) / began;
    assertEquals(Math.exp(-1), left, 0.02);
  }

  /** Half the liquid and a wall 2 K colder: F0's 95.02 W and 12 W more, whatever the liquid. */
  @Test
  void theHoldReckonsWithTheWallAndNotWithTheLiquid() {
    TrayRates walled = TrayRates.of(new TrayBelief(TrayModel.REFERENCE, 5, 3, 600), Believed.ROOM);
    TrayBelief belief = new TrayBelief(TrayModel.REFERENCE, 5, 3, 600);
    TrayObserver o = new TrayObserver(belief, Believed.ROOM, 40, 45);
    TrayRun run = new TrayRun(walled, 5, 3, 45, 40);
    run.share = 0.5;
    run.wallC = 38;
    o.place(run, 0.1);
    HoldPoint hold = HoldPoint.at(40, o);
    double plateC = 40 + (95.02 + 12) / 18;
    assertEquals(plateC, hold.plateC(), 2e-3);
    assertEquals((95.02 + 12 + 0.5 * (plateC - 20)) / 250, hold.duty(), 1e-4);
    assertEquals(2 * 18.0 / 4180, hold.bathFromPlatePerS(), 1e-12);
    assertEquals(2 * (18 + 5.355) / 4180, hold.bathSelfPerS(), 2e-5);
    assertEquals(2 * 6.0 / 4180, hold.bathWallPerS(), 1e-12);
  }

  @Test
  void aHeaterTooSmallForTheHoldShowsADutyAboveOne() {
    assertTrue(at(60, 80, 60).duty() > 1);
  }

  private static Plant coasting(double plateC, double bathC) {
    return TrayPlants.standing(PlantParameters.REFERENCE, plateC, bathC);
  }
}
