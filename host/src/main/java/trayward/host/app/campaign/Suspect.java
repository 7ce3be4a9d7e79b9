package trayward.host.app.campaign;

import trayward.controller.event.TripCause;

/**
 * A fault beside the truth of its session: whether it can be behind a lockout, and whether any
 * sensor could have told it from what was named. Mutable; one thread.
 */
final class Suspect {

  /** A bath within one step of a probe, 1/16 K, for a minute is at rest. */
  private static final double STEP_K = 1.0 / 16;

  private static final double REST_S = 60;

  private final FaultPlan fault;
  private final SessionPlan plan;
  private double askedS = Double.NaN;
  private double restC = Double.NaN;
  private double restSinceS = Double.NEGATIVE_INFINITY;
  private double nowS;
  private boolean begun;
  private boolean beganAtRest;

  Suspect(FaultPlan fault, SessionPlan plan) {
    this.fault = fault;
    this.plan = plan;
  }

  void row(TruthRow row) {
    nowS = row.tS();
    if (Double.isNaN(restC)) {
      restC = row.bathC(); // nobody has heated yet
    } else if (Math.abs(row.bathC() - restC) > STEP_K) {
      restC = row.bathC();
      restSinceS = row.tS();
    }
    if (!begun && row.tS() >= fault.atS() - 1e-9) {
      begun = true;
      beganAtRest = rests();
    }
    if (Double.isNaN(askedS) && row.tS() > fault.endS() && row.heatAsked()) {
      askedS = row.tS();
    }
  }

  private boolean rests() {
    return nowS - restSinceS >= REST_S;
  }

  /**
   * Whether it can be behind what happens at {@code tS}. That a heater was mended shows only in
   * heat: where none was asked for since, what was found before it stands as it was.
   */
  boolean acts(double tS) {
    boolean unseen =
        fault.kind().part() == Part.HEATER
            && (Double.isNaN(askedS) || tS <= askedS + FaultPlan.AFTERMATH_S);
    return fault.acts(tS) || (unseen && tS >= fault.atS());
  }

  boolean explains(double tS, TripCause cause) {
    return acts(tS) && fault.explains(cause, plan);
  }

  /**
   * Whether nothing wired tells it from {@code cause}. With one bath probe and no other, a probe
   * that froze while the bath was at rest says just what a live one says of a bath that rests
   * because no heat comes: the true temperature moves by less than the probe's step, and there is
   * no second place to measure at. Where a pair leaves no probe alive there is none either.
   */
  boolean untold(double tS, TripCause cause) {
    if (Blinding.allFrozen(plan) && acts(tS) && cause == TripCause.HEAT_NOT_ARRIVING) {
      return true;
    }
    if (plan.plateFitted() || plan.secondFitted() || !acts(tS)) {
      return false;
    }
    boolean frozen = fault.kind() == FaultKind.PROBE_FROZEN && beganAtRest;
    boolean without = fault.kind().part() == Part.HEATER && rests();
    return (frozen && cause == TripCause.HEAT_NOT_ARRIVING)
        || (without && cause == TripCause.BATH_PROBE_BAD);
  }
}
