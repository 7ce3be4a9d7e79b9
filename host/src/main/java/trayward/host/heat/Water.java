package trayward.host.heat;

/**
 * Water at the pressure of the sea's air, as a dilute developer is taken to be. Pure. Temperatures
 * from 0 to 100 °C; outside of them the nearer end is taken, so that a room below freezing gives a
 * number and no exception.
 */
public final class Water {

  private static final double KELVIN = 273.15;
  private static final double AIR_MPA = 0.101325;

  private Water() {}

  /** Saturation pressure, kPa: IAPWS-IF97, region 4. */
  public static double saturationKPa(double celsius) {
    return WaterVapour.saturationPa(kelvin(celsius)) / 1000;
  }

  /** Heat of evaporation, J/g, or kJ/kg: IAPWS SR1-86(1992) and Clapeyron. */
  public static double latentJPerG(double celsius) {
    return WaterVapour.latentKJPerKg(kelvin(celsius));
  }

  /** Density of the liquid, kg/m³, or g/L: IAPWS-IF97, region 1, at 101.325 kPa. */
  public static double densityGPerL(double celsius) {
    return LiquidWater.densityKgPerM3(kelvin(celsius), AIR_MPA);
  }

  /** Specific heat of the liquid, J/(g K): IAPWS-IF97, region 1, at 101.325 kPa. */
  public static double heatJPerGK(double celsius) {
    return LiquidWater.heatKJPerKgK(kelvin(celsius), AIR_MPA);
  }

  /** Heat to bring litres measured at one temperature to another, kJ; less than 0 for cooling. */
  public static double heatKJ(double litres, double fromC, double toC) {
    return litres
        * densityGPerL(fromC)
        * heatJPerGK((fromC + toC) / 2) // between 0 and 60 °C it bends by 0.2 % in all
        * (toC - fromC)
        / 1000;
  }

  /** Water vapour in saturated air, g/m³: density of saturated vapour, IAPWS SR1-86(1992). */
  public static double saturatedAirGPerM3(double celsius) {
    return WaterVapour.vapourKgPerM3(kelvin(celsius)) * 1000;
  }

  private static double kelvin(double celsius) {
    return KELVIN + Math.max(0, Math.min(100, celsius));
  }
}
