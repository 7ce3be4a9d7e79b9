package trayward.controller.regulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.Verifies;
import trayward.controller.sim.Plant;
import trayward.controller.sim.PlantParameters;
import trayward.controller.sim.TimeOptimal;

/** The regulator around the simulated tray, its probes noisy and rounded. */
class TrayRegulatorTest {

  /** The physical bound is F1's 612.2 s; a bit less as liquid evaporates. */
  @ParameterizedTest(name = "plate probe {0}, seed {1}")
  @CsvSource({"true, 1", "true, 2", "true, 3", "false, 1", "false, 2", "false, 3"})
  void theReferenceTrayIsWarmedUpNearThePhysicalBoundWithoutOvershoot(
      boolean plateFitted, long seed) {
    double bound =
        TimeOptimal.secondsToBand(new Plant(PlantParameters.REFERENCE), 40, 75, 0.2).orElseThrow();
    assertEquals(612.2, bound, 5);
    TrayBench bench = TrayBench.reference(plateFitted, seed).run(1500);
    assertTrue(bench.outsideUntilS < 1.02 * bound, "in the band after " + bench.outsideUntilS);
    assertTrue(bench.highestBathC < 40.1, "peak " + bench.highestBathC);
    TrayLesson lesson = bench.regulator.lesson().orElseThrow();
    assertTrue(lesson.complete());
    assertEquals(0, lesson.against(), lesson.words());
  }

  /** Twice the evaporation declared is learned, and nothing is left standing. */
  @ParameterizedTest(name = "plate probe {0}, evaporation {1}")
  @CsvSource({"true, 2", "false, 2", "true, 0.5", "false, 0.5"})
  void otherEvaporationThanDeclaredLeavesNoStandingError(boolean plateFitted, double factor) {
    TrayBench bench =
        new TrayBench(Loop.tray(1, 18, 250, factor), TrayModel.REFERENCE, plateFitted, 1);
    bench.run(1500);
    double sum = 0;
    for (int i = 0; i < 600; i++) {
      bench.run(1);
      sum += (bench.plant.bathC() - 40) / 600;
      assertEquals(40, bench.plant.bathC(), 0.2);
    }
    assertEquals(0, sum, 0.05);
  }

  /** Draught that comes during the hold: a standing disturbance, none of it learned before. */
  @Test
  void aCoverDuringTheHoldLeavesNoStandingErrorAndNorDoesItsRemoval() {
    TrayBench bench = TrayBench.reference(true, 2).run(1500);
    for (boolean covered : new boolean[] {true, false}) {
      bench.plant.cover(covered);
      bench.run(240);
      double sum = 0;
      for (int i = 0; i < 300; i++) {
        bench.run(1);
        sum += (bench.plant.bathC() - 40) / 300;
      }
      assertEquals(0, sum, 0.06, "covered " + covered);
    }
  }

  /** F3: the bound after 0.3 L of 20 °C is 201.1 s. Common practice would be thrice that. */
  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void aPourIsMadeUpForNearItsPhysicalBound(boolean plateFitted) {
    TrayBench bench = TrayBench.reference(plateFitted, 3).run(1500);
    bench.plant.pour(0.3, 20);
    double began = bench.atS();
    bench.judge();
    bench.run(900);
    double took = bench.outsideUntilS - began;
    assertTrue(took < 1.25 * 201.1, "took " + took);
    assertTrue(bench.highestBathC < 40.25, "peak " + bench.highestBathC);
  }

  /** The hold's gain is 1.6 of duty for a kelvin: a new set moves the duty by that and no more. */
  @ParameterizedTest
  @ValueSource(doubles = {-0.2, -0.1, 0.1, 0.2})
  void aNewSetTemperatureNearTheOldOneDoesNotKick(double changeK) {
    TrayBench bench = TrayBench.reference(true, 1).run(1500);
    double before = bench.duty;
    bench.setC = 40 + changeK;
    bench.step();
    double moved = bench.duty - before;
    assertTrue(moved * changeK > 0, "moved " + moved);
    assertTrue(Math.abs(moved) < 2.2 * Math.abs(changeK) + 0.03, "moved " + moved);
    bench.run(600);
    assertEquals(40 + changeK, bench.plant.bathC(), 0.1);
  }

  @Test
  void aSetTemperatureLoweredGetsNoHeatWhileTheBathIsFarAboveIt() {
    TrayBench bench = TrayBench.reference(true, 1).run(1200);
    bench.setC = 38;
    bench.judge();
    while (bench.bathReadC > 39.25) {
      bench.step();
    }
    assertEquals(0, bench.highestDuty, 0);
    // Below that the plate is brought up again to catch the bath.
    for (int i = 0; i < 900; i++) {
      bench.run(1);
      assertTrue(bench.plant.bathC() > 37.8, "fell to " + bench.plant.bathC());
    }
    assertEquals(38, bench.plant.bathC(), 0.1);
  }

