package trayward.controller.regulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.sim.Plant;
import trayward.controller.sim.PlantParameters;

/** The filter beside the simulated plant, and against what a Kalman filter must do (textbook). */
class TrayObserverTest {

  private static final double STEP_S = 0.1;

  /** An observer and the plant it watches, heated by whole pulses of 5 s. */
  private static final class Watch {
    final Plant plant;
    final TrayObserver observer;
    final boolean plateFitted;
    final Random random;
    double noiseK = 0.02;
    double duty = 0.4307;
    double sumSquares;
    double sum;
    double neighbours;
    double before;
    int count;
    private double bathSensedC;
    private double plateSensedC;
    private int steps;

    Watch(TrayBelief belief, double plateC, double bathC, boolean plateFitted, long seed) {
      this(belief, plateC, plateC, bathC, plateFitted, seed);
    }

    Watch(
        TrayBelief belief,
        double plateC,
        double thoughtC,
        double bathC,
        boolean plateFitted,
        long seed) {
      this.plant = TrayPlants.standing(PlantParameters.REFERENCE, plateC, bathC);
      this.observer = new TrayObserver(belief, Believed.ROOM, bathC, thoughtC);
      this.plateFitted = plateFitted;
      this.random = new Random(seed);
      this.bathSensedC = bathC;
      this.plateSensedC = plateC;
    }

    Watch run(int seconds) {
      for (int end = steps + 10 * seconds; steps < end; ) {
        step();
      }
      return this;
    }

    void forget() {
      sumSquares = sum = neighbours = 0;
      count = 0;
    }

    private void step() {
      boolean on = steps % 50 < Math.round(50 * duty);
      plant.advance(STEP_S, on ? 250 : 0);
      bathSensedC += (plant.bathC() - bathSensedC) * -Math.expm1(-STEP_S / 5);
      plateSensedC += (plant.plateC() - plateSensedC) * -Math.expm1(-STEP_S / 3);
      steps++;
      observer.advance(STEP_S, on ? 1 : 0, steps * 100_000_000L);
      if (steps % 10 == 0) {
        double scaled = observer.bath(read(bathSensedC), steps * 100_000_000L);
        sum += scaled;
        sumSquares += scaled * scaled;
        neighbours += scaled * before;
        before = scaled;
        count++;
        if (plateFitted) {
          observer.plate(read(plateSensedC), steps * 100_000_000L);
        }
      }
    }

    private double read(double celsius) {
      return Math.rint((celsius + noiseK * random.nextGaussian()) * 16) / 16;
    }
  }

  private static Watch calm(boolean plateFitted, long seed) {
    return new Watch(Believed.REFERENCE, 45.279, 40, plateFitted, seed);
  }

  /**
   * Innovations of a filter that is right are white, of mean nought and of the variance predicted
   * (Kalman 1960; Mehra 1970). A reading's is less here: wander is allowed for that a simulated
   * tray does not have, and rounding is no Gaussian noise.
   */
  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void inCalmInnovationsAreOfTheVariancePredictedAndWhite(boolean plateFitted) {
    Watch watch = calm(plateFitted, 7).run(300);
    watch.forget();
    watch.run(3000);
    double variance = watch.sumSquares / watch.count;
    assertTrue(variance > 0.6 && variance < 1.2, "variance " + variance);
    assertEquals(0, watch.sum / watch.count, 0.1);
    assertEquals(0, watch.neighbours / watch.count, 0.2);
  }

