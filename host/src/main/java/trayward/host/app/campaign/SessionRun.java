package trayward.host.app.campaign;

import java.util.Optional;
import java.util.OptionalDouble;
import trayward.controller.app.ConfigRefused;
import trayward.controller.app.Rehearsal;
import trayward.controller.app.RehearsalRow;
import trayward.controller.app.Scenario;
import trayward.controller.event.EventKind;
import trayward.controller.event.TrayEvent;
import trayward.controller.event.TripCause;
import trayward.controller.scan.Snapshot;

/** Runs one session past an oracle. One thread. */
final class SessionRun implements Rehearsal.Listener {

  private final Oracle oracle;

  private SessionRun(Oracle oracle) {
    this.oracle = oracle;
  }

  /** The judgement of a session. */
  static Outcome of(SessionPlan plan) {
    Oracle oracle = new Oracle(plan);
    try {
      Scenario scenario = Scenario.parse("seed " + plan.seed(), plan.toml());
      new Rehearsal(scenario, new SessionRun(oracle)).run();
    } catch (ConfigRefused e) {
      throw new IllegalStateException("the drawn scenario is refused: " + e.line(), e);
    }
    return oracle.outcome();
  }

  @Override
  public void row(RehearsalRow r) {
    Snapshot s = r.snapshot();
    oracle.row(
        new TruthRow(
            r.tS(),
            r.bathTrueC(),
            r.plateTrueC(),
            r.heatW(),
            r.flowTrueM3PerH() / SessionPlan.RATED_M3_PER_H,
            r.setC(),
            r.state(),
            s != null && s.heaterOn(),
            s == null ? "" : name(s.firstOut())));
  }

  private static String name(Optional<TripCause> cause) {
    return cause.isPresent() ? cause.get().name() : "";
  }

  @Override
  public void event(double tS, TrayEvent event) {
    if (event.kind() == EventKind.TRIP) {
      oracle.trip(tS, TripCause.valueOf(event.subject()));
    }
  }

  @Override
  public void turn(double tS, String word, boolean setLowered, OptionalDouble boundS) {}

  @Override
  public boolean wantsBounds() {
    return false;
  }

  @Override
  public boolean enough() {
    return oracle.enough();
  }
}
