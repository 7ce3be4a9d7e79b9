package trayward.host.app.goals;

import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import trayward.controller.app.Rehearsal;
import trayward.controller.app.RehearsalRow;
import trayward.controller.event.EventKind;
import trayward.controller.event.TrayEvent;
import trayward.controller.event.WithheldReason;
import trayward.controller.regulate.Regulator;
import trayward.controller.sim.Plant;
import trayward.host.report.Turn;

/** Runs one session past a meter. One thread. */
final class GoalRun implements Rehearsal.Listener {

  private static final String LOOKING = WithheldReason.LOOKING.name();

  private static final double STEP_S = 0.1;

  /** A bath that still rises an hour after its heat went off is none, steps. */
  private static final int MOST_STEPS = 36_000;

  private final GoalCase in;
  private final GoalMeter meter;
  private @Nullable Rehearsal rehearsal;

  private GoalRun(GoalCase in, GoalMeter meter) {
    this.in = in;
    this.meter = meter;
  }

  /** The figures of {@code drawn} under {@code regulator}, which is used up by it. */
  static Figures of(GoalScenario drawn, GoalCase in, Regulator regulator) {
    GoalMeter meter = new GoalMeter(drawn.story());
    GoalRun run = new GoalRun(in, meter);
    Rehearsal rehearsal = new Rehearsal(drawn.scenario(), run, scenario -> regulator);
    run.rehearsal = rehearsal;
    rehearsal.run();
    return meter.figures(in);
  }

  @Override
  public void row(RehearsalRow row) {
    meter.row(row.tS(), row.bathTrueC(), row.setC(), row.heaterContact());
  }

  @Override
  public void event(double tS, TrayEvent event) {
    if (event.kind() == EventKind.TRIP) {
      meter.trip();
    } else if (event.kind() == EventKind.WITHHELD && event.subject().equals(LOOKING)) {
      meter.look();
    }
  }

  @Override
  public void turn(double tS, String word, boolean setLowered, OptionalDouble boundS) {
    meter.turn(new Turn(tS, word, setLowered, boundS));
    if (word.equals("cover") && rehearsal != null) {
      meter.coveredBound(coastPeakC(rehearsal.plantNow()) - TrayDraw.SET_C);
    }
  }

  @Override
  public boolean wantsBounds() {
    return !in.covers();
  }

  /** Highest bath temperature of {@code plant} with its heat off from now on, °C. */
  static double coastPeakC(Plant plant) {
    double peakC = plant.bathC();
    for (int i = 0; i < MOST_STEPS; i++) {
      plant.advance(STEP_S, 0);
      if (plant.bathC() <= peakC) {
        break;
      }
      peakC = plant.bathC();
    }
    return peakC;
  }
}
