package trayward.host.app.campaign;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import trayward.controller.app.Scenario;

/** What two thousand seeds draw. */
class SessionDiceTest {

  private static final int SEEDS = 2000;

  @Test
  void everyFaultMeetsEveryStateAndBothWaysToWireTheTray() {
    Map<FaultKind, Set<Reached>> states = new EnumMap<>(FaultKind.class);
    Map<FaultKind, Set<String>> wiring = new EnumMap<>(FaultKind.class);
    for (long seed = 1; seed <= SEEDS; seed++) {
      SessionPlan plan = SessionDice.of(seed);
      for (FaultPlan fault : plan.tried()) {
        states
            .computeIfAbsent(fault.kind(), k -> EnumSet.noneOf(Reached.class))
            .add(plan.reached());
        wiring
            .computeIfAbsent(fault.kind(), k -> new HashSet<>())
            .add(plan.plateFitted() + " " + plan.secondFitted());
      }
    }
    for (FaultKind kind : FaultKind.values()) {
      assertEquals(EnumSet.allOf(Reached.class), states.get(kind), kind.words());
      assertEquals(4, wiring.getOrDefault(kind, Set.of()).size(), kind.words());
    }
  }

  @Test
  void aTenthIsHealthyAndHalfOfTheRestArePairsOfDifferentParts() {
    int healthy = 0;
    int pairs = 0;
    for (long seed = 1; seed <= SEEDS; seed++) {
      SessionPlan plan = SessionDice.of(seed);
      healthy += plan.tried().isEmpty() ? 1 : 0;
      if (plan.tried().size() == 2) {
        pairs++;
        assertFalse(
            plan.tried().get(0).kind().part() == plan.tried().get(1).kind().part(), plan.brief());
      }
    }
    assertTrue(healthy > SEEDS * 0.08 && healthy < SEEDS * 0.12, "healthy " + healthy);
    assertTrue(pairs > SEEDS * 0.4 && pairs < SEEDS * 0.5, "pairs " + pairs);
  }

  @Test
  void everyDrawnSessionIsAScenarioThatTheProgramAccepts() throws Exception {
    for (long seed = 1; seed <= 300; seed++) {
      SessionPlan plan = SessionDice.of(seed);
      Scenario scenario = Scenario.parse("seed " + seed, plan.toml());
      assertTrue(scenario.durationS() > plan.lastEntryS(), plan.brief());
      double watts = scenario.plant().heaterW();
      assertTrue(watts <= (plan.plateFitted() ? 400 : 250), "seed " + seed + ": " + watts);
    }
  }

  @Test
  void aSeedDrawsTheSameSessionAgainAndAnotherSeedAnother() {
    assertEquals(SessionDice.of(17), SessionDice.of(17));
    assertFalse(SessionDice.of(17).toml().equals(SessionDice.of(18).toml()));
  }
}
