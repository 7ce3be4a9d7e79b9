package trayward.controller.regulate;

import trayward.controller.sim.Plant;
import trayward.controller.sim.PlantParameters;

/** Simulated plants brought to where a test wants them. */
final class TrayPlants {

  private TrayPlants() {}

  /** The tray with plate and bath at given temperatures: started at the bath's, plate pulsed. */
  static Plant standing(PlantParameters tray, double plateC, double bathC) {
    Plant plant = new Plant(from(tray, bathC));
    // A pulse short enough that the bath does not move.
    double h = 1e-6;
    plant.advance(h, (plateC - bathC) * tray.plateJPerK() / h);
    return plant;
  }

  static PlantParameters from(PlantParameters r, double startC) {
    return new PlantParameters(
        r.liquidL(),
        r.areaM2(),
        r.plateJPerK(),
        r.plateToBathWPerK(),
        r.bathLossWPerK(),
        r.plateLossWPerK(),
        r.heaterW(),
        startC,
        r.covered(),
        r.evaporationFactor(),
        r.wallJPerK(),
        r.wallToBathWPerK(),
        r.airC(),
        r.relativeHumidity(),
        r.draughtMPerS(),
        r.flowM3PerH(),
        r.rpm(),
        r.spinUpS(),
        r.spinDownS());
  }
}