  /** Half a step of 1/16 K is 0.031 K: it must know better than its readings. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void plateAndBathAreFollowedBelowTheRoundingOfTheirProbes(long seed) {
    Watch watch = calm(true, seed).run(300);
    double bath = 0;
    double plate = 0;
    for (int i = 0; i < 600; i++) {
      watch.run(1);
      bath += sq(watch.plant.bathC() - watch.observer.bathC()) / 600;
      plate += sq(watch.plant.plateC() - watch.observer.plateC()) / 600;
    }
    assertTrue(Math.sqrt(bath) < 0.02, "bath rms " + Math.sqrt(bath));
    assertTrue(Math.sqrt(plate) < 0.05, "plate rms " + Math.sqrt(plate));
  }

  /** At 0.04 K/s a probe of 5 s says 0.2 K too little, and 0.75 s of age 0.03 K more. */
  @Test
  void inAWarmUpTheBathIsSeenAheadOfItsLaggingProbe() {
    Watch watch = new Watch(Believed.REFERENCE, 20, 20, true, 5);
    watch.duty = 1;
    watch.run(400);
    double lagK = watch.plant.bathC() - watch.bathSensedC;
    assertTrue(lagK > 0.12, "the lag hides " + lagK);
    assertEquals(watch.plant.bathC(), watch.observer.bathC(), 0.05);
    assertEquals(watch.plant.plateC(), watch.observer.plateC(), 0.1);
    assertEquals(watch.bathSensedC, watch.observer.bathSensedC(), 0.03);
  }

  @Test
  void withoutAProbeThePlateIsTheModels() {
    Watch watch = new Watch(Believed.REFERENCE, 20, 20, false, 5);
    watch.duty = 1;
    watch.run(400);
    assertEquals(watch.plant.plateC(), watch.observer.plateC(), 0.5);
    assertEquals(watch.plant.bathC(), watch.observer.bathC(), 0.05);
  }

  /**
   * A controller that starts anew over a hot plate without a probe believes it as cold as the bath.
   * A state that stands at its bound must not drag the others away.
   */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void aHotPlateWithoutAProbeIsFoundFromWhatTheBathDoes(long seed) {
    Watch watch = new Watch(Believed.REFERENCE, 45.279, Double.NaN, 40, false, seed);
    for (int s = 0; s < 600; s++) {
      watch.run(1);
      assertEquals(watch.plant.bathC(), watch.observer.bathC(), 0.6, "bath after " + s + " s");
    }
    assertEquals(watch.plant.bathC(), watch.observer.bathC(), 0.05);
    assertEquals(watch.plant.plateC(), watch.observer.plateC(), 1);
  }

  /** An old reading of a rising bath is compared with what was predicted for its time. */
  @Test
  void aReadingIsComparedWithItsOwnTime() {
    TrayObserver fresh = new TrayObserver(Believed.REFERENCE, Believed.ROOM, 30, 60);
    double[] sensed = new double[31];
    for (int i = 1; i <= 30; i++) {
      fresh.advance(STEP_S, 1, i * 100_000_000L);
      sensed[i] = fresh.bathSensedC();
    }
    assertTrue(sensed[30] - sensed[20] > 0.005);
    assertEquals(0, fresh.bath(sensed[20], 2_000_000_000L), 1e-9);
  }

  /** A reading older than all that is remembered is compared with now: 48 scans of 0.1 s. */
  @Test
  void aReadingOlderThanWhatIsRememberedIsTakenAsOfNow() {
    TrayObserver o = new TrayObserver(Believed.REFERENCE, Believed.ROOM, 30, 60);
    for (int i = 1; i <= 100; i++) {
      o.advance(STEP_S, 1, i * 100_000_000L);
    }
    assertEquals(0, o.bath(o.bathSensedC(), 1_000_000_000L), 1e-9);
  }

  /** A cover takes away F0's 45.02 W of evaporation: 45.02/4180 K/s appear unexplained. */
  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void theHeatThatACoverKeepsIsFound(boolean plateFitted) {
    Watch watch = calm(plateFitted, 3).run(120);
    assertEquals(0, watch.observer.bathExtra(), 2e-3);
    watch.plant.cover(true);
    watch.observer.supposeCovered();
    watch.duty = 0.24;
    watch.run(180);
    assertEquals(45.02 / 4180, watch.observer.bathExtra(), 0.15 * 45.02 / 4180);
  }

