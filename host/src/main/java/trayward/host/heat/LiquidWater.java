package trayward.host.heat;

/**
 * Density and specific heat of liquid water: IAPWS Industrial Formulation 1997 (revised release
 * IAPWS R7-97(2012)), region 1, the dimensionless Gibbs energy and two of its derivatives. Pure.
 */
final class LiquidWater {

  /** Specific gas constant of water in this formulation, kJ/(kg K). */
  private static final double GAS = 0.461526;

  private static final double REDUCING_MPA = 16.53;
  private static final double REDUCING_K = 1386;

  /** Exponents and coefficient of each term: table 2 of the release. */
  private static final double[][] TERMS = {
    {0, -2, 0.14632971213167},
    {0, -1, -0.84548187169114},
    {0, 0, -0.37563603672040e1},
    {0, 1, 0.33855169168385e1},
    {0, 2, -0.95791963387872},
    {0, 3, 0.15772038513228},
    {0, 4, -0.16616417199501e-1},
    {0, 5, 0.81214629983568e-3},
    {1, -9, 0.28319080123804e-3},
    {1, -7, -0.60706301565874e-3},
    {1, -1, -0.18990068218419e-1},
    {1, 0, -0.32529748770505e-1},
    {1, 1, -0.21841717175414e-1},
    {1, 3, -0.52838357969930e-4},
    {2, -3, -0.47184321073267e-3},
    {2, 0, -0.30001780793026e-3},
    {2, 1, 0.47661393906987e-4},
    {2, 3, -0.44141845330846e-5},
    {2, 17, -0.72694996297594e-15},
    {3, -4, -0.31679644844054e-4},
    {3, 0, -0.28270797985312e-5},
    {3, 6, -0.85205128120103e-9},
    {4, -5, -0.22425281908000e-5},
    {4, -2, -0.65171222895601e-6},
    {4, 10, -0.14341729937924e-12},
    {5, -8, -0.40516996860117e-6},
    {8, -11, -0.12734301741641e-8},
    {8, -6, -0.17424871230634e-9},
    {21, -29, -0.68762131295531e-18},
    {23, -31, 0.14478307828521e-19},
    {29, -38, 0.26335781662795e-22},
    {30, -39, -0.11947622640071e-22},
    {31, -40, 0.18228094581404e-23},
    {32, -41, -0.93537087292458e-25},
  };

  private LiquidWater() {}

  /** Density, kg/m³, at {@code kelvin} (273.15 to 623.15) and {@code mpa}. */
  static double densityKgPerM3(double kelvin, double mpa) {
    double slope = 0;
    double pressure = 7.1 - mpa / REDUCING_MPA;
    double warmth = REDUCING_K / kelvin - 1.222;
    for (double[] t : TERMS) {
      if (t[0] > 0) {
        slope -= t[2] * t[0] * Math.pow(pressure, t[0] - 1) * Math.pow(warmth, t[1]);
      }
    }
    return REDUCING_MPA * 1000 / (GAS * kelvin * slope);
  }

  /** Specific heat at constant pressure, kJ/(kg K), at {@code kelvin} and {@code mpa}. */
  static double heatKJPerKgK(double kelvin, double mpa) {
    double bend = 0;
    double pressure = 7.1 - mpa / REDUCING_MPA;
    double warmth = REDUCING_K / kelvin - 1.222;
    for (double[] t : TERMS) {
      bend += t[2] * Math.pow(pressure, t[0]) * t[1] * (t[1] - 1) * Math.pow(warmth, t[1] - 2);
    }
    double inverse = REDUCING_K / kelvin;
    return -GAS * inverse * inverse * bend;
  }
}
