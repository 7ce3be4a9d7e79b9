package trayward.controller.regulate;

/**
 * What the controller believes of a tray: two lumps, plate and bath, with their losses. Immutable.
 *
 * <p>The equations are those of the two-lump tray with pool evaporation (ASHRAE form, W/m² per kPa:
 * 89 + 78.2 v) and Magnus vapour pressure.
 *
 * @param liquidL liquid in the tray, L
 * @param areaM2 free surface, m²
 * @param plateJPerK heat capacity of the plate, J/K
 * @param plateToBathWPerK coupling of plate and bath, W/K
 * @param bathLossWPerK dry losses of the bath to the room, W/K
 * @param plateLossWPerK losses of the plate to the room, W/K
 * @param heaterW heater power, W
 * @param evaporationFactor 1 for the correlation itself, 0 for a covered tray
 */
public record TrayModel(
    double liquidL,
    double areaM2,
    double plateJPerK,
    double plateToBathWPerK,
    double bathLossWPerK,
    double plateLossWPerK,
    double heaterW,
    double evaporationFactor) {

  /** Heat capacity of a litre of dilute developer, J/K: that of water. */
  public static final double LITRE_J_PER_K = 4180;

  /** A tray of one litre over a 250 W plate. */
  public static final TrayModel REFERENCE = new TrayModel(1.0, 0.072, 1100, 18, 2.5, 0.5, 250, 1.0);

  /** Magnus form of the saturation pressure of water, kPa, at {@code celsius}. */
  public static double saturationKPa(double celsius) {
    return 0.61094 * Math.exp(17.625 * celsius / (celsius + 243.04));
  }

  /**
   * Latent heat of evaporation, J/g, at {@code celsius}: linear between the IAPWS values at 20 °C
   * (2453.8) and 40 °C (2406.1).
   */
  public static double latentJPerG(double celsius) {
    return 2406.1 + (2406.1 - 2453.8) / 20 * (celsius - 40);
  }

  /** Evaporative loss, W, of a bath at {@code bathC} into a room at {@code room}. */
  public double evaporationW(double bathC, RoomModel room) {
    double deficit = saturationKPa(bathC) - room.relativeHumidity() * saturationKPa(room.airC());
    return evaporationWPerKPa(room) * Math.max(0, deficit);
  }

  /** Evaporative loss for each kilopascal between the bath's vapour and the room's, W/kPa. */
  double evaporationWPerKPa(RoomModel room) {
    return evaporationFactor * 1000 * areaM2 * (0.089 + 0.0782 * room.draughtMPerS());
  }

  /** All heat the bath gives to the room at {@code bathC}, W. */
  public double bathLossW(double bathC, RoomModel room) {
    return bathLossWPerK * (bathC - room.airC()) + evaporationW(bathC, room);
  }

  /** Plate temperature, °C, at which the bath just holds {@code bathC}. */
  public double holdPlateC(double bathC, RoomModel room) {
    return bathC + bathLossW(bathC, room) / plateToBathWPerK;
  }

  /** Duty at which the bath just holds {@code bathC}; may exceed 1 for a heater too small. */
  public double holdDuty(double bathC, RoomModel room) {
    double plateLossW = plateLossWPerK * (holdPlateC(bathC, room) - room.airC());
    return (bathLossW(bathC, room) + plateLossW) / heaterW;
  }

  /**
   * The tray linearised at {@code bathC}: gain and the two time constants, from the roots of the
   * characteristic polynomial of the two lumps.
   */
  public Linear linearAt(double bathC, RoomModel room) {
    double step = 0.01; // K: small against the curvature of the vapour pressure
    double slope = (bathLossW(bathC + step, room) - bathLossW(bathC - step, room)) / (2 * step);
    double bathJPerK = LITRE_J_PER_K * liquidL;
    double a = plateJPerK * bathJPerK;
    double b =
        plateJPerK * (plateToBathWPerK + slope) + bathJPerK * (plateToBathWPerK + plateLossWPerK);
    double c = plateToBathWPerK * (slope + plateLossWPerK) + plateLossWPerK * slope;
    double root = Math.sqrt(b * b - 4 * a * c);
    return new Linear(heaterW * plateToBathWPerK / c, 2 * a / (b - root), 2 * a / (b + root));
  }

  /**
   * A second-order linearisation.
   *
   * @param gainKPerDuty steady change of bath temperature for full duty, K
   * @param slowS larger time constant, s
   * @param fastS smaller time constant, s
   */
  public record Linear(double gainKPerDuty, double slowS, double fastS) {}
}
