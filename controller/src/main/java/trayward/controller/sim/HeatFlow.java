package trayward.controller.sim;

import org.hipparchus.util.FastMath;

/**
 * The thermal equations of the tray: two lumps, plate and bath, and a third for the wall where
 * there is one.
 *
 * <pre>
 *   Cp dTp/dt = P - UA (Tp - Tb) - Lp (Tp - Ta)
 *   Cb dTb/dt = UA (Tp - Tb) - Lb (Tb - Ta) - Qev(Tb) - UAw (Tb - Tw)
 *   Cw dTw/dt = UAw (Tb - Tw)
 *   Qev = f 1000 A (0.089 + 0.0782 v) max(0, pw(Tb) - phi pw(Ta))     ASHRAE pool form, pw in kPa
 *   pw(T) = 0.61094 exp(17.625 T / (T + 243.04))                      Magnus form
 * </pre>
 *
 * <p>The mathematics library's exponential is used because it is plain Java and so gives the same
 * bits everywhere. Stateless; safe on any thread.
 */
public final class HeatFlow {

  /** Heat capacity of a litre of dilute developer, J/K. */
  public static final double LITRE_J_PER_K = 4180;

  /** Latent heat of water at bath temperatures, J/g (IAPWS: 2406.1 kJ/kg at 40 °C). */
  private static final double LATENT_J_PER_G_AT_40 = 2406.1;

  /** Slope of the latent heat, J/(g K), between 20 °C (2453.8) and 40 °C (2406.1), IAPWS. */
  private static final double LATENT_SLOPE = (2406.1 - 2453.8) / 20;

  private HeatFlow() {}

  /** Saturation pressure of water, kPa, Magnus form. */
  public static double saturationKPa(double celsius) {
    return 0.61094 * FastMath.exp(17.625 * celsius / (celsius + 243.04));
  }

  /** Latent heat of evaporation, J/g, linear between the IAPWS values at 20 and 40 °C. */
  public static double latentJPerG(double celsius) {
    return LATENT_J_PER_G_AT_40 + LATENT_SLOPE * (celsius - 40);
  }

  /** Vapour pressure of the room's air, kPa: the same for a whole simulation, so computed once. */
  static double airKPa(PlantParameters p) {
    return p.relativeHumidity() * saturationKPa(p.airC());
  }

  /** Evaporative loss of the bath, W, with factor {@code f} on the correlation. */
  public static double evaporationW(PlantParameters p, double f, double bathC) {
    return lossW(p, f, saturationKPa(bathC) - airKPa(p));
  }

  /** The same with the difference of the vapour pressures of bath and air at hand, kPa. */
  static double lossW(PlantParameters p, double f, double deficit) {
    return f * 1000 * p.areaM2() * (0.089 + 0.0782 * p.draughtMPerS()) * FastMath.max(0, deficit);
  }

  /**
   * Time derivatives.
   *
   * @param p the tray
   * @param heatW heater power now, W
   * @param coupling plate to bath, W/K: the tray's own, or 0 for a dry or lifted one
   * @param bathJPerK heat capacity of the bath now, J/K
   * @param f factor on the evaporation now
   * @param y temperatures of plate, bath and wall, °C
   * @param dy their rates, K/s, written
   */
  public static void rates(
      PlantParameters p,
      double heatW,
      double coupling,
      double bathJPerK,
      double f,
      double[] y,
      double[] dy) {
    lossRates(p, heatW, coupling, bathJPerK, evaporationW(p, f, y[1]), y, dy);
  }

  /** The same with the evaporative loss at hand, W. */
  static void lossRates(
      PlantParameters p,
      double heatW,
      double coupling,
      double bathJPerK,
      double evaporationW,
      double[] y,
      double[] dy) {
    double toBath = coupling * (y[0] - y[1]);
    double toWall = p.wallJPerK() > 0 ? p.wallToBathWPerK() * (y[1] - y[2]) : 0;
    dy[0] = (heatW - toBath - p.plateLossWPerK() * (y[0] - p.airC())) / p.plateJPerK();
    dy[1] = (toBath - p.bathLossWPerK() * (y[1] - p.airC()) - evaporationW - toWall) / bathJPerK;
    dy[2] = p.wallJPerK() > 0 ? toWall / p.wallJPerK() : 0;
  }
}
