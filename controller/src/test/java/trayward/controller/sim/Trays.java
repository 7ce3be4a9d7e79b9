package trayward.controller.sim;

/** Trays for tests: the reference tray of the check values with some things changed. */
final class Trays {

  /** All that a test may want to change; the rest is the reference's. */
  record Change(double litres, double coupling, double heaterW, double startC, double wallJPerK) {}

  private Trays() {}

  static PlantParameters tray(double litres, double coupling, double heaterW) {
    return tray(new Change(litres, coupling, heaterW, 20, 0));
  }

  static PlantParameters startingAt(double startC, double heaterW) {
    return tray(new Change(1, 18, heaterW, startC, 0));
  }

  static PlantParameters tray(Change c) {
    return tray(c, 20, 0.5);
  }

  static PlantParameters tray(Change c, double airC, double relativeHumidity) {
    PlantParameters r = PlantParameters.REFERENCE;
    return new PlantParameters(
        c.litres,
        r.areaM2(),
        r.plateJPerK(),
        c.coupling,
        r.bathLossWPerK(),
        r.plateLossWPerK(),
        c.heaterW,
        c.startC,
        false,
        r.evaporationFactor(),
        c.wallJPerK,
        r.wallToBathWPerK(),
        airC,
        relativeHumidity,
        r.draughtMPerS(),
        r.flowM3PerH(),
        r.rpm(),
        r.spinUpS(),
        r.spinDownS());
  }

  /**
   * The reference tray with {@code litres} in the steady hold at 40 °C: brought there by four hours
   * of the power that holds it, its liquid topped up in place.
   */
  static Plant holdingForty(double litres, double heaterW) {
    PlantParameters p = tray(new Change(litres, 18, heaterW, 40, 0));
    Plant plant = new Plant(p);
    double lossW = 2.5 * 20 + HeatFlow.evaporationW(p, 1, 40);
    double plateC = 40 + lossW / 18;
    double holdW = lossW + 0.5 * (plateC - 20);
    for (int i = 0; i < 4 * 3600; i++) {
      plant.advance(1, holdW);
    }
    plant.refill(litres);
    return plant;
  }
}
