package trayward.host.heat;

/**
 * The free surface of a bath in still air: how it gives off dry heat by convection and radiation.
 * One number for all dry losses of a tray, base and walls among them, is {@link HeatedTray}'s.
 *
 * <p>Convection is natural convection over a horizontal plate (Lloyd and Moran; Incropera and
 * DeWitt; from memory), with the difference of virtual temperatures, as damp air is light:
 *
 * <pre>
 *   Nu = 0.54 Ra^(1/4)   to Ra = 1e7, from 1e4 on
 *   Nu = 0.15 Ra^(1/3)   above, to 1e11
 *   Nu = 0.27 |Ra|^(1/4) where the air on the surface is the heavier
 *   L = area / perimeter
 * </pre>
 *
 * <p>Such correlations are good to some 10 to 20 %. A draught adds to them. Immutable; safe on any
 * thread.
 *
 * @param areaM2 free surface, m², above 0
 * @param perimeterM its edge, m, above 0
 */
public record FreeSurface(double areaM2, double perimeterM) {

  /** Emissivity of water for heat radiation: 0.95 to 0.96, common handbook value. */
  private static final double EMISSIVITY = 0.95;

  /** Stefan-Boltzmann constant, W/(m² K⁴), exact since 2019 to these digits (CODATA 2018). */
  private static final double STEFAN_BOLTZMANN = 5.670374419e-8;

  private static final double KELVIN = 273.15;
  private static final double STANDARD_KPA = 101.325;
  private static final double GRAVITY = 9.80665;

  /** Gas constants of dry air and of water vapour, J/(kg K). */
  private static final double AIR_GAS = 287.055;

  private static final double VAPOUR_GAS = 461.52;

  /** Specific heat of air, J/(kg K), at room temperature. */
  private static final double AIR_CP = 1007;

  private static final double TURBULENT_FROM = 1e7;

  /** The surface of a tray whose sides are as 4 to 5, as papers are. */
  public static FreeSurface ofPaperShape(double areaM2) {
    return new FreeSurface(areaM2, 3.6 * Math.sqrt(areaM2 / 0.8));
  }

  /** Area over perimeter, the length of the correlation, m. */
  public double lengthM() {
    return areaM2 / perimeterM;
  }

  /**
   * Coefficient of convection, W/(m² K).
   *
   * @param surfaceC temperature of the surface, °C, 0 to 100
   * @param airC temperature of the air, °C
   * @param relativeHumidity of the air, 0 to 1
   */
  public double convectionWPerM2K(double surfaceC, double airC, double relativeHumidity) {
    double atSurfaceK = virtualK(surfaceC, Water.saturationKPa(surfaceC));
    double inRoomK = virtualK(airC, relativeHumidity * Water.saturationKPa(airC));
    double filmK = KELVIN + (surfaceC + airC) / 2;
    double density = STANDARD_KPA * 1000 / (AIR_GAS * filmK);
    double conductivity = airConductivity(filmK);
    double diffusivity = conductivity / (density * AIR_CP);
    double viscosity = airViscosity(filmK) / density;
    double lift = GRAVITY * 2 * (atSurfaceK - inRoomK) / (atSurfaceK + inRoomK);
    double rayleigh = lift * Math.pow(lengthM(), 3) / (viscosity * diffusivity);
    return nusselt(rayleigh) * conductivity / lengthM();
  }

  private static double nusselt(double rayleigh) {
    if (rayleigh <= 0) {
      return 0.27 * Math.pow(-rayleigh, 0.25);
    }
    return rayleigh < TURBULENT_FROM ? 0.54 * Math.pow(rayleigh, 0.25) : 0.15 * Math.cbrt(rayleigh);
  }

  /**
   * Coefficient of radiation between the surface and a room whose walls are at {@code wallsC},
   * W/(m² K): eps sigma (T1² + T2²)(T1 + T2).
   */
  public static double radiationWPerM2K(double surfaceC, double wallsC) {
    double hotK = KELVIN + surfaceC;
    double coldK = KELVIN + wallsC;
    return EMISSIVITY * STEFAN_BOLTZMANN * (hotK * hotK + coldK * coldK) * (hotK + coldK);
  }

  /**
   * Dry heat of the whole surface for each kelvin above the room, W/K; walls as warm as the air.
   */
  public double dryWPerK(double surfaceC, double airC, double relativeHumidity) {
    return areaM2
        * (convectionWPerM2K(surfaceC, airC, relativeHumidity) + radiationWPerM2K(surfaceC, airC));
  }

  /** Temperature at which dry air would be as heavy, K. */
  private static double virtualK(double celsius, double vapourKPa) {
    return (celsius + KELVIN) / (1 - (1 - AIR_GAS / VAPOUR_GAS) * vapourKPa / STANDARD_KPA);
  }

  /** Dynamic viscosity of air, Pa s, by Sutherland (White, Viscous Fluid Flow; from memory). */
  static double airViscosity(double kelvin) {
    return 1.716e-5 * sutherland(kelvin, 111);
  }

  /** Thermal conductivity of air, W/(m K), by Sutherland (White; from memory). */
  static double airConductivity(double kelvin) {
    return 0.0241 * sutherland(kelvin, 194);
  }

  private static double sutherland(double kelvin, double constantK) {
    double share = kelvin / 273;
    return share * Math.sqrt(share) * (273 + constantK) / (kelvin + constantK);
  }
}
