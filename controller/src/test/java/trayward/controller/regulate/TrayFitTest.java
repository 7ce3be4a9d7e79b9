package trayward.controller.regulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.sim.Plant;
import trayward.controller.sim.PlantParameters;

/** One noisy warm-up of the simulated reference tray, whose numbers are published. */
class TrayFitTest {

  /**
   * A regulator fits every 8 s by four rounds and goes on from there: as many as in two minutes.
   */
  private static final int SETTLED = 60;

  private static final double[] SIGMA = TrayDoubt.DECLARED.vector();

  /** What temperatures show of the reference tray: P/Cp, UA/Cp, UA/Cb, losses at 38 °C over Cb. */
  private static double[] shown(TrayRates r) {
    return new double[] {r.heatKPerS(), r.platePerS(), r.bathPerS(), r.lossRate(38)};
  }

  /** Reference: 250/1100 K/s, 18/1100 1/s, 18/4180 1/s. */
  private static double[] truth() {
    double lossW = 2.5 * 18 + TrayModel.REFERENCE.evaporationW(38, RoomModel.REFERENCE);
    return new double[] {250.0 / 1100, 18.0 / 1100, 18.0 / 4180, lossW / 4180};
  }

  /** Declared wrong by as much as a jug, a rating plate and a guess may be. */
  private static TrayModel wronglyDeclared() {
    TrayModel m = TrayModel.REFERENCE;
    return new TrayModel(
        m.liquidL() * 1.05,
        m.areaM2(),
        m.plateJPerK() * 1.3,
        m.plateToBathWPerK() * 0.75,
        m.bathLossWPerK() * 1.2,
        m.plateLossWPerK(),
        m.heaterW() * 0.95,
        m.evaporationFactor() * 0.8);
  }

  /** Full heat to F1's 602 s, the coast, then the holding duty. */
  static WarmUpLog.View warmUp(int seconds, boolean plateFitted, long seed) {
    Plant plant = new Plant(PlantParameters.REFERENCE);
    WarmUpLog log = new WarmUpLog(0);
    Random random = new Random(seed);
    double bath = 20;
    double plate = 20;
    for (int i = 0; i < seconds * 10; i++) {
      boolean on = i < 6020 || (i > 6800 && i % 50 < 21);
      plant.advance(0.1, on ? 250 : 0);
      log.heat(0.1, on);
      bath += (plant.bathC() - bath) * -Math.expm1(-0.1 / 5);
      plate += (plant.plateC() - plate) * -Math.expm1(-0.1 / 3);
      if (i % 10 == 4) {
        log.bath(read(bath, random), (i + 1) * 100_000_000L);
        if (plateFitted) {
          log.plate(read(plate, random), (i + 1) * 100_000_000L);
        }
      }
    }
    return log.view();
  }

  private static double read(double celsius, Random random) {
    return Math.rint((celsius + 0.02 * random.nextGaussian()) * 16) / 16;
  }

  private static FitResult fit(WarmUpLog.View view, TrayModel declared, int rounds) {
    return TrayFit.fit(job(view, declared), rounds);
  }

