package trayward.host.app.campaign;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;

/**
 * Faults that together leave software nothing to see by, or nothing to switch with: what happens
 * then is reported apart, because only the independent hardware of SR-25 can stop it. Data.
 */
@SuppressWarnings("ImmutableEnumChecker") // the sets are copied, the predicates hold nothing
enum Blinding {
  BOTH_PROOFS(
      "both airflow proofs stuck",
      EnumSet.of(Hazard.STILL_AIR),
      "switch and tachometer each say what they said; no third proof is wired",
      p -> has(p, FaultKind.AIRFLOW_STUCK_ON) && has(p, FaultKind.TACH_STUCK)),
  DUCT_UNSEEN(
      "airflow switch stuck on, duct blocked",
      EnumSet.of(Hazard.STILL_AIR),
      "the wheel turns, so the tachometer is right; only the switch could tell",
      p -> has(p, FaultKind.AIRFLOW_STUCK_ON) && has(p, FaultKind.DUCT_BLOCKED)),
  BOTH_CONTACTS(
      "both contacts welded",
      Blinding.heatItself(),
      "no output of the software opens the circuit any more",
      p -> has(p, FaultKind.RELAY_WELDED) && has(p, FaultKind.SAFETY_RELAY_WELDED)),
  FROZEN_AND_WELDED(
      "program stalled, safety contact welded",
      Blinding.heatItself(),
      "the pulse that fails opens nothing, and nobody runs to open the other",
      p -> has(p, FaultKind.SCAN_STALL) && has(p, FaultKind.SAFETY_RELAY_WELDED)),
  ONLY_BATH_PROBE_OFF(
      "the only bath probe reads wrong by a constant",
      EnumSet.of(Hazard.BATH_HOT),
      "a believable reading that is off; without a second probe nothing contradicts it",
      p -> !p.secondFitted() && has(p, FaultKind.PROBE_OFFSET)),
  BOTH_BATH_PROBES(
      "both bath probes lie",
      EnumSet.of(Hazard.BATH_HOT),
      "frozen, off or out of the liquid at once: every sensor of the bath",
      p -> p.secondFitted() && lies(p, Part.BATH_PROBE) && lies(p, Part.SECOND_PROBE)),
  BATH_AND_PLATE(
      "bath and plate probe both lie",
      EnumSet.of(Hazard.BATH_HOT, Hazard.PLATE_HOT),
      "neither shows where the heat goes",
      p -> !p.secondFitted() && lies(p, Part.BATH_PROBE) && lies(p, Part.PLATE_PROBE)),
  ALL_FROZEN(
      "every probe that is wired frozen, in a pair",
      EnumSet.of(Hazard.UNTOLD),
      "readings that all stand are those of a tray at rest that no heat reaches",
      Blinding::allFrozen),
  PLATE_UNSEEN(
      "plate probe lies in a pair",
      EnumSet.of(Hazard.PLATE_HOT),
      "the only sensor of the plate; a second fault heats the plate meanwhile",
      p -> p.tried().size() > 1 && lies(p, Part.PLATE_PROBE)),
  NO_PLATE_PROBE(
      "no plate probe is wired",
      EnumSet.of(Hazard.PLATE_HOT),
      "nothing sees the plate; the notes ask for a thermostat on it",
      p -> !p.plateFitted()),
  ONE_PROBE_AT_REST(
      "one bath probe and no other, at rest",
      EnumSet.of(Hazard.UNTOLD),
      "frozen, or live in a bath that gets no heat: it says the same to the last bit",
      p -> !p.plateFitted() && !p.secondFitted());

  private static final Set<FaultKind> LIES =
      EnumSet.of(
          FaultKind.PROBE_FROZEN,
          FaultKind.PROBE_OFFSET,
          FaultKind.PROBE_OUT,
          FaultKind.SECOND_FROZEN,
          FaultKind.SECOND_OFFSET,
          FaultKind.SECOND_OUT,
          FaultKind.PLATE_FROZEN,
          FaultKind.PLATE_OFFSET,
          FaultKind.PLATE_OUT,
          FaultKind.PLATE_DETACHED);

  private final String words;
  private final Set<Hazard> hides;
  private final String reason;
  private final Predicate<SessionPlan> holds;

  Blinding(String words, Set<Hazard> hides, String reason, Predicate<SessionPlan> holds) {
    this.words = words;
    this.hides = Set.copyOf(hides);
    this.reason = reason;
    this.holds = holds;
  }

  /** All but wrong names: what heat does by itself. */
  private static Set<Hazard> heatItself() {
    return EnumSet.complementOf(EnumSet.of(Hazard.MISNAMED, Hazard.UNTOLD, Hazard.HEALTHY_TRIP));
  }

  String words() {
    return words;
  }

  /** What then cannot be held against the software. */
  Set<Hazard> hides() {
    return hides;
  }

  String reason() {
    return reason;
  }

  boolean holds(SessionPlan plan) {
    return holds.test(plan);
  }

  /** The hazards of a session that are reported apart, each with the first rule that says so. */
  static Map<Hazard, Blinding> apart(SessionPlan plan) {
    Map<Hazard, Blinding> apart = new EnumMap<>(Hazard.class);
    for (Blinding blinding : values()) {
      if (blinding.holds(plan)) {
        blinding.hides.forEach(hazard -> apart.putIfAbsent(hazard, blinding));
      }
    }
    return apart;
  }

  private static boolean has(SessionPlan plan, FaultKind kind) {
    return plan.faults().stream().anyMatch(f -> f.kind() == kind);
  }

  /** Whether a pair of faults leaves no probe that is wired alive. */
  static boolean allFrozen(SessionPlan plan) {
    boolean second = !plan.secondFitted() || has(plan, FaultKind.SECOND_FROZEN);
    boolean plate = !plan.plateFitted() || has(plan, FaultKind.PLATE_FROZEN);
    return plan.tried().size() > 1 && has(plan, FaultKind.PROBE_FROZEN) && second && plate;
  }

  private static boolean lies(SessionPlan plan, Part part) {
    return plan.fitted(part)
        && plan.faults().stream().anyMatch(f -> f.kind().part() == part && LIES.contains(f.kind()));
  }
}
