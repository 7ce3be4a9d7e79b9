package trayward.host.report.plan;

import java.util.List;
import java.util.Map;
import trayward.host.bath.Checked;

/** One planner: options in, an answer out. Without state; safe on any thread. */
public sealed interface Planner permits AirPlan, HeatPlan, MixPlan, ExposurePlan, BathPlan {

  /** Its name, a word. */
  String name();

  /** What it works out, in a line. */
  String description();

  /** What it may be told. */
  List<PlanOption> options();

  /**
   * Its answer, or the first thing wrong with what it was told.
   *
   * @param told what was written for each option, by name
   */
  default Checked<PlanAnswer> answer(Map<String, String> told) {
    Checked<PlanWords> read = PlanWords.read(told, options());
    if (read instanceof Checked.Good<PlanWords> good) {
      return answer(good.value());
    }
    return new Checked.Bad<>(((Checked.Bad<PlanWords>) read).problem());
  }

  /** Its answer to options within their ranges, or how they do not belong together. */
  Checked<PlanAnswer> answer(PlanWords words);
}