  private static FitJob job(WarmUpLog.View view, TrayModel declared) {
    return new FitJob(
        view,
        RoomModel.REFERENCE,
        TrayBelief.declared(declared),
        TrayDoubt.DECLARED,
        20,
        20,
        FitPoint.PRIOR);
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4})
  void twoProbesShowTheTrayWithinFivePercent(long seed) {
    FitResult found = fit(warmUp(900, true, seed), wronglyDeclared(), SETTLED);
    double[] is = shown(TrayRates.of(found.belief(), RoomModel.REFERENCE));
    double[] truth = truth();
    for (int i = 0; i < truth.length; i++) {
      assertEquals(1, is[i] / truth[i], 0.05, "ratio " + i);
    }
    assertEquals(0.027, found.rmsK(), 0.006); // noise and rounding alone
    assertEquals(5, found.belief().bathLagS(), 1);
    assertEquals(3, found.belief().plateLagS(), 1);
    covers(found, TrayModel.REFERENCE);
  }

  /** Without the plate's probe only what the bath does shows it. */
  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4})
  void oneProbeShowsWhatTheBathWillDo(long seed) {
    FitResult found = fit(warmUp(900, false, seed), wronglyDeclared(), SETTLED);
    TrayRates r = TrayRates.of(found.belief(), RoomModel.REFERENCE);
    double[] truth = truth();
    // Full heat and losses, as the bath feels them, are P/Cp UA/Cb over UA/Cp.
    double bathHeat = r.heatKPerS() * r.bathPerS() / r.platePerS();
    assertEquals(1, bathHeat / (250.0 / 4180), 0.05);
    assertEquals(1, r.lossRate(38) / truth[3], 0.1);
    assertEquals(0.027, found.rmsK(), 0.006);
    covers(found, TrayModel.REFERENCE);
  }

  /** The doubts are of the logarithms: three of them reach the truth, each number taken alone. */
  private static void covers(FitResult found, TrayModel truth) {
    TrayModel m = found.belief().model();
    TrayDoubt d = found.doubt();
    covers("heater", m.heaterW(), truth.heaterW(), d.heater());
    covers("plate", m.plateJPerK(), truth.plateJPerK(), d.plate());
    covers("coupling", m.plateToBathWPerK(), truth.plateToBathWPerK(), d.coupling());
    covers("liquid", m.liquidL(), truth.liquidL(), d.liquid());
    covers("loss", m.bathLossWPerK(), truth.bathLossWPerK(), d.loss());
    covers("evaporation", m.evaporationFactor(), truth.evaporationFactor(), d.evaporation());
    // Not those of the lags: a thin wall is much like a lag, and the tray here has none.
  }

  private static void covers(String what, double is, double truth, double doubt) {
    assertEquals(0, Math.log(is / truth) / doubt, 3, what + " " + is + " +- " + doubt);
  }

  @Test
  void whatCannotBeSeenIsDoubtedAsBeforeAndWhatCanIsDoubtedLess() {
    double[] two = fit(warmUp(900, true, 1), wronglyDeclared(), SETTLED).doubt().vector();
    double[] one = fit(warmUp(900, false, 1), wronglyDeclared(), SETTLED).doubt().vector();
    for (int i = 0; i < TrayFit.NUMBERS; i++) {
      assertTrue(two[i] <= SIGMA[i] * (1 + 1e-9) && one[i] <= SIGMA[i] * (1 + 1e-9), "" + i);
      assertTrue(two[i] <= one[i] * 1.1, "a second probe teaches: " + i);
    }
    assertEquals(SIGMA[7], one[7], 1e-6); // a plate probe that is not there
    assertTrue(two[7] < 0.3 * SIGMA[7]);
    // Watts and litres scale together. With a plate probe its declared loss of 0.5 W/K gives the
    // scale; without one their own sizes come from the declaration.
    assertTrue(one[0] > 0.5 * SIGMA[0] && one[3] > 0.5 * SIGMA[3]);
    assertTrue(two[2] < 0.3 * SIGMA[2]);
  }

  @Test
  void withoutReadingsThePriorStands() {
    WarmUpLog log = new WarmUpLog(0);
    log.heat(60, true);
    FitResult found = fit(log.view(), wronglyDeclared(), 4);
    assertEquals(wronglyDeclared(), found.belief().model());
    assertEquals(0, found.rmsK(), 0);
    double[] doubt = found.doubt().vector();
    for (int i = 0; i < TrayFit.NUMBERS; i++) {
      assertEquals(SIGMA[i], doubt[i], 1e-9);
    }
  }

  @Test
  void withoutARoundNothingIsClaimed() {
    FitResult found = fit(warmUp(60, true, 1), wronglyDeclared(), 0);
    assertEquals(wronglyDeclared(), found.belief().model());
    assertEquals(TrayDoubt.DECLARED, found.doubt());
  }

  /** Readings of nonsense move no number by more than four of its standard deviations. */
  @ParameterizedTest
  @CsvSource({"90, 20", "-30, 5", "20, 20"})
  void noReadingMovesANumberBeyondItsBound(double bathC, double plateC) {
    WarmUpLog log = new WarmUpLog(0);
    for (int s = 1; s <= 300; s++) {
      log.heat(1, true);
      log.bath(bathC, s * 1_000_000_000L);
      log.plate(plateC, s * 1_000_000_000L);
    }
    FitResult found = fit(log.view(), TrayModel.REFERENCE, 12);
    double[] x = found.point().numbers();
    for (int i = 0; i < TrayFit.NUMBERS; i++) {
      assertTrue(Math.abs(x[i]) <= 4 * SIGMA[i] + 1e-12, i + ": " + x[i]);
    }
    assertTrue(found.rmsK() > 0.5, "nobody would act upon it: " + found.rmsK());
  }

  @Test
  void aNextFitBeginsWhereTheLastOneEnded() {
    WarmUpLog.View view = warmUp(400, true, 2);
    FitResult first = job(view, wronglyDeclared()).run();
    FitJob j = first.job();
    FitJob again = new FitJob(view, j.room(), j.prior(), j.doubt(), 20, 20, first.point());
    FitResult second = again.run();
    assertTrue(second.rmsK() <= first.rmsK() + 1e-3);
    assertEquals(first.belief().model().plateJPerK(), second.belief().model().plateJPerK(), 30);
  }

  /** Where plate and bath are now comes with the fit. */
  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void theRunEndsWhereThePlantIs(boolean plateFitted) {
    Plant plant = new Plant(PlantParameters.REFERENCE);
    for (int i = 0; i < 4000; i++) {
      plant.advance(0.1, 250);
    }
    FitResult found = fit(warmUp(400, plateFitted, 3), wronglyDeclared(), SETTLED);
    assertEquals(plant.bathC(), found.run().bathC, 0.05);
    assertEquals(plant.plateC(), found.run().plateC, plateFitted ? 0.1 : 1.5);
  }
}
