package trayward.controller.regulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import trayward.controller.sim.Plant;
import trayward.controller.sim.PlantParameters;

/**
 * How much disturbance the hold stands: the peak of its sensitivity, measured. Near rest the loop
 * is linear. A sine of 5 mK, too small for the follower to suppose anything, is added to what the
 * bath's probe says; the reading's own sine over it is |S|. Probes without noise or rounding, read
 * once a second, 0.75 s old; the duty given as it is asked, 2.5 s late, half a relay cycle.
 */
class HoldLoopSensitivityTest {

  private static final double SINE_K = 0.005;
  private static final double SINE_DUTY = 0.005;

  /** Longer ones are taken out, shorter ones nothing answers: |S| is 1 within 1 % below 40 s. */
  private static final int[] PERIODS_S = {
    1500, 700, 500, 350, 250, 220, 200, 180, 160, 145, 130, 110, 90, 75, 60, 50, 36, 25, 14, 7
  };

  /** Where the sine is put in and looked for. */
  private enum Where {
    BATH_READING,
    DUTY
  }

  /** Scans that the duty comes late. */
  private static final int LATE = 25;

  private static final double HOLD_S = 10;

  /** |S| at a period: settles for long, then takes the Fourier component of whole periods. */
  private static double sensitivity(boolean plateFitted, Where where, int periodS) {
    TrayBelief belief = Believed.REFERENCE;
    Plant plant = TrayPlants.standing(PlantParameters.REFERENCE, 45.279, 40);
    TrayFollower follower = new TrayFollower(belief, Believed.ROOM, 40, 45.279);
    TrayRun fitted = new TrayRun(TrayRates.of(belief, Believed.ROOM), 5, 3, 45.279, 40);
    follower.believe(belief, Believed.ROOM, fitted, 0.05);
    int judged = periodS * Math.max(2, 400 / periodS);
    int settled = periodS * (1 + 1800 / periodS);
    double[] duties = new double[LATE];
    java.util.Arrays.fill(duties, 0.4307);
    double bathSensed = 40;
    double plateSensed = 45.279;
    double[] taken = new double[2];
    double sine = 0;
    double cosine = 0;
    for (int i = 0; i < 10 * (settled + judged); i++) {
      double u = duties[i % LATE];
      double wave = 2 * Math.PI * (i + 1) / (10.0 * periodS);
      double given = u + (where == Where.DUTY ? SINE_DUTY * Math.sin(wave) : 0);
      plant.advance(0.1, 250 * given);
      plant.refill(1);
      bathSensed += (plant.bathC() - bathSensed) * -Math.expm1(-0.1 / 5);
      plateSensed += (plant.plateC() - plateSensed) * -Math.expm1(-0.1 / 3);
      if (i % 10 == 2) {
        taken[0] = bathSensed + (where == Where.DUTY ? 0 : SINE_K * Math.sin(wave));
        taken[1] = plateSensed;
        if (i >= 10 * settled) {
          double seen =
              where == Where.DUTY ? (given - 0.4307) / SINE_DUTY : (taken[0] - 40) / SINE_K;
          sine += seen * Math.sin(wave);
          cosine += seen * Math.cos(wave);
        }
      }
      boolean ready = i % 10 == 9;
      long at = (i - 6) * 100_000_000L;
      follower.scan(
          0.1,
          u,
          (i + 1) * 100_000_000L,
          ready ? taken[0] : Double.NaN,
          at,
          ready && plateFitted ? taken[1] : Double.NaN,
          at);
      TrayObserver o = follower.now();
      HoldPoint hold = HoldPoint.at(40, o);
      double duty = hold.dutyFor(hold.settlingK(o.plateC(), o.bathC()), HOLD_S);
      assertTrue(duty > 0 && duty < 1, "no longer linear");
      duties[i % LATE] = duty;
    }
    return 2 * Math.hypot(sine, cosine) / judged;
  }

  private static double peak(boolean plateFitted, Where where) {
    double peak = 0;
    for (int period : PERIODS_S) {
      peak = Math.max(peak, sensitivity(plateFitted, where, period));
    }
    return peak;
  }

  /**
   * Common practice asks for a peak under 2; SIMC's choice gives 1.59 (Skogestad 2003). Measured:
   * with two probes 1.49 at the reading and 1.56 at the duty, with one 1.64 and 1.62, all of them
   * at periods of 150 to 200 s.
   */
  @ParameterizedTest(name = "plate probe {0}, at the {1}")
  @CsvSource({
    "true, BATH_READING, 1.6",
    "false, BATH_READING, 1.75",
    "true, DUTY, 1.75",
    "false, DUTY, 1.75"
  })
  void thePeakOfTheSensitivityIsThatOfACalmLoop(boolean plateFitted, Where where, double bound) {
    double peak = peak(plateFitted, where);
    assertTrue(peak < bound, "Ms " + peak);
    assertTrue(peak > 1, "Bode's integral: somewhere above one " + peak);
  }

  @ParameterizedTest
  @EnumSource
  void slowDisturbancesAreTakenOut(Where where) {
    assertEquals(0, sensitivity(true, where, 3000), 0.1);
    assertEquals(0, sensitivity(false, where, 3000), 0.1);
  }
}