  /** SR-07: 400 W over a weak contact would bring the plate above 75 °C. */
  @ParameterizedTest(name = "{0} L, {1} W/K, plate probe {2}")
  @CsvSource({"1, 12, true", "3, 8, true", "1, 12, false"})
  @Verifies(value = "SR-07", side = Verifies.Side.WITHHOLDS)
  void atFullDemandThePlateStaysUnderItsCeiling(
      double litres, double coupling, boolean plateFitted) {
    PlantParameters tray = Loop.tray(litres, coupling, 400, 1);
    TrayBench bench = new TrayBench(tray, Loop.declared(tray), plateFitted, 1);
    bench.setC = 50;
    bench.run(1500);
    assertTrue(bench.highestPlateC < 69.5, "plate " + bench.highestPlateC);
    assertTrue(bench.highestPlateC > 62, "never near: " + bench.highestPlateC);
  }

  /** Heat withheld for a minute of the warm-up and given back: nothing wound up, it goes on. */
  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void heatWithheldAndGivenBackGoesOnWithoutOvershoot(boolean plateFitted) {
    TrayBench bench = TrayBench.reference(plateFitted, 4).run(300);
    bench.allowed = false;
    bench.run(60);
    bench.allowed = true;
    bench.run(1200);
    assertTrue(bench.outsideUntilS < 720, "in the band after " + bench.outsideUntilS);
    assertTrue(bench.highestBathC < 40.1, "peak " + bench.highestBathC);
    double before = bench.duty;
    bench.allowed = false;
    bench.run(60);
    bench.allowed = true;
    bench.judge();
    bench.run(600);
    assertEquals(40, bench.plant.bathC(), 0.1, "duty before " + before);
    assertTrue(bench.highestBathC < 40.12, "peak " + bench.highestBathC);
  }

  @Test
  void noHeatIsAskedForWhileABathOrAFittedPlateIsNotKnown() {
    TrayBench two = TrayBench.reference(true, 1).run(60);
    assertEquals(1, two.duty);
    assertEquals(0, two.regulator.duty(two.input(Double.NaN, 30)));
    assertEquals(0, two.regulator.duty(two.input(22, Double.NaN)));
    assertTrue(two.regulator.duty(two.input(two.bathReadC, two.plateReadC)) > 0);
    TrayBench one = TrayBench.reference(false, 1).run(60);
    assertEquals(0, one.regulator.duty(one.input(Double.NaN, Double.NaN)));
    assertEquals(1, one.regulator.duty(one.input(one.bathReadC, Double.NaN)));
    TrayRegulator fresh = TrayBench.regulator(TrayModel.REFERENCE, true, Fits.inline());
    assertEquals(0, fresh.duty(two.input(Double.NaN, Double.NaN)));
  }

  /** Readings 3 K from anything the model can explain, for minutes; then they fit again. */
  @Test
  void aPlainPidTakesOverWhereReadingsDoNotFitAndGivesBack() {
    TrayBench bench = TrayBench.reference(true, 1).run(1200);
    assertFalse(bench.tray().lost());
    boolean taken = false;
    for (int i = 0; i < 400; i++) {
      bench.bathOffK = i % 20 < 10 ? 4 : -4; // jumps that no tray makes
      bench.run(1);
      taken |= bench.tray().lost();
      assertTrue(bench.duty >= 0 && bench.duty <= 1);
    }
    assertTrue(taken);
    bench.bathOffK = 0;
    bench.run(1200);
    assertFalse(bench.tray().lost());
    assertEquals(40, bench.plant.bathC(), 0.2);
  }

  /** A fit that fails, or that never comes, leaves the declared tray in force. */
  @Test
  void withoutAnyFitTheDeclaredTrayIsWarmedUpAllTheSame() {
    Fits none =
        new Fits() {
          @Override
          public boolean ask(FitJob job) {
            return false;
          }

          @Override
          public @Nullable FitResult take() {
            return null;
          }
        };
    TrayRegulator regulator = TrayBench.regulator(TrayModel.REFERENCE, true, none);
    TrayBench bench = new TrayBench(PlantParameters.REFERENCE, true, 1, regulator).run(1500);
    assertEquals(TrayBelief.declared(TrayModel.REFERENCE), regulator.belief());
    assertTrue(regulator.lesson().isEmpty());
    assertEquals(40, bench.plant.bathC(), 0.1);
    assertTrue(bench.highestBathC < 40.3, "peak " + bench.highestBathC);
  }

  /**
   * A tray filled with less than set is told of. Temperatures show watts per litre alone, and both
   * are declared within 8 %: they share the difference, and the litres told lie between.
   */
  @Test
  void aThirdLessThanSetIsSeen() {
    PlantParameters tray = Loop.tray(0.7, 18, 250, 1);
    TrayBench bench = new TrayBench(tray, TrayModel.REFERENCE, true, 1).run(1300);
    TrayLesson lesson = bench.regulator.lesson().orElseThrow();
    assertEquals(Math.sqrt(0.7), lesson.litres(), 0.03);
    double wattsPerLitre = lesson.found().belief().model().heaterW() / lesson.litres();
    assertEquals(1, wattsPerLitre / (250 / 0.7), 0.03);
    assertEquals(-1, lesson.against(), lesson.words());
  }
}
