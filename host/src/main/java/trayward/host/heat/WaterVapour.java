package trayward.host.heat;

/**
 * Water where liquid and vapour meet. Saturation pressure is IAPWS-IF97, region 4 (revised release
 * IAPWS R7-97(2012)); the heat of evaporation follows by Clapeyron's equation from the saturation
 * properties of IAPWS SR1-86(1992). Pure.
 */
final class WaterVapour {

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
    0.65017534844798e3,
  };

  private static final double CRITICAL_K = 647.096;
  private static final double CRITICAL_PA = 22.064e6;
  private static final double CRITICAL_KG_PER_M3 = 322;

  /** Coefficient and exponent of each term for the vapour pressure: SR1-86(1992). */
  private static final double[][] PRESSURE = {
    {-7.85951783, 1},
    {1.84408259, 1.5},
    {-11.7866497, 3},
    {22.6807411, 3.5},
    {-15.9618719, 4},
    {1.80122502, 7.5},
  };

  private static final double[][] LIQUID = {
    {1.99274064, 1 / 3.0},
    {1.09965342, 2 / 3.0},
    {-0.510839303, 5 / 3.0},
    {-1.75493479, 16 / 3.0},
    {-45.5170352, 43 / 3.0},
    {-6.74694450e5, 110 / 3.0},
  };

  private static final double[][] VAPOUR = {
    {-2.03150240, 2 / 6.0},
    {-2.68302940, 4 / 6.0},
    {-5.38626492, 8 / 6.0},
    {-17.2991605, 18 / 6.0},
    {-44.7586581, 37 / 6.0},
    {-63.9201063, 71 / 6.0},
  };

  private WaterVapour() {}

  /** Saturation pressure, Pa, at {@code kelvin}, 273.15 to {@value #CRITICAL_K}. */
  static double saturationPa(double kelvin) {
    double t = kelvin + N[8] / (kelvin - N[9]);
    double a = t * t + N[0] * t + N[1];
    double b = N[2] * t * t + N[3] * t + N[4];
    double c = N[5] * t * t + N[6] * t + N[7];
    double root = 2 * c / (-b + Math.sqrt(b * b - 4 * a * c));
    return root * root * root * root * 1e6;
  }

  /** Heat of evaporation, kJ/kg, at {@code kelvin}: T dp/dT (1/rho'' - 1/rho'). */
  static double latentKJPerKg(double kelvin) {
    double far = 1 - kelvin / CRITICAL_K;
    double liquid = CRITICAL_KG_PER_M3 * (1 + sum(LIQUID, far));
    double sum = sum(PRESSURE, far);
    double pressure = CRITICAL_PA * Math.exp(CRITICAL_K / kelvin * sum);
    double slope = -pressure / kelvin * (Math.log(pressure / CRITICAL_PA) + steep(far));
    return kelvin * slope * (1 / vapourKgPerM3(kelvin) - 1 / liquid) / 1000;
  }

  /** Density of saturated vapour, kg/m³, at {@code kelvin}. */
  static double vapourKgPerM3(double kelvin) {
    return CRITICAL_KG_PER_M3 * Math.exp(sum(VAPOUR, 1 - kelvin / CRITICAL_K));
  }

  private static double sum(double[][] terms, double far) {
    double sum = 0;
    for (double[] t : terms) {
      sum += t[0] * Math.pow(far, t[1]);
    }
    return sum;
  }

  private static double steep(double far) {
    double sum = 0;
    for (double[] t : PRESSURE) {
      sum += t[0] * t[1] * Math.pow(far, t[1] - 1);
    }
    return sum;
  }
}
