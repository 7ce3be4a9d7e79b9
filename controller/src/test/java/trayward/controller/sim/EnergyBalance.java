package trayward.controller.sim;

/**
 * Keeps the books of a plant's energy from outside: what went in, what it lost by each way, what
 * left with the liquid. It looks at the temperatures only, before and after each step, and knows
 * the equations of the reference tray page for itself. All heat is counted from the room's
 * temperature.
 */
final class EnergyBalance {

  private static final double LITRE_J_PER_K = 4180;

  private final PlantParameters p;
  private final Plant plant;
  private final double atStartJ;
  private double wallC;
  private boolean dry;
  double electricalJ;
  double broughtJ;
  double convectedJ;
  double evaporatedJ;
  double carriedJ;
  double evaporatedL;

  EnergyBalance(Plant plant) {
    this.plant = plant;
    this.p = plant.parameters();
    this.wallC = p.startC();
    this.atStartJ = storedJ();
  }

  /** A step of {@code hS} with {@code heatW}. */
  void step(double hS, double heatW) {
    double plateC = plant.plateC();
    double bathC = plant.bathC();
    plant.advance(hS, heatW);
    electricalJ += heatW * hS;
    double meanPlateC = (plateC + plant.plateC()) / 2;
    double meanBathC = (bathC + plant.bathC()) / 2;
    convectedJ += hS * p.plateLossWPerK() * (meanPlateC - p.airC());
    convectedJ += hS * p.bathLossWPerK() * (meanBathC - p.airC());
    double lossJ = hS * (evaporationW(bathC) + evaporationW(plant.bathC())) / 2;
    double litres = lossJ / latentJPerG(meanBathC) / 1000;
    evaporatedJ += lossJ;
    evaporatedL += litres;
    carriedJ += litres * LITRE_J_PER_K * (meanBathC - p.airC());
    if (p.wallJPerK() > 0) {
      wallC += (meanBathC - wallC) * -Math.expm1(-hS * p.wallToBathWPerK() / p.wallJPerK());
    }
  }

  void pour(double litres, double celsius) {
    plant.pour(litres, celsius);
    broughtJ += LITRE_J_PER_K * litres * (celsius - p.airC());
  }

  /** The sheet leaves again as warm as the bath it cooled. */
  void sheet(double joulesPerK, double celsius) {
    plant.sheet(joulesPerK, celsius);
    broughtJ += joulesPerK * (celsius - plant.bathC());
  }

  void dry(boolean on) {
    plant.dry(on);
    dry = on;
  }

  /** Heat held above the room's temperature, J. */
  double storedJ() {
    return p.plateJPerK() * (plant.plateC() - p.airC())
        + LITRE_J_PER_K * plant.liquidL() * (plant.bathC() - p.airC())
        + p.wallJPerK() * (wallC - p.airC());
  }

  double inJ() {
    return electricalJ + broughtJ;
  }

  double accountedJ() {
    return storedJ() - atStartJ + convectedJ + evaporatedJ + carriedJ;
  }

  private double evaporationW(double bathC) {
    double factor = plant.covered() || dry ? 0 : p.evaporationFactor();
    double deficit = magnusKPa(bathC) - p.relativeHumidity() * magnusKPa(p.airC());
    return factor * 1000 * p.areaM2() * (0.089 + 0.0782 * p.draughtMPerS()) * Math.max(0, deficit);
  }

  private static double magnusKPa(double celsius) {
    return 0.61094 * Math.exp(17.625 * celsius / (celsius + 243.04));
  }

  private static double latentJPerG(double celsius) {
    return 2453.8 - 47.7 * (celsius - 20) / 20;
  }
}
