package trayward.host.app.goals;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** {@code goals.md}: the table with what it means. Stateless. */
final class GoalsNote {

  private static final String HEAD =
      """
      # Goals of the regulator

      Printed by `goals`. Each goal is held against the worst of some random trays that nobody tuned
      for, at a set temperature of 40 °C. **A simulation: the bath is perfectly mixed, contact and
      draught are constant. A real tray is slower and less even.**

      Coupling of plate and bath 12 to 25 W/K, plate 700 to 1800 J/K, 0.5 to 3 L, heater declared as
      150 to 400 W (150 to 250 W where no plate probe is fitted), evaporation 0.5 to 2 times the
      correlation, dry losses 1.5 to 4 W/K, room and tray 12 to 28 °C at the start, lag of the bath
      probe 3 to 15 s, heater up to 15 % weaker than declared, liquid declared within 10 %; trays that
      need more than 0.7 of their heater to hold are left out. The controller is told nothing of this
      but declared liquid and watts.

      Heat-up, pour (0.3 L of 20 °C) and cold sheet (210 J/K, 15 °C) are times until the true bath is
      within 0.2 K of set and stays there, over the least time possible for that very tray with
      perfect knowledge. Overshoot is the warm-up's; ripple is peak to peak over the last 600 s before
      the pour; the standing error is the mean of the hour before the pour, the second of the session
      but for slow trays. Relay: closings and openings in that hour. A bath that leaves the 0.2 K again
      hours later has arrived only when it is back; "never": it was outside at the next disturbance.

      The wall is 400 J/K at 6 W/K. A learned tray has been warmed up once before, filled as then. The
      bound of a covered bath is what it would rise to with the heat off at the moment of covering:
      no regulator stays below.

      Looks: how often the interlock held heat off to see whether heat arrives. Without a plate probe
      a look lasts minutes, and a regulator that moves the bath roughly earns many: much of what the
      others lose with one probe they lose to it.

      The PID has the gains of Ziegler and Nichols (ultimate cycle) for the tray as the controller
      believes it, and back-calculation; the thermostat switches 0.125 K above and below set. Both
      keep the plate as cool as ours does, behind the same interlock.

      ![heat-up, pour and cold sheet of every tray](goals.svg)
      """;

  private GoalsNote() {}

  static String of(Measured m, double wallS) {
    StringBuilder out = new StringBuilder(HEAD);
    out.append(
        String.format(
            Locale.ROOT,
            "%n%d trays from seed %d; %.0f s on two threads at most.%n%n",
            m.trays().size(),
            m.fromSeed(),
            wallS));
    out.append("    ").append(GoalsText.verdict(m).strip().replace("\n", "\n    ")).append('\n');
    for (GoalCase in : GoalCase.values()) {
      table(out, m, in);
    }
    out.append("\n## Worst trays\n\n");
    out.append("`goals --trays 1 --seed SEED` runs one again.\n\n");
    worst(out, m);
    return out.toString().replace("\r", "");
  }

  private static void table(StringBuilder out, Measured m, GoalCase in) {
    out.append("\n## ").append(in.words()).append("\n\n");
    row(
        out,
        List.of(
            "",
            "goal",
            "worst",
            "90 %",
            "median",
            "seed",
            "",
            "PID worst",
            "median",
            "thermostat worst",
            "median"));
    row(out, java.util.Collections.nCopies(11, "---"));
    for (Measure measure : in.measures()) {
      Spread ours = m.spread(in, Contender.OURS, measure);
      Spread pid = m.spread(in, Contender.PID, measure);
      Spread onOff = m.spread(in, Contender.THERMOSTAT, measure);
      row(
          out,
          List.of(
              measure.words(),
              GoalsText.goal(in, measure),
              measure.told(ours.worst()),
              measure.told(ours.p90()),
              measure.told(ours.median()),
              Long.toString(ours.worstSeed()),
              GoalsText.verdict(m, in, measure),
              measure.told(pid.worst()),
              measure.told(pid.median()),
              measure.told(onOff.worst()),
              measure.told(onOff.median())));
    }
  }

  private static void worst(StringBuilder out, Measured m) {
    List<String> names = List.copyOf(TrayDraw.of(m.fromSeed(), true).named().keySet());
    row(out, List.of("case", "seed", String.join(" | ", names)));
    row(out, java.util.Collections.nCopies(2 + names.size(), "---"));
    for (GoalCase in : GoalCase.values()) {
      for (long seed : m.worstSeeds(in)) {
        Map<String, Double> tray = TrayDraw.of(seed, in.plateFitted()).named();
        String numbers =
            tray.values().stream()
                .map(v -> String.format(Locale.ROOT, "%.4g", v))
                .collect(Collectors.joining(" | "));
        row(out, List.of(in.key(), Long.toString(seed), numbers));
      }
    }
  }

  private static void row(StringBuilder out, List<String> cells) {
    out.append("| ").append(String.join(" | ", cells)).append(" |\n");
  }
}
