package trayward.host.app.goals;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import trayward.controller.sim.PlantParameters;

/** The trays: within the ranges of the goals, all different, and what the scenario says. */
class TrayDrawTest {

  private static final int TRAYS = 500;

  private static List<TrayDraw> trays(boolean plateFitted) {
    return LongStream.range(0, TRAYS).mapToObj(seed -> TrayDraw.of(seed, plateFitted)).toList();
  }

  private static void within(double from, double to, double value) {
    assertTrue(from <= value && value <= to, value + " is not within " + from + " to " + to);
  }

  @Test
  void everyTrayLiesWithinTheRangesOfTheGoals() {
    for (boolean plateFitted : new boolean[] {true, false}) {
      for (TrayDraw tray : trays(plateFitted)) {
        within(0.5, 3, tray.liquidL());
        within(0.899, 1.101, tray.declaredL() / tray.liquidL());
        within(700, 1800, tray.plateJPerK());
        within(12, 25, tray.couplingWPerK());
        within(1.5, 4, tray.lossWPerK());
        within(0.5, 2, tray.evaporation());
        within(150, plateFitted ? 400 : 250, tray.declaredW());
        within(0.8499, 1.0001, tray.heaterW() / tray.declaredW());
        within(12, 28, tray.airC());
        within(3, 15, tray.lagS());
        within(0, 0.7, tray.holdDuty());
      }
    }
  }

  /** Neighbouring seeds of a weak generator begin alike; the mean step of fair draws is a third. */
  @Test
  void neighbouringSeedsHaveNothingInCommon() {
    List<TrayDraw> trays = trays(true);
    double steps = 0;
    for (int i = 1; i < TRAYS; i++) {
      steps += Math.abs(trays.get(i).airC() - trays.get(i - 1).airC()) / (28 - 12);
    }
    assertEquals(1.0 / 3, steps / (TRAYS - 1), 0.05);
  }

  @Test
  void aSeedIsAlwaysTheSameTray() {
    assertEquals(TrayDraw.of(7, true), TrayDraw.of(7, true));
    assertNotEquals(TrayDraw.of(7, true), TrayDraw.of(8, true));
  }

  @Test
  void noTwoCasesHearTheSameNoise() {
    Set<Long> seeds = new HashSet<>();
    for (TrayDraw tray : trays(true)) {
      for (GoalCase in : GoalCase.values()) {
        seeds.add(tray.noiseSeed(in));
      }
    }
    assertEquals(TRAYS * GoalCase.values().length, seeds.size());
  }

  @Test
  void theScenarioIsTheVeryTray() {
    TrayDraw tray = TrayDraw.of(3, true);
    GoalScenario drawn = GoalScenario.of(tray, GoalCase.TRAY_WALL);
    PlantParameters plant = drawn.scenario().plant();
    assertEquals(tray.liquidL(), plant.liquidL());
    assertEquals(tray.heaterW(), plant.heaterW());
    assertEquals(tray.plateJPerK(), plant.plateJPerK());
    assertEquals(tray.couplingWPerK(), plant.plateToBathWPerK());
    assertEquals(tray.airC(), plant.airC());
    assertEquals(tray.airC(), plant.startC());
    assertEquals(400, plant.wallJPerK());
    assertEquals(6, plant.wallToBathWPerK());
    assertEquals(tray.declaredL(), drawn.scenario().model().liquidL());
    assertEquals(tray.declaredW(), drawn.scenario().model().heaterW());
    assertEquals(tray.lagS(), drawn.scenario().bathProbe().lagS());
  }

  /** What is not declared the controller must not know. */
  @Test
  void theControllerBelievesTheReferenceTrayBesideWhatIsDeclared() {
    var model = GoalScenario.of(TrayDraw.of(3, true), GoalCase.TWO_PROBES).scenario().model();
    assertEquals(PlantParameters.REFERENCE.plateJPerK(), model.plateJPerK());
    assertEquals(PlantParameters.REFERENCE.plateToBathWPerK(), model.plateToBathWPerK());
    assertEquals(PlantParameters.REFERENCE.bathLossWPerK(), model.bathLossWPerK());
    assertEquals(1, model.evaporationFactor());
  }
}
