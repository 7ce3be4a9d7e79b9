package trayward.controller.sim;

/**
 * The true tray, room and fan of a simulation, in the units of the names.
 *
 * @param liquidL liquid in the tray at the start, L
 * @param areaM2 free surface, m²
 * @param plateJPerK heat capacity of the plate, J/K
 * @param plateToBathWPerK coupling of plate and bath, W/K
 * @param bathLossWPerK dry losses of the bath, W/K
 * @param plateLossWPerK losses of the plate, W/K
 * @param heaterW heater power, W
 * @param startC temperature of bath, plate and wall at the start, °C
 * @param covered whether the tray starts covered: no evaporation
 * @param evaporationFactor factor on the pool correlation
 * @param wallJPerK heat capacity of the tray's wall, J/K; 0 for none
 * @param wallToBathWPerK coupling of wall and bath, W/K
 * @param airC room air, °C
 * @param relativeHumidity 0 to 1
 * @param draughtMPerS air speed over the bath, m/s
 * @param flowM3PerH rated flow of the fan, m³/h
 * @param rpm rated speed of the fan, 1/min
 * @param spinUpS time to 98 % of rated speed, s
 * @param spinDownS time to 2 % of rated speed, s
 */
public record PlantParameters(
    double liquidL,
    double areaM2,
    double plateJPerK,
    double plateToBathWPerK,
    double bathLossWPerK,
    double plateLossWPerK,
    double heaterW,
    double startC,
    boolean covered,
    double evaporationFactor,
    double wallJPerK,
    double wallToBathWPerK,
    double airC,
    double relativeHumidity,
    double draughtMPerS,
    double flowM3PerH,
    double rpm,
    double spinUpS,
    double spinDownS) {

  /** One litre over a 250 W plate in a room of 20 °C. */
  public static final PlantParameters REFERENCE =
      new PlantParameters(
          1.0, 0.072, 1100, 18, 2.5, 0.5, 250, 20, false, 1.0, 0, 6, 20, 0.5, 0.15, 150, 1500, 3,
          4);
}
