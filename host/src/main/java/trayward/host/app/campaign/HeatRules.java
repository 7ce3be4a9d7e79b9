package trayward.host.app.campaign;

import java.util.List;

/**
 * When heat may flow at all, told from what the person did and from the trips: it needs a start
 * that nothing has ended. Numbers are those of the design, written out anew. Mutable; one thread.
 */
final class HeatRules {

  /** SR-05, SR-14: heat is off this long after what ends it, s. */
  static final double OFF_S = 1.0;

  /** SR-18: a frozen program is without heat within this, s. */
  static final double FROZEN_S = 2.0;

  /** SR-05: air counts as moving above this share of the rated flow. */
  static final double MOVING_SHARE = 0.5;

  private static final double SLACK_S = 1e-6;

  private final List<SessionPlan.Act> acts;
  private final List<FaultPlan> losses;
  private final Findings findings;
  private int nextAct;
  private boolean started;
  private boolean tripped;
  private boolean acknowledged;
  private boolean powerless;
  private Hazard ended = Hazard.BY_ITSELF;
  private String why = "never started";
  private double endedS = Double.NEGATIVE_INFINITY;
  private double stillSinceS = Double.NaN;
  private double stateSinceS;
  private String state = "";

  HeatRules(SessionPlan plan, Findings findings) {
    this.acts = plan.acts();
    this.losses = plan.faults().stream().filter(f -> f.kind() == FaultKind.POWER_LOSS).toList();
    this.findings = findings;
  }

  /** A trip latched: heat needs an acknowledgement, a reset and a start, in this order. */
  void trip(double tS, String cause) {
    tripped = true;
    acknowledged = false;
    end(tS, Hazard.BY_ITSELF, "after the trip " + cause);
  }

  void row(TruthRow row) {
    mains(row.tS());
    while (nextAct < acts.size() && acts.get(nextAct).atS() <= row.tS() + SLACK_S) {
      act(acts.get(nextAct++));
    }
    if (!row.state().equals(state)) {
      state = row.state();
      stateSinceS = row.tS();
    }
    boolean moving = row.flowShare() >= MOVING_SHARE;
    stillSinceS = moving ? Double.NaN : Double.isNaN(stillSinceS) ? row.tS() : stillSinceS;
    if (row.heatW() > 0) {
      judge(row);
    }
  }

  private void mains(double tS) {
    boolean without = false;
    for (FaultPlan loss : losses) {
      without |= tS >= loss.atS() - SLACK_S && tS < loss.endS() - SLACK_S;
    }
    if (without && !powerless) {
      end(tS, Hazard.BY_ITSELF, "after a power loss");
    }
    powerless = without;
  }

  private void act(SessionPlan.Act act) {
    switch (act.word()) {
      case "stop" -> end(act.atS(), Hazard.AFTER_STOP, "after stop");
      case "acknowledge" -> acknowledged |= tripped && !powerless;
      case "reset" -> tripped &= !acknowledged || powerless;
      case "start" -> started |= !tripped && !powerless;
      default -> {} // nothing else begins or ends heat
    }
  }

  private void end(double tS, Hazard hazard, String reason) {
    if (started) {
      endedS = tS;
      ended = hazard;
      why = reason;
    }
    started = false;
  }

  private void judge(TruthRow row) {
    double t = row.tS();
    if (t - stillSinceS > OFF_S + SLACK_S) {
      findings.add(Hazard.STILL_AIR, t, "flow under half of rated since " + stillSinceS + " s");
    }
    if (!started && t - endedS > OFF_S + SLACK_S) {
      findings.add(ended, t, why + " at " + endedS + " s, state " + state);
    }
    double hereS = t - stateSinceS;
    switch (state) {
      case "OFF", "PROVING", "AFTER_RUN", "LOCKOUT", "NO_POWER" -> {
        if (hereS > OFF_S + SLACK_S) {
          findings.add(Hazard.WRONG_STATE, t, state + " since " + stateSinceS + " s");
        }
      }
      case "STALLED" -> {
        if (hereS > FROZEN_S + SLACK_S) {
          findings.add(Hazard.FROZEN_PROGRAM, t, "stalled since " + stateSinceS + " s");
        }
      }
      default -> {} // READY, HEATING, HOLDING may heat; PURGING tries each contact alone
    }
  }
}
