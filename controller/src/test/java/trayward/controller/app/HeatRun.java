package trayward.controller.app;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import trayward.controller.event.EventKind;
import trayward.controller.event.TrayEvent;
import trayward.controller.scan.Snapshot;

/** One rehearsal as the tests of the watch over heat see it. */
final class HeatRun implements Rehearsal.Listener {

  private final List<String> trips = new ArrayList<>();
  private double firstTripS = Double.NaN;
  private double maxBathC = -99;
  private double maxPlateC = -99;
  private double heatedS;
  private double commandedS;
  private double heatAfterTripS;

  /** Runs a scenario given as text. */
  static HeatRun of(String toml) throws ConfigRefused {
    HeatRun run = new HeatRun();
    new Rehearsal(Scenario.parse("test", toml), run).run();
    return run;
  }

  /** A run to {@code setC} with a fault at {@code atS}, twenty minutes long after it. */
  static HeatRun fault(String kind, String tray, boolean plate, double setC, int atS)
      throws ConfigRefused {
    return of(
        String.format(
            Locale.ROOT,
            """
            seed = 5
            duration_s = %d
            [tray]
            %s
            [plate_probe]
            present = %s
            [control]
            set_c = %.1f
            [[at]]
            t_s = 0
            do = "start"
            [[fault]]
            t_s = %d
            kind = "%s"
            """,
            atS + 1200,
            tray,
            plate,
            setC,
            atS,
            kind));
  }

  /** Causes in the order in which they tripped. */
  List<String> trips() {
    return trips;
  }

  /** The first one, or nothing. */
  String firstOut() {
    return trips.isEmpty() ? "" : trips.get(0);
  }

  double firstTripS() {
    return firstTripS;
  }

  double maxBathC() {
    return maxBathC;
  }

  double maxPlateC() {
    return maxPlateC;
  }

  double heatedS() {
    return heatedS;
  }

  /** Time for which heat was commanded, s. */
  double commandedS() {
    return commandedS;
  }

  /** True heat later than a second after the first trip, s. */
  double heatAfterTripS() {
    return heatAfterTripS;
  }

  @Override
  public void row(RehearsalRow row) {
    maxBathC = Math.max(maxBathC, row.bathTrueC());
    maxPlateC = Math.max(maxPlateC, row.plateTrueC());
    Snapshot scan = row.snapshot();
    commandedS += scan != null && scan.heaterOn() && scan.safetyRelay() ? 0.1 : 0;
    if (row.heatW() > 0) {
      heatedS += 0.1;
      heatAfterTripS += row.tS() > firstTripS + 1 ? 0.1 : 0;
    }
  }

  @Override
  public void event(double tS, TrayEvent event) {
    if (event.kind() == EventKind.TRIP) {
      trips.add(event.subject());
      firstTripS = Double.isNaN(firstTripS) ? tS : firstTripS;
    }
  }

  @Override
  public void turn(double tS, String word, boolean setLowered, OptionalDouble boundS) {}
}