  @Test
  void unexplainedHeatIsBoundedByWhatEvaporationCanBe() {
    Watch watch = calm(true, 3).run(60);
    watch.observer.supposeCovered();
    double least = 0;
    double most = 0;
    for (int i = 1; i <= 120; i++) {
      double wrong = 40 + (i < 60 ? 0.3 : -0.3) * (i < 60 ? i : i - 60);
      watch.observer.advance(1, 0, (1000 + i) * 1_000_000_000L);
      watch.observer.bath(wrong, (1000 + i) * 1_000_000_000L);
      double bound = 0.0025 + 1.5 * watch.observer.rates().evaporationRate(watch.observer.bathC());
      assertTrue(Math.abs(watch.observer.bathExtra()) <= bound + 1e-9);
      assertTrue(watch.observer.capacity() > 0.3 && watch.observer.capacity() < 3);
      assertTrue(watch.observer.lagS() > 1.8 && watch.observer.lagS() < 13.7);
      least = Math.min(least, watch.observer.bathExtra());
      most = Math.max(most, watch.observer.bathExtra());
    }
    assertTrue(most > 0.01 && least < -0.005, least + " to " + most);
  }

  /** 0.3 L of 20 °C into 1 L of 40 °C: mixed 35.38 °C (row F3), and 1.3 times as slow. */
  @Test
  void afterAPourTheBathIsFoundAtItsMixtureAndLarger() {
    Watch watch = calm(true, 9).run(120);
    watch.plant.pour(0.3, 20);
    watch.observer.supposePoured(4.6);
    watch.run(20);
    assertEquals(watch.plant.bathC(), watch.observer.bathC(), 0.15);
    watch.observer.doubtGrowth(4.6);
    watch.duty = 1;
    watch.run(150);
    assertEquals(watch.plant.bathC(), watch.observer.bathC(), 0.05);
    assertEquals(1.3, watch.observer.capacity(), 0.1);
  }

  @Test
  void whatTheFitSaysOfNowIsTakenOver() {
    TrayObserver o = new TrayObserver(Believed.REFERENCE, Believed.ROOM, 30, 30);
    TrayRun run = new TrayRun(Believed.rates(), 5, 3, 48, 37);
    run.share = 0.97;
    run.bathSensedC = 36.8;
    o.place(run, 0.1);
    assertEquals(48, o.plateC(), 0);
    assertEquals(37, o.bathC(), 0);
    assertEquals(36.8, o.bathSensedC(), 0);
    assertEquals(37, o.wallC(), 0);
    assertEquals(0.97, o.capacity(), 1e-12);
    assertEquals(0, o.bathExtra(), 0);
    assertEquals(0, o.plateExtra(), 0);
  }

  @Test
  void aCopyGoesOnAlike() {
    Watch watch = calm(true, 4).run(30);
    TrayObserver copy = new TrayObserver(Believed.evaporating(2), Believed.ROOM, 10, 10);
    copy.copy(watch.observer);
    long at = 40_000_000_000L;
    for (TrayObserver o : new TrayObserver[] {watch.observer, copy}) {
      o.advance(2, 1, at);
      o.bath(40.5, at);
      o.plate(46, at);
    }
    assertEquals(watch.observer.bathC(), copy.bathC(), 0);
    assertEquals(watch.observer.plateC(), copy.plateC(), 0);
    assertEquals(watch.observer.misfit(), copy.misfit(), 0);
    assertEquals(watch.observer.bathExtra(), copy.bathExtra(), 0);
  }

  /** Minus twice the logarithm of the odds: a reading far off is worse by its square. */
  @Test
  void readingsThatDoNotFitCountByTheirSquare() {
    TrayObserver o = calm(true, 4).run(30).observer;
    o.judge();
    assertEquals(0, o.misfit(), 0);
    double scaled = o.bath(o.bathSensedC() + 0.5, Long.MIN_VALUE);
    double first = o.misfit();
    assertTrue(scaled > 5, "scaled " + scaled);
    o.judge();
    double none = o.bath(o.bathSensedC(), Long.MIN_VALUE);
    assertEquals(0, none, 1e-9);
    assertEquals(scaled * scaled, first - o.misfit(), 2);
  }

  private static double sq(double v) {
    return v * v;
  }
}
