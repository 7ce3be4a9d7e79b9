package trayward.host.app.goals;

import java.util.EnumMap;
import java.util.Map;
import trayward.controller.app.Rehearsal;
import trayward.controller.app.Scenario;
import trayward.controller.regulate.Fits;
import trayward.controller.regulate.Regulator;
import trayward.controller.regulate.TrayBelief;
import trayward.controller.regulate.TrayDoubt;
import trayward.controller.regulate.TrayRegulator;

/**
 * One seed in every case under every contender. Immutable once made.
 *
 * @param seed the seed
 * @param figures by case and contender; a contender is left out where its figures would repeat
 *     those of {@link GoalCase#othersIn}
 */
record TrayFigures(long seed, Map<GoalCase, Map<Contender, Figures>> figures) {

  /** Runs every session of {@code seed}, one after the other. */
  static TrayFigures of(long seed) {
    Map<GoalCase, Map<Contender, Figures>> all = new EnumMap<>(GoalCase.class);
    GoalCase firstTime = GoalCase.TWO_PROBES;
    TrayDraw tray = TrayDraw.of(seed, true);
    GoalScenario first = GoalScenario.of(tray, firstTime);
    Regulator teacher = Rehearsal.regulator(first.scenario());
    all.put(
        firstTime, new EnumMap<>(Map.of(Contender.OURS, GoalRun.of(first, firstTime, teacher))));
    for (GoalCase in : GoalCase.values()) {
      TrayDraw drawn = in.plateFitted() ? tray : TrayDraw.of(seed, false);
      GoalScenario scenario = GoalScenario.of(drawn, in);
      var byContender = all.computeIfAbsent(in, c -> new EnumMap<>(Contender.class));
      for (Contender contender : Contender.values()) {
        boolean repeats = contender != Contender.OURS && in.othersIn() != in;
        if (!repeats && !byContender.containsKey(contender)) {
          Regulator regulator = regulator(contender, in, scenario.scenario(), teacher);
          byContender.put(contender, GoalRun.of(scenario, in, regulator));
        }
      }
    }
    return new TrayFigures(seed, all);
  }

  private static Regulator regulator(
      Contender contender, GoalCase in, Scenario scenario, Regulator teacher) {
    return switch (contender) {
      case OURS ->
          in == GoalCase.LEARNED ? learned(scenario, teacher) : Rehearsal.regulator(scenario);
      case PID -> PlainPid.of(scenario);
      case THERMOSTAT -> Thermostat.of(scenario);
    };
  }

  /** Ours on a tray it knows from the warm-up of {@code teacher}, filled as then. */
  private static Regulator learned(Scenario scenario, Regulator teacher) {
    TrayBelief belief =
        teacher
            .lesson()
            .map(lesson -> lesson.found().belief())
            .orElseGet(() -> TrayBelief.declared(scenario.model()));
    return new TrayRegulator(
        belief,
        TrayDoubt.LEARNED,
        scenario.room(),
        scenario.limits().plateCeilingC(),
        scenario.plateProbe().present(),
        Fits.inline());
  }

  /** A figure, looked up where the contender met this tray. */
  double figure(GoalCase in, Contender contender, Measure measure) {
    GoalCase where = contender == Contender.OURS ? in : in.othersIn();
    Figures met = figures.getOrDefault(where, Map.of()).get(contender);
    return met == null ? Double.NaN : met.get(measure);
  }
}
