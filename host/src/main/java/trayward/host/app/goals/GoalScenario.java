package trayward.host.app.goals;

import java.util.Locale;
import trayward.controller.app.ConfigRefused;
import trayward.controller.app.Rehearsal;
import trayward.controller.app.Scenario;
import trayward.controller.safety.Limit;
import trayward.controller.sim.Plant;
import trayward.controller.sim.TimeOptimal;

/**
 * A tray in a case, as a scenario that {@code rehearse} takes too. Immutable.
 *
 * @param story what is done and when
 * @param toml the scenario's text
 * @param scenario the same, checked
 */
record GoalScenario(Story story, String toml, Scenario scenario) {

  static GoalScenario of(TrayDraw tray, GoalCase in) {
    Scenario draft = parse(tray, tray.tables(in));
    double boundS =
        TimeOptimal.secondsToBand(
                new Plant(draft.plant()),
                TrayDraw.SET_C,
                draft.limits().get(Limit.PLATE_HARD_C),
                Rehearsal.BAND_K)
            .orElseThrow(); // a heater that holds the bath with 0.7 of its power gets it there
    Story story = Story.of(in, boundS);
    String head =
        String.format(
            Locale.ROOT,
            "name = \"%s, seed %d\"\nseed = %d\nduration_s = %.1f\n",
            in.words(),
            tray.seed(),
            tray.noiseSeed(in),
            story.endS());
    String toml = head + tray.tables(in) + story.entries();
    return new GoalScenario(story, toml, parse(tray, toml));
  }

  private static Scenario parse(TrayDraw tray, String toml) {
    try {
      return Scenario.parse("seed " + tray.seed(), toml);
    } catch (ConfigRefused e) {
      throw new IllegalStateException("the drawn scenario is refused: " + e.line(), e);
    }
  }
}
