package trayward.host.app.campaign;

import java.util.List;
import trayward.controller.event.TripCause;

/** A session told to the oracle row by row by a test: it believes what it is told. */
final class Told {

  private final Oracle oracle;
  private double tS;
  private double bathC = 40;
  private double plateC = 45;
  private double flowShare = 1;
  private String firstOut = "";

  private Told(SessionPlan plan) {
    this.oracle = new Oracle(plan);
  }

  /** A tray with both probes, or without the plate's; a start at 0 s and further acts. */
  static Told session(boolean plate, List<FaultPlan> faults, SessionPlan.Act... later) {
    List<SessionPlan.Act> acts = new java.util.ArrayList<>();
    acts.add(act(0, "start"));
    acts.addAll(List.of(later));
    return new Told(
        new SessionPlan(1, Reached.HOLDING, 3600, "", plate, true, faults, acts, false));
  }

  /** A tray with one bath probe and no other. */
  static Told alone(List<FaultPlan> faults) {
    List<SessionPlan.Act> acts = List.of(act(0, "start"));
    return new Told(
        new SessionPlan(1, Reached.HOLDING, 3600, "", false, false, faults, acts, false));
  }

  static SessionPlan.Act act(double atS, String word) {
    return new SessionPlan.Act(atS, word, "");
  }

  static FaultPlan fault(FaultKind kind, double atS, double size) {
    return new FaultPlan(kind, atS, Double.POSITIVE_INFINITY, size, false);
  }

  Told bath(double celsius) {
    bathC = celsius;
    return this;
  }

  Told plate(double celsius) {
    plateC = celsius;
    return this;
  }

  Told flow(double share) {
    flowShare = share;
    return this;
  }

  /** Time goes on to {@code toS} in a state, with so much true heat. */
  Told until(double toS, String state, double heatW) {
    for (long k = Math.round(tS * 10) + 1; k <= Math.round(toS * 10); k++) {
      tS = k / 10.0;
      oracle.row(
          new TruthRow(
              tS, bathC, plateC, heatW, flowShare, 40, state, state.equals("HOLDING"), firstOut));
    }
    return this;
  }

  /** A lockout by this name in the next row. */
  Told trips(TripCause cause) {
    oracle.trip(tS + 0.1, cause);
    firstOut = cause.name();
    return until(tS + 0.1, "LOCKOUT", 0);
  }

  /** The latch is reset. */
  Told unlatched() {
    firstOut = "";
    return this;
  }

  Outcome outcome() {
    return oracle.outcome();
  }

  List<Hazard> hazards() {
    return outcome().violations().stream().map(Finding::hazard).toList();
  }
}
