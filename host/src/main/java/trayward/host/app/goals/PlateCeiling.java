package trayward.host.app.goals;

import trayward.controller.app.Scenario;

/**
 * Keeps the plate of a tray under the comparison regulators as cool as ours: without it they would
 * be stopped by the interlock. Immutable.
 *
 * @param celsius plate temperature never asked for (SR-07), °C
 */
record PlateCeiling(double celsius) {

  /** Full heat may be asked for until so far under the ceiling, K. */
  private static final double BAND_K = 3;

  static PlateCeiling of(Scenario scenario) {
    return new PlateCeiling(scenario.limits().plateCeilingC());
  }

  /** Highest duty at {@code plateC}; 1 where there is no plate probe. */
  double most(double plateC) {
    return Double.isNaN(plateC) ? 1 : Math.max(0, Math.min(1, (celsius - plateC) / BAND_K));
  }
}
