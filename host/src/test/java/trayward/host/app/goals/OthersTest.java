package trayward.host.app.goals;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import trayward.controller.app.Scenario;
import trayward.controller.regulate.IsaPid;
import trayward.controller.regulate.RegulatorInput;
import trayward.controller.sim.Plant;
import trayward.controller.sim.PlantParameters;

/** The regulators compared with, and the bound of a covered bath. */
class OthersTest {

  private static final PlateCeiling CEILING = new PlateCeiling(65);

  private static RegulatorInput in(double bathC, double plateC, int second) {
    long nanos = second * 1_000_000_000L;
    return new RegulatorInput(1, 40, bathC, nanos, plateC, nanos, true, false, nanos);
  }

  /**
   * The reference tray seen through probe and relay has Ku 2.811541 per K and Pu 126.862 s
   * (recomputed in the reference tray's numbers); the rule of 1942 makes 0.6 Ku, Pu/2, Pu/8 of it.
   */
  @Test
  void thePidHasTheGainsOfZieglerAndNicholsForTheBelievedTray() throws Exception {
    Scenario reference = Scenario.parse("reference", "[model]\nliquid_l = 1\nheater_w = 250\n");
    IsaPid tuned = PlainPid.tuned(reference);
    assertEquals(1, tuned.gain() / (0.6 * 2.811541), 1e-4);
    assertEquals(1, tuned.integralS() / (126.862 / 2), 1e-4);
    assertEquals(1, tuned.derivativeS() / (126.862 / 8), 1e-4);
  }

  @Test
  void thePidAsksForEverythingFarBelowAndNothingFarAbove() {
    PlainPid pid = new PlainPid(IsaPid.pid(1.5, 60, 15), CEILING);
    assertEquals(1, pid.duty(in(20, 20, 1)));
    assertEquals(1, pid.duty(in(20, 20, 2)));
    PlainPid hot = new PlainPid(IsaPid.pid(1.5, 60, 15), CEILING);
    assertEquals(0, hot.duty(in(45, 45, 1)));
  }

  /** The ISA form by hand: K e, and after a second at rest K h/Ti e more. */
  @Test
  void thePidIsProportionalAndIntegratesOncePerSample() {
    PlainPid pid = new PlainPid(IsaPid.pid(0.5, 50, 10), CEILING);
    assertEquals(0.25, pid.duty(in(39.5, 45, 1)), 1e-12);
    assertEquals(0.25, pid.duty(in(39.5, 45, 1)), 1e-12);
    assertEquals(0.25 + 0.5 / 50 * 0.5, pid.duty(in(39.5, 45, 2)), 1e-12);
  }

  @Test
  void theThermostatSwitchesAnEighthOfAKelvinAboveAndBelowSet() {
    Thermostat thermostat = new Thermostat(CEILING);
    assertEquals(1, thermostat.duty(in(40.1, 45, 1)));
    assertEquals(0, thermostat.duty(in(40.13, 45, 2)));
    assertEquals(0, thermostat.duty(in(39.9, 45, 3)));
    assertEquals(1, thermostat.duty(in(39.87, 45, 4)));
  }

  @Test
  void bothKeepThePlateUnderItsCeilingAndAskNothingOfABathTheyDoNotKnow() {
    PlainPid pid = new PlainPid(IsaPid.pid(1.5, 60, 15), CEILING);
    Thermostat thermostat = new Thermostat(CEILING);
    assertEquals(0.5, pid.duty(in(30, 63.5, 1)), 1e-12);
    assertEquals(0.5, thermostat.duty(in(30, 63.5, 1)), 1e-12);
    assertEquals(0, pid.duty(in(30, 66, 2)));
    assertEquals(0, thermostat.duty(in(30, 66, 2)));
    assertEquals(1, thermostat.duty(in(30, Double.NaN, 3)));
    assertEquals(0, pid.duty(in(Double.NaN, 40, 3)));
    assertEquals(0, thermostat.duty(in(Double.NaN, 40, 3)));
  }

  /** Energy balance of a tray without losses: what went in is shared by plate and bath. */
  @Test
  void aCoveredTrayWithoutLossesCoastsToWhatItsEnergyMakesOfIt() {
    PlantParameters tray =
        new PlantParameters(
            1, 0.072, 1100, 18, 0, 0, 250, 40, true, 1, 0, 6, 20, 0.5, 0.15, 150, 1500, 3, 4);
    Plant plant = new Plant(tray);
    for (int i = 0; i < 600; i++) {
      plant.advance(0.1, 250);
    }
    assertEquals(40 + 250 * 60 / (1100 + 4180.0), GoalRun.coastPeakC(plant), 1e-3);
  }

  @Test
  void aBathThatOnlyCoolsPeaksWhereItStands() {
    Plant plant = new Plant(PlantParameters.REFERENCE);
    plant.pour(1, 60);
    double nowC = plant.bathC();
    assertTrue(nowC > 35);
    assertEquals(nowC, GoalRun.coastPeakC(plant));
  }
}
