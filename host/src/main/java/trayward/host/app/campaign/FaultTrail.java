package trayward.host.app.campaign;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import trayward.controller.event.TripCause;

/** Follows one tried fault through a session. Mutable; one thread. */
final class FaultTrail {

  private static final double ROW_S = 0.1;

  private final FaultPlan fault;
  private final SessionPlan plan;
  private final Need need;
  private String stateBefore = "OFF";
  private boolean begun;
  private double mattersFromS = Double.NaN;
  private double matteredS;
  private @Nullable TripCause trip;
  private double tripS = Double.NaN;
  private boolean misnamed;
  private boolean preempted;

  FaultTrail(FaultPlan fault, SessionPlan plan) {
    this.fault = fault;
    this.plan = plan;
    this.need = fault.need(plan);
  }

  void row(TruthRow row) {
    begun |= row.tS() >= fault.atS() - 1e-9;
    if (!begun) {
      stateBefore = row.state();
      return;
    }
    // Where no trip is needed, times count from the fault's beginning.
    boolean matters = need == Need.NEVER || need.matters(row);
    boolean mended = row.tS() > fault.endS();
    if (trip == null && need.rests(row)) {
      mattersFromS = Double.NaN;
      matteredS = 0;
    }
    if (matters && !mended) {
      mattersFromS = Double.isNaN(mattersFromS) ? row.tS() : mattersFromS;
      matteredS += trip == null ? ROW_S : 0;
    }
  }

  /** A cause latched, first-out or not: detected where this fault explains it. */
  void trip(double tS, TripCause cause) {
    if (tS >= fault.atS() - 1e-9 && trip == null && fault.acts(tS) && fault.explains(cause, plan)) {
      trip = cause;
      tripS = tS;
    }
  }

  /** A lockout began by a name that this fault does not explain; {@code explained} by another. */
  void lockout(double tS, TripCause cause, boolean explained) {
    boolean own = fault.acts(tS) && fault.explains(cause, plan);
    misnamed |= begun && !explained;
    preempted |= begun && explained && !own;
  }

  FaultOutcome outcome() {
    boolean needed = trip != null || (need != Need.NEVER && matteredS >= need.patienceS());
    double fromS = Double.isNaN(mattersFromS) ? tripS : Math.min(mattersFromS, tripS);
    return new FaultOutcome(
        fault.kind(),
        stateBefore,
        needed,
        Optional.ofNullable(trip),
        trip == null ? Double.NaN : Math.max(0, tripS - fromS),
        misnamed,
        preempted);
  }
}
