package trayward.host.app.campaign;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import trayward.controller.event.TripCause;

/**
 * Judges one session row by row from the plant's truth. It knows the design's numbers and words and
 * nothing of the interlock's code. Mutable; one thread; used once.
 */
final class Oracle {

  /** Nothing more to come after this long in lockout, s: plate and bath have levelled off. */
  private static final double SETTLED_S = 300;

  private final SessionPlan plan;
  private final Findings findings = new Findings();
  private final HeatRules heat;
  private final HeatPeaks peaks;
  private final List<FaultTrail> trails;
  private final List<Suspect> suspects;
  private final List<NamedTrip> names = new ArrayList<>();
  private final double lastEntryS;
  private final boolean toTheEnd;
  private String firstOut = "";
  private double lockedSinceS = Double.NaN;
  private boolean enough;

  /** A lockout and its name, and whether the truth explains it. */
  record NamedTrip(double tS, TripCause cause, boolean explained) {}

  Oracle(SessionPlan plan) {
    this.plan = plan;
    this.heat = new HeatRules(plan, findings);
    this.peaks = new HeatPeaks(findings);
    this.trails = plan.tried().stream().map(f -> new FaultTrail(f, plan)).toList();
    this.suspects = plan.faults().stream().map(f -> new Suspect(f, plan)).toList();
    this.lastEntryS = plan.lastEntryS();
    this.toTheEnd = plan.whole() || Blinding.BOTH_CONTACTS.holds(plan);
  }

  /** A cause latched; told before the row of the same time. */
  void trip(double tS, TripCause cause) {
    heat.trip(tS, cause.name());
    trails.forEach(trail -> trail.trip(tS, cause));
    if (plan.healthy()) {
      findings.add(Hazard.HEALTHY_TRIP, tS, cause.name());
    }
  }

  /** The next tenth of a second. */
  void row(TruthRow row) {
    heat.row(row);
    peaks.row(row);
    for (FaultTrail trail : trails) {
      trail.row(row);
    }
    for (Suspect suspect : suspects) {
      suspect.row(row);
    }
    if (!row.firstOut().equals(firstOut)) {
      firstOut = row.firstOut();
      if (!firstOut.isEmpty()) {
        lockout(row.tS(), TripCause.valueOf(firstOut));
      }
    }
    boolean locked = row.state().equals("LOCKOUT");
    lockedSinceS = !locked ? Double.NaN : Double.isNaN(lockedSinceS) ? row.tS() : lockedSinceS;
    double quietSinceS = Math.max(lockedSinceS, lastEntryS);
    enough = !toTheEnd && row.tS() - quietSinceS >= SETTLED_S;
  }

  private void lockout(double tS, TripCause cause) {
    boolean explained =
        suspects.stream().anyMatch(s -> s.explains(tS, cause))
            || (cause == TripCause.BATH_TOO_HOT && peaks.bathTooHot(tS))
            || (cause == TripCause.PLATE_TOO_HOT && peaks.plateTooHot(tS));
    names.add(new NamedTrip(tS, cause, explained)); // bounded: each needs a reset of the person's
    boolean untold = !explained && suspects.stream().anyMatch(s -> s.untold(tS, cause));
    if (!explained && !plan.healthy()) {
      findings.add(untold ? Hazard.UNTOLD : Hazard.MISNAMED, tS, cause.name());
    }
    for (FaultTrail trail : trails) {
      trail.lockout(tS, cause, explained || untold);
    }
  }

  /** Whether nothing more can come. */
  boolean enough() {
    return enough;
  }

  /** The judgement. */
  Outcome outcome() {
    Map<Hazard, Blinding> apart = Blinding.apart(plan);
    List<Finding> violations = new ArrayList<>();
    List<Finding> besides = new ArrayList<>();
    for (Finding finding : findings.all()) {
      (apart.containsKey(finding.hazard()) ? besides : violations).add(worst(finding));
    }
    return new Outcome(
        plan,
        violations,
        besides,
        trails.stream().map(FaultTrail::outcome).toList(),
        List.copyOf(names),
        peaks.bathC(),
        peaks.plateC());
  }

  private Finding worst(Finding finding) {
    String detail =
        switch (finding.hazard()) {
          case BATH_HOT -> String.format(Locale.ROOT, "at most %.1f °C", peaks.bathC());
          case PLATE_HOT -> String.format(Locale.ROOT, "at most %.1f °C", peaks.plateC());
          case STILL_AIR,
              AFTER_STOP,
              BY_ITSELF,
              WRONG_STATE,
              FROZEN_PROGRAM,
              MISNAMED,
              UNTOLD,
              HEALTHY_TRIP ->
              finding.detail();
        };
    return new Finding(finding.hazard(), finding.tS(), detail);
  }
}
