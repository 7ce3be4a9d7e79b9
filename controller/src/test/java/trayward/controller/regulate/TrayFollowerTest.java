package trayward.controller.regulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.sim.Plant;
import trayward.controller.sim.PlantParameters;

/** The follower beside a simulated tray in its hold, read by noisy probes, 0.75 s late. */
class TrayFollowerTest {

  private static final long STEP_NANOS = 100_000_000L;

  private static final class Watch {
    final Plant plant = TrayPlants.standing(PlantParameters.REFERENCE, 45.279, 40);
    final TrayFollower follower = new TrayFollower(Believed.REFERENCE, Believed.ROOM, 40, 45.279);
    final Random random;
    final boolean plateFitted;
    double duty = 0.4307;
    double worstBathK;
    double worstExtra;
    private double bathSensedC = 40;
    private double plateSensedC = 45.279;
    private double bathTakenC;
    private double plateTakenC;
    private int steps;

    Watch(boolean plateFitted, long seed) {
      this.plateFitted = plateFitted;
      this.random = new Random(seed);
      // A warm-up has shown the probe's lag within some 5 %.
      TrayRun fitted = new TrayRun(Believed.rates(), 5, 3, 45.279, 40);
      follower.believe(Believed.REFERENCE, Believed.ROOM, fitted, 0.05);
    }

    Watch run(double seconds) {
      for (long end = steps + Math.round(10 * seconds); steps < end; ) {
        boolean on = steps % 50 < Math.round(50 * duty);
        plant.advance(0.1, on ? 250 : 0);
        bathSensedC += (plant.bathC() - bathSensedC) * -Math.expm1(-0.1 / 5);
        plateSensedC += (plant.plateC() - plateSensedC) * -Math.expm1(-0.1 / 3);
        steps++;
        if (steps % 10 == 2) {
          bathTakenC = read(bathSensedC);
          plateTakenC = read(plateSensedC);
        }
        boolean ready = steps % 10 == 9;
        long taken = (steps - 7) * STEP_NANOS;
        follower.scan(
            0.1,
            on ? 1 : 0,
            steps * STEP_NANOS,
            ready ? bathTakenC : Double.NaN,
            taken,
            ready && plateFitted ? plateTakenC : Double.NaN,
            taken);
        worstBathK = Math.max(worstBathK, Math.abs(plant.bathC() - follower.now().bathC()));
        worstExtra = Math.max(worstExtra, Math.abs(follower.now().bathExtra()));
        if (steps % 600 == 0) {
          plant.refill(plant.liquidL() + lostL());
        }
      }
      return this;
    }

    /** A minute's evaporation at 40 °C, 1.1 mL: the level is kept. */
    private double lostL() {
      return plant.covered() ? 0 : 45.02 * 60 / 2406.1 / 1000;
    }

    private double read(double celsius) {
      return Math.rint((celsius + 0.02 * random.nextGaussian()) * 16) / 16;
    }
  }

  /** 2 h of calm: whatever chance makes of the sums, the belief stays with the plant. */
  @ParameterizedTest(name = "plate probe {0}, seed {1}")
  @CsvSource({"true, 1", "true, 2", "false, 1", "false, 2"})
  void inCalmNothingIsBelievedToHaveHappened(boolean plateFitted, long seed) {
    Watch watch = new Watch(plateFitted, seed).run(60);
    watch.worstBathK = 0;
    for (int i = 0; i < 120; i++) {
      watch.run(60);
      assertFalse(watch.follower.poured());
    }
    assertTrue(watch.worstBathK < 0.12, "bath off by " + watch.worstBathK);
    assertTrue(watch.worstExtra < 0.006, "extra " + watch.worstExtra);
  }

