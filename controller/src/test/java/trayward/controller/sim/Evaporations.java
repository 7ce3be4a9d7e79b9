package trayward.controller.sim;

/** Trays for tests of evaporation, and the saturation pressure of the steam tables. */
final class Evaporations {

  /** IAPWS-IF97 region 4, coefficients n1 to n10. */
  private static final double[] N = {
    0.11670521452767e4,
    -0.72421316703206e6,
    -0.17073846940092e2,
    0.12020824702470e5,
    -0.32325550322333e7,
    0.14915108613530e2,
    -0.48232657361591e4,
    0.40511340542057e6,
    -0.23855557567849,
    0.65017534844798e3
  };

  private Evaporations() {}

  /** The reference tray with another surface and another room. */
  static PlantParameters still(double areaM2, double airC, double humidity, double draughtMPerS) {
    PlantParameters r = PlantParameters.REFERENCE;
    return new PlantParameters(
        r.liquidL(),
        areaM2,
        r.plateJPerK(),
        r.plateToBathWPerK(),
        r.bathLossWPerK(),
        r.plateLossWPerK(),
        r.heaterW(),
        r.startC(),
        false,
        r.evaporationFactor(),
        r.wallJPerK(),
        r.wallToBathWPerK(),
        airC,
        humidity,
        draughtMPerS,
        r.flowM3PerH(),
        r.rpm(),
        r.spinUpS(),
        r.spinDownS());
  }

  /** A covered tray of {@code litres} that loses no heat at all. */
  static PlantParameters insulated(double litres) {
    PlantParameters r = PlantParameters.REFERENCE;
    return new PlantParameters(
        litres,
        r.areaM2(),
        r.plateJPerK(),
        r.plateToBathWPerK(),
        0,
        0,
        r.heaterW(),
        20,
        true,
        0,
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

  /** Saturation pressure of water, kPa, at {@code kelvin}, by IAPWS-IF97. */
  static double steamTableKPa(double kelvin) {
    double t = kelvin + N[8] / (kelvin - N[9]);
    double a = t * t + N[0] * t + N[1];
    double b = N[2] * t * t + N[3] * t + N[4];
    double c = N[5] * t * t + N[6] * t + N[7];
    return 1000 * Math.pow(2 * c / (-b + Math.sqrt(b * b - 4 * a * c)), 4);
  }
}
