package trayward.host.app.campaign;

import java.util.EnumMap;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Counts over a whole campaign, in order of seeds. Bounded by the kinds. Mutable; one thread. */
final class Tally {

  /** As many seeds are named for each misnaming: enough to look at. */
  private static final int NAMED_SEEDS = 8;

  final Map<FaultKind, FaultTally> faults = new EnumMap<>(FaultKind.class);
  final Map<Blinding, ApartTally> apart = new EnumMap<>(Blinding.class);
  final Map<Hazard, Integer> violations = new EnumMap<>(Hazard.class);

  /** Fault kinds and false name, to count and first seeds: at most kinds squared times causes. */
  final Map<String, StringBuilder> misnamed = new TreeMap<>();

  final Map<String, Integer> misnamedCounts = new TreeMap<>();
  final Map<String, StringBuilder> missed = new TreeMap<>();
  final Map<String, Integer> missedCounts = new TreeMap<>();
  long sessions;
  long healthy;
  long pairs;
  long violating;

  void add(Outcome session) {
    SessionPlan plan = session.plan();
    sessions++;
    healthy += plan.healthy() ? 1 : 0;
    pairs += plan.tried().size() > 1 ? 1 : 0;
    violating += session.violations().isEmpty() ? 0 : 1;
    for (FaultOutcome fault : session.faults()) {
      faults.computeIfAbsent(fault.kind(), k -> new FaultTally()).add(fault, session);
      if (fault.missed()) {
        note(missed, missedCounts, kinds(plan) + ": " + fault.kind().words(), plan.seed());
      }
    }
    for (Blinding rule : Blinding.values()) {
      if (rule.holds(plan)) {
        apart.computeIfAbsent(rule, r -> new ApartTally()).add(session, rule);
      }
    }
    for (Finding finding : session.violations()) {
      violations.merge(finding.hazard(), 1, Integer::sum);
      if (finding.hazard() == Hazard.MISNAMED) {
        note(misnamed, misnamedCounts, kinds(plan) + ": " + finding.detail(), plan.seed());
      }
    }
  }

  private static String kinds(SessionPlan plan) {
    return plan.tried().stream()
        .map(f -> f.kind().words())
        .sorted()
        .collect(Collectors.joining(" + "));
  }

  private static void note(
      Map<String, StringBuilder> seeds, Map<String, Integer> counts, String key, long seed) {
    if (counts.merge(key, 1, Integer::sum) <= NAMED_SEEDS) {
      seeds.computeIfAbsent(key, k -> new StringBuilder()).append(' ').append(seed);
    }
  }
}