  /** Row F3: 0.3 L of 20 °C bring the bath to 35.38 °C at once. */
  @ParameterizedTest(name = "plate probe {0}, seed {1}")
  @CsvSource({"true, 1", "true, 2", "true, 3", "false, 1", "false, 2", "false, 3"})
  void aPourIsToldFromACover(boolean plateFitted, long seed) {
    Watch watch = new Watch(plateFitted, seed).run(120);
    watch.plant.pour(0.3, 20);
    assertEquals(35.38, watch.plant.bathC(), 0.06);
    watch.run(12);
    assertTrue(watch.follower.poured());
    assertEquals(watch.plant.bathC(), watch.follower.now().bathC(), 0.3);
    watch.duty = 1;
    watch.run(100);
    assertEquals(watch.plant.bathC(), watch.follower.now().bathC(), 0.1);
    assertEquals(1.3, watch.follower.now().capacity(), 0.15);
  }

  /** It goes back to the pour's own moment: seconds later the lag is no longer in the way. */
  @ParameterizedTest
  @ValueSource(doubles = {0, 0.3, 0.5, 0.8})
  void aPourIsSeenWhereItIsLongBeforeItsProbeSaysSo(double offS) {
    Watch watch = new Watch(true, 5).run(120 + offS);
    watch.plant.pour(0.3, 20);
    watch.run(7);
    double probeK = watch.bathSensedC - watch.plant.bathC();
    double seenK = Math.abs(watch.follower.now().bathC() - watch.plant.bathC());
    assertTrue(probeK > 0.9, "the probe still hides " + probeK);
    assertTrue(seenK < 0.5 * probeK, "seen within " + seenK);
  }

  /** A sheet of 210 J/K at 15 °C: 39.07 °C at once (row F3) and no more liquid than before. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void aColdSheetCoolsTheBathAndMakesItNoLarger(long seed) {
    Watch watch = new Watch(true, seed).run(120);
    watch.plant.sheet(210, 15);
    watch.run(30);
    assertEquals(watch.plant.bathC(), watch.follower.now().bathC(), 0.15);
    watch.duty = 0.8;
    watch.run(120);
    assertEquals(1.05, watch.follower.now().capacity(), 0.08);
  }

  /** The cover keeps F0's 45.02 W in: 0.01077 K/s on a litre. */
  @ParameterizedTest(name = "plate probe {0}, seed {1}")
  @CsvSource({"true, 1", "true, 2", "true, 3", "false, 1", "false, 2", "false, 3"})
  void aCoverIsToldFromAPour(boolean plateFitted, long seed) {
    Watch watch = new Watch(plateFitted, seed).run(120);
    watch.plant.cover(true);
    for (int i = 0; i < 12; i++) {
      watch.run(10);
      assertFalse(watch.follower.poured());
    }
    assertEquals(45.02 / 4180, watch.follower.now().bathExtra(), 0.25 * 45.02 / 4180);
    assertEquals(watch.plant.bathC(), watch.follower.now().bathC(), 0.1);
    watch.plant.cover(false);
    watch.run(180);
    assertEquals(0, watch.follower.now().bathExtra(), 0.25 * 45.02 / 4180);
  }

  @Test
  void aFitPutsPlateAndBathWhereItSays() {
    Watch watch = new Watch(true, 1).run(30);
    TrayRun run = new TrayRun(Believed.rates(), 5, 3, 52, 38);
    watch.follower.believe(Believed.evaporating(2), Believed.ROOM, run, 0.1);
    assertEquals(52, watch.follower.now().plateC(), 0);
    assertEquals(38, watch.follower.now().bathC(), 0);
    double twice = Believed.rates().evaporationRate(38) * 2;
    assertEquals(twice, watch.follower.now().rates().evaporationRate(38), 1e-12);
  }

  /** Even while two suppositions are open: what the fit says is the calm. */
  @Test
  void aFitEndsAllSuppositions() {
    Watch watch = new Watch(true, 1).run(120);
    watch.plant.pour(0.3, 20);
    watch.run(8);
    TrayRun run = new TrayRun(Believed.rates(), 5, 3, 45, 36);
    watch.follower.believe(Believed.REFERENCE, Believed.ROOM, run, 0.1);
    assertEquals(36, watch.follower.now().bathC(), 0);
    assertFalse(watch.follower.poured());
    assertEquals(1, watch.follower.now().capacity(), 1e-12);
  }
}
