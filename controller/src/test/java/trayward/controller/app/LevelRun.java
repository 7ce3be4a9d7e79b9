package trayward.controller.app;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import trayward.controller.event.TrayEvent;
import trayward.controller.safety.Level;
import trayward.controller.safety.LevelEstimate;
import trayward.controller.scan.Snapshot;

/** One rehearsal as the tests of the level see it. */
final class LevelRun implements Rehearsal.Listener {

  private final double declaredL;
  private double lowAtS = Double.POSITIVE_INFINITY;
  private double unsureAtS = Double.POSITIVE_INFINITY;
  private double leastLostShareWhileLow = Double.POSITIVE_INFINITY;
  private double leastLostShareWhileUnsure = Double.POSITIVE_INFINITY;
  private double outsideS;
  private double heatWhileUnsureS;
  private final List<Double> heated = new ArrayList<>();
  private double liquidL;
  private LevelEstimate estimate = new LevelEstimate(Level.WELL, 0, 0, 0, 0);

  private LevelRun(double declaredL) {
    this.declaredL = declaredL;
  }

  static LevelRun of(String toml) throws ConfigRefused {
    Scenario scenario = Scenario.parse("level", toml);
    LevelRun run = new LevelRun(scenario.model().liquidL());
    new Rehearsal(scenario, run).run();
    return run;
  }

  /** First time at LOW or worse, s; infinite where never. */
  double lowAtS() {
    return lowAtS;
  }

  double unsureAtS() {
    return unsureAtS;
  }

  /** Water truly evaporated over the litres declared, at the least while the level was LOW. */
  double leastLostShareWhileLow() {
    return leastLostShareWhileLow;
  }

  double leastLostShareWhileUnsure() {
    return leastLostShareWhileUnsure;
  }

  /** Time in which the truth was outside of the bounds, s. */
  double outsideS() {
    return outsideS;
  }

  /** Time in which heat was permitted although the level was unsure, s. */
  double heatWhileUnsureS() {
    return heatWhileUnsureS;
  }

  /** True heat from a time on, s. */
  double heatedAfterS(double fromS) {
    return heated.stream().filter(t -> t >= fromS).count() * 0.1;
  }

  /** The true liquid at the end, L. */
  double liquidL() {
    return liquidL;
  }

  /** What is thought of it at the end. */
  LevelEstimate estimate() {
    return estimate;
  }

  @Override
  public void row(RehearsalRow row) {
    liquidL = row.liquidL();
    if (row.heatW() > 0) {
      heated.add(row.tS());
    }
    Snapshot snapshot = row.snapshot();
    if (snapshot == null) {
      return;
    }
    estimate = snapshot.level();
    double lostShare = row.evaporatedMl() / 1000 / declaredL;
    if (estimate.level() != Level.WELL) {
      lowAtS = Math.min(lowAtS, row.tS());
      leastLostShareWhileLow = Math.min(leastLostShareWhileLow, lostShare);
    }
    if (estimate.level() == Level.UNSURE) {
      unsureAtS = Math.min(unsureAtS, row.tS());
      leastLostShareWhileUnsure = Math.min(leastLostShareWhileUnsure, lostShare);
      heatWhileUnsureS += snapshot.permitted() ? 0.1 : 0;
    }
    outsideS += liquidL < estimate.lowL() || liquidL > estimate.highL() ? 0.1 : 0;
  }

  @Override
  public void event(double tS, TrayEvent event) {}

  @Override
  public void turn(double tS, String word, boolean setLowered, OptionalDouble boundS) {}
}
