package trayward.controller.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The plant against an adaptive integrator of a mathematics library and against the conservation of
 * energy. The equations of the comparison are written anew.
 */
class PlantTest {

  private static final double STEP_S = 0.1;
  private static final int HOUR = 36_000;

  /** Plate, bath and wall in °C and liquid in L, as the reference tray page states them. */
  private record Equations(double heatW, double wallJPerK) implements OrdinaryDifferentialEquation {

    @Override
    public int getDimension() {
      return 4;
    }

    @Override
    public double[] computeDerivatives(double t, double[] y) {
      double evaporationW = evaporationW(y[1]);
      double toWall = wallJPerK > 0 ? 6 * (y[1] - y[2]) : 0;
      return new double[] {
        (heatW - 18 * (y[0] - y[1]) - 0.5 * (y[0] - 20)) / 1100,
        (18 * (y[0] - y[1]) - 2.5 * (y[1] - 20) - evaporationW - toWall) / (4180 * y[3]),
        wallJPerK > 0 ? toWall / wallJPerK : 0,
        -evaporationW / latentJPerG(y[1]) / 1000
      };
    }
  }

  @ParameterizedTest(name = "wall of {0} J/K")
  @ValueSource(doubles = {0, 600})
  void anHourOfRelayPulsesAgreesWithAnAdaptiveIntegratorToAMicrokelvin(double wallJPerK) {
    Plant plant = new Plant(Trays.tray(new Trays.Change(1, 18, 250, 20, wallJPerK)));
    Random random = new Random(853);
    double[] y = {20, 20, 20, 1};
    for (int cycle = 0; cycle < 720; cycle++) {
      int onSteps = cycle < 100 ? 50 : random.nextInt(51);
      for (int i = 0; i < 50; i++) {
        plant.advance(STEP_S, i < onSteps ? 250 : 0);
      }
      y = integrated(y, new Equations(250, wallJPerK), onSteps * STEP_S);
      y = integrated(y, new Equations(0, wallJPerK), (50 - onSteps) * STEP_S);
      assertEquals(y[0], plant.plateC(), 1e-6, "plate after cycle " + cycle);
      assertEquals(y[1], plant.bathC(), 1e-6, "bath after cycle " + cycle);
      assertEquals(y[3], plant.liquidL(), 1e-6, "liquid after cycle " + cycle);
    }
    assertTrue(plant.bathC() > 35, "the hour passed through the temperatures of use");
  }

  private static double[] integrated(double[] y, Equations equations, double seconds) {
    return seconds == 0
        ? y
        : new DormandPrince853Integrator(1e-6, 5, 1e-11, 1e-11)
            .integrate(equations, new ODEState(0, y), seconds)
            .getPrimaryState();
  }

  /** Energy in = stored + lost, with each loss integrated here from the temperatures seen. */
  @ParameterizedTest(name = "wall of {0} J/K")
  @ValueSource(doubles = {0, 600})
  void overAnHourTheEnergyBalanceCloses(double wallJPerK) {
    Plant plant = new Plant(Trays.tray(new Trays.Change(1, 18, 250, 20, wallJPerK)));
    double inJ = 0;
    double lostJ = 0;
    double storedJ = 0;
    double wallC = 20;
    for (int i = 0; i < HOUR; i++) {
      double heatW = i < 6000 || i % 50 < 22 ? 250 : 0;
      double plateC = plant.plateC();
      double bathC = plant.bathC();
      double capacity = 4180 * plant.liquidL();
      plant.advance(STEP_S, heatW);
      double meanPlateC = 0.5 * (plateC + plant.plateC());
      double meanBathC = 0.5 * (bathC + plant.bathC());
      inJ += heatW * STEP_S;
      lostJ += STEP_S * 0.5 * (meanPlateC - 20);
      lostJ += STEP_S * (2.5 * (meanBathC - 20) + evaporationW(meanBathC));
      double wallAfterC =
          wallC + (wallJPerK > 0 ? STEP_S * 6 * (meanBathC - wallC) / wallJPerK : 0);
      storedJ += 1100 * (plant.plateC() - plateC) + capacity * (plant.bathC() - bathC);
      storedJ += wallJPerK * (wallAfterC - wallC);
      wallC = wallAfterC;
    }
    assertEquals(inJ, plant.energyJ(), 1e-6);
    assertEquals(1, (storedJ + lostJ) / inJ, 1e-3);
    assertTrue(lostJ > 0.5 * inJ, "losses mattered: " + lostJ / inJ);
  }

  @Test
  void theWaterThatLeavesCarriesTheEvaporationAsItsLatentHeat() {
    Plant plant = Trays.holdingForty(1, 250);
    double before = plant.evaporatedMl();
    double carriedJ = 0;
    for (int i = 0; i < HOUR; i++) {
      carriedJ += STEP_S * evaporationW(plant.bathC());
      plant.advance(STEP_S, 107.68);
    }
    double millilitres = plant.evaporatedMl() - before;
    assertEquals(carriedJ / 2406.1, millilitres, 0.01);
    assertEquals(1 - millilitres / 1000, plant.liquidL(), 1e-9);
  }

  private static double evaporationW(double bathC) {
    double deficitKPa = magnusKPa(bathC) - 0.5 * magnusKPa(20);
    return 1000 * 0.072 * (0.089 + 0.0782 * 0.15) * Math.max(0, deficitKPa);
  }

  private static double magnusKPa(double celsius) {
    return 0.61094 * Math.exp(17.625 * celsius / (celsius + 243.04));
  }

  private static double latentJPerG(double celsius) {
    return 2453.8 + (2406.1 - 2453.8) * (celsius - 20) / 20;
  }
}
