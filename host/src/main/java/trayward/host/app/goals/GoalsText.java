package trayward.host.app.goals;

import java.util.Locale;
import java.util.OptionalDouble;

/** The table for a terminal. Stateless. */
final class GoalsText {

  private GoalsText() {}

  static String of(Measured m, double wallS) {
    StringBuilder out = new StringBuilder();
    for (GoalCase in : GoalCase.values()) {
      out.append(in.words()).append('\n');
      row(out, "", "goal", "worst", "90 %", "median", "seed", "", "PID", "therm.");
      for (Measure measure : in.measures()) {
        row(out, m, in, measure);
      }
      out.append('\n');
    }
    out.append(verdict(m));
    out.append(
        String.format(
            Locale.ROOT,
            "%d trays from seed %d, %.0f s; seed: of the worst tray; PID and thermostat: worst.%n",
            m.trays().size(),
            m.fromSeed(),
            wallS));
    return out.toString();
  }

  private static void row(StringBuilder out, Measured m, GoalCase in, Measure measure) {
    Spread ours = m.spread(in, Contender.OURS, measure);
    row(
        out,
        measure.words(),
        goal(in, measure),
        measure.told(ours.worst()),
        measure.told(ours.p90()),
        measure.told(ours.median()),
        Long.toString(ours.worstSeed()),
        verdict(m, in, measure),
        measure.told(m.spread(in, Contender.PID, measure).worst()),
        measure.told(m.spread(in, Contender.THERMOSTAT, measure).worst()));
  }

  private static void row(StringBuilder out, Object... cells) {
    out.append(String.format(Locale.ROOT, "%-24s %7s %8s %8s %8s %7s %-7s %9s %9s%n", cells));
  }

  /** A goal for a table; nothing where nothing is asked. */
  static String goal(GoalCase in, Measure measure) {
    OptionalDouble goal = in.goal(measure);
    return goal.isEmpty()
        ? ""
        : measure == Measure.TRIPS
            ? "none"
            : String.format(Locale.ROOT, "%.2f", goal.getAsDouble());
  }

  /** Whether a goal is met, for a table. */
  static String verdict(Measured m, GoalCase in, Measure measure) {
    return in.goal(measure).isEmpty() ? "" : m.met(in, measure) ? "met" : "MISSED";
  }

  /** Every goal missed, and by how many trays. */
  static String verdict(Measured m) {
    StringBuilder out = new StringBuilder();
    for (Measured.Missed missed : m.missed()) {
      out.append(
          String.format(
              Locale.ROOT,
              "MISSED by %d of %d trays: %s, %s%n",
              missed.trays(),
              m.trays().size(),
              missed.in().words(),
              missed.measure().words()));
    }
    out.append(
        String.format(
            Locale.ROOT,
            "%d of %d goals met.%n",
            Measured.goals() - m.missed().size(),
            Measured.goals()));
    return out.toString();
  }
}
