package trayward.controller.regulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The believed tray run by seconds, against an adaptive solver of a mathematics library. */
class TrayRunTest {

  /** Plate, bath, wall, plate as sensed, bath as sensed, litres; from the reference tray page. */
  private record Equations(double heatW, double wallJPerK) implements OrdinaryDifferentialEquation {

    @Override
    public int getDimension() {
      return 6;
    }

    @Override
    public double[] computeDerivatives(double t, double[] y) {
      double deficit = pw(y[1]) - 0.5 * pw(20);
      double evaporationW = 1000 * 0.072 * (0.089 + 0.0782 * 0.15) * Math.max(0, deficit);
      double toWall = 6 * (y[1] - y[2]);
      return new double[] {
        (heatW - 18 * (y[0] - y[1]) - 0.5 * (y[0] - 20)) / 1100,
        (18 * (y[0] - y[1]) - 2.5 * (y[1] - 20) - evaporationW - toWall) / (4180 * y[5]),
        toWall / wallJPerK,
        (y[0] - y[3]) / 3,
        (y[1] - y[4]) / 5,
        -evaporationW / (2501 - 2.385 * y[1]) / 1000
      };
    }

    private static double pw(double c) {
      return 0.61094 * Math.exp(17.625 * c / (c + 243.04));
    }
  }

  @ParameterizedTest(name = "wall of {0} J/K")
  @ValueSource(doubles = {100, 600, 2000})
  void anHourOfPulsesAgreesWithAnAdaptiveSolverFarBelowAReading(double wallJPerK) {
    TrayBelief belief = new TrayBelief(TrayModel.REFERENCE, 5, 3, wallJPerK);
    TrayRun run = new TrayRun(TrayRates.of(belief, Believed.ROOM), 5, 3, 20, 20);
    Random random = new Random(64);
    double[] y = {20, 20, 20, 20, 20, 1};
    for (int s = 0; s < 3600; s++) {
      double u = s < 500 ? 1 : random.nextInt(3) / 2.0;
      run.second(u);
      y = integrated(y, new Equations(250 * u, wallJPerK));
      assertEquals(y[0], run.plateC, 2e-3, "plate after " + s + " s");
      assertEquals(y[1], run.bathC, 2e-3, "bath after " + s + " s");
      assertEquals(y[3], run.plateSensedC, 2e-3, "plate probe after " + s + " s");
      assertEquals(y[4], run.bathSensedC, 2e-3, "bath probe after " + s + " s");
    }
    assertEquals(y[5], run.share, 1e-4);
    assertEquals(y[2], run.wallC, 0.02);
  }

  /** F1: off at 602.6 s, the coast peaks at 40 °C at 642.1 s; the plate reaches 50.9 °C. */
  @Test
  void theWarmUpOfTheCheckValuesComesOut() {
    TrayRun run = new TrayRun(Believed.rates(), 5, 3, 20, 20);
    double peak = 0;
    double plate = 0;
    for (int s = 0; s < 900; s++) {
      run.second(s < 602 ? 1 : s == 602 ? 0.6 : 0);
      run.share = 1; // the check values keep the level
      peak = Math.max(peak, run.bathC);
      plate = Math.max(plate, run.plateC);
    }
    assertEquals(40, peak, 0.02);
    assertEquals(50.9, plate, 0.06);
  }

  /** The fit may come upon a wall of a fraction of a joule: the reference tray has none. */
  @Test
  void aWallThatHoldsNothingChangesNothing() {
    TrayRun thin = new TrayRun(Believed.rates(), 5, 3, 20, 20);
    TrayRun thinner =
        new TrayRun(
            TrayRates.of(new TrayBelief(TrayModel.REFERENCE, 5, 3, 1e-6), Believed.ROOM),
            5,
            3,
            20,
            20);
    for (int s = 0; s < 600; s++) {
      thin.second(1);
      thinner.second(1);
    }
    assertEquals(thinner.bathC, thin.bathC, 1e-3);
  }

  @Test
  void aBathIsNeverBelievedToBeAllGone() {
    TrayRun run = new TrayRun(Believed.rates(), 5, 3, 60, 60);
    run.share = TrayRun.LEAST_SHARE + 1e-6;
    for (int s = 0; s < 3600; s++) {
      run.second(0.5);
      assertTrue(Double.isFinite(run.bathC) && Double.isFinite(run.plateC));
    }
    assertEquals(TrayRun.LEAST_SHARE, run.share, 0);
  }

  private static double[] integrated(double[] y, Equations equations) {
    var solver = new DormandPrince853Integrator(1e-6, 1, 1e-10, 1e-10);
    return solver.integrate(equations, new ODEState(0, y), 1).getPrimaryState();
  }
}
