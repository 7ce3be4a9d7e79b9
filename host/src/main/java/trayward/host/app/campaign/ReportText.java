package trayward.host.app.campaign;

import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** {@code campaign.md} and the screen's summary. Stateless. */
final class ReportText {

  private static final String HEAD =
      """
      # Fault campaign

      Random faults in random sessions against the simulated tray, judged by an oracle that shares no
      code with the interlock. A simulation proves nothing about a real fan, relay or tray: it finds
      mistakes in the logic. Software only withholds heat.

      """;

  private static final String FAULTS =
      """

      ## Faults

      Sessions count single faults and pairs. A fault matters once it can change anything (air: from
      proving to holding; heat: commanded heat; a bad frame: out of OFF; contacts: in a purge or with
      heat possible); detection time runs from there, or from its beginning where no trip is needed, to
      the first trip it explains, anew where a run ended in between. "Missed" mattered long enough and tripped nothing; "other first": a
      lockout by the other fault of a pair came first. Temperatures are true ones, without the sessions
      reported apart.

      | fault | sessions | mattered | detected by | p50 s | p99 s | max s | bath °C | plate °C | misnamed | missed | other first |
      |---|---|---|---|---|---|---|---|---|---|---|---|
      """;

  private ReportText() {}

  static String of(Tally tally, long from, double wallS) {
    StringBuilder out = new StringBuilder(HEAD);
    out.append(counts(tally, from)).append(String.format(Locale.ROOT, "Wall %.1f s.\n", wallS));
    out.append("\n## Violations\n\n").append(violations(tally)).append(FAULTS);
    tally.faults.forEach((kind, fault) -> out.append(row(kind, fault)));
    out.append("\n## Reported apart\n\nOnly the independent hardware of SR-25 can stop these; ")
        .append("a name that no sensor could tell needs another probe.\n\n");
    out.append("| what | why | sessions | beyond a bound | first seed | bath °C | plate °C |\n");
    out.append("|---|---|---|---|---|---|---|\n");
    tally.apart.forEach((rule, apart) -> out.append(row(rule, apart)));
    named(out, "Misnamed", tally.misnamedCounts, tally.misnamed);
    named(out, "Missed", tally.missedCounts, tally.missed);
    out.append("\n## States\n\nState told just before the fault began.\n\n| fault | ");
    out.append(ReportCsv.states(" | ")).append(" |\n|---|");
    out.append("---|".repeat(Reached.values().length)).append('\n');
    tally.faults.forEach((kind, fault) -> out.append(states(kind, fault)));
    return out.toString();
  }

  private static String counts(Tally t, long from) {
    return String.format(
        Locale.ROOT,
        "Seeds %d to %d: %d healthy, %d with one fault, %d with a pair; %d with a violation.\n",
        from,
        from + t.sessions - 1,
        t.healthy,
        t.sessions - t.healthy - t.pairs,
        t.pairs,
        t.violating);
  }

  private static String violations(Tally tally) {
    return tally.violations.isEmpty()
        ? "None.\n"
        : tally.violations.entrySet().stream()
            .map(e -> "- " + e.getKey().words() + ": " + e.getValue() + "\n")
            .collect(Collectors.joining());
  }

  private static String row(FaultKind kind, FaultTally f) {
    String by =
        f.detectedBy.entrySet().stream()
            .map(e -> e.getKey() + " " + e.getValue())
            .collect(Collectors.joining(", "));
    return String.format(
        Locale.ROOT,
        "| %s | %d | %s | %s | %s | %s | %s | %s | %s | %d | %d | %d |\n",
        kind.words(),
        f.sessions,
        kind.need() == Need.NEVER ? "no trip needed" : String.valueOf(f.needed),
        by.isEmpty() ? "–" : by,
        ReportCsv.words(f.detectS(50)),
        ReportCsv.words(f.detectS(99)),
        ReportCsv.words(f.detectS(100)),
        ReportCsv.words(f.bathC),
        ReportCsv.words(f.plateC),
        f.misnamed,
        f.missed,
        f.preempted);
  }

  private static String row(Blinding rule, ApartTally a) {
    return String.format(
        Locale.ROOT,
        "| %s | %s | %d | %d | %s | %.1f | %.1f |\n",
        rule.words(),
        rule.reason(),
        a.sessions,
        a.findings,
        a.firstSeed < 0 ? "–" : String.valueOf(a.firstSeed),
        a.bathC,
        a.plateC);
  }

  private static void named(
      StringBuilder out,
      String title,
      Map<String, Integer> counts,
      Map<String, StringBuilder> seeds) {
    out.append("\n## ").append(title).append("\n\n");
    out.append(counts.isEmpty() ? "None.\n" : "");
    counts.forEach(
        (key, count) ->
            out.append("- ")
                .append(key)
                .append(": ")
                .append(count)
                .append(", seeds")
                .append(seeds.getOrDefault(key, new StringBuilder()))
                .append('\n'));
  }

  private static String states(FaultKind kind, FaultTally fault) {
    StringBuilder out = new StringBuilder("| ").append(kind.words()).append(" |");
    for (Reached state : Reached.values()) {
      out.append(' ').append(fault.states.getOrDefault(state.name(), 0)).append(" |");
    }
    return out.append('\n').toString();
  }

  /** One screen for the person. */
  static String summary(Tally tally, long from, double wallS) {
    StringBuilder out = new StringBuilder(counts(tally, from));
    tally.violations.forEach(
        (hazard, count) ->
            out.append(String.format(Locale.ROOT, "  %-36s %d\n", hazard.words(), count)));
    int missed = tally.missedCounts.values().stream().mapToInt(Integer::intValue).sum();
    int apart = tally.apart.values().stream().mapToInt(a -> a.findings).sum();
    out.append(
        String.format(
            Locale.ROOT,
            "Faults missed %d; reported apart, for independent hardware to stop, %d; %.0f s.\n",
            missed,
            apart,
            wallS));
    return out.toString();
  }
}
