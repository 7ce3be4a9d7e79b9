package trayward.host.heat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Water against the International Association for the Properties of Water and Steam. */
class WaterTest {

  /** IAPWS R7-97(2012), table 35: the release's own check of region 4. */
  @ParameterizedTest
  @CsvSource({"300, 0.353658941e-2", "500, 0.263889776e1", "600, 0.123443146e2"})
  void saturationPressureGivesTheCheckValuesOfTheRelease(double kelvin, double mpa) {
    assertEquals(mpa * 1e6, WaterVapour.saturationPa(kelvin), mpa * 1e6 * 1e-8);
  }

  /**
   * IAPWS R7-97(2012), table 5: the release's own check of region 1 (v in m³/kg, cp in kJ/kg/K).
   */
  @ParameterizedTest
  @CsvSource({
    "300, 3, 0.100215168e-2, 0.417301218e1",
    "300, 80, 0.971180894e-3, 0.401008987e1",
    "500, 3, 0.120241800e-2, 0.465580682e1"
  })
  void liquidGivesTheCheckValuesOfTheRelease(double kelvin, double mpa, double v, double cp) {
    assertEquals(v, 1 / LiquidWater.densityKgPerM3(kelvin, mpa), v * 1e-8);
    assertEquals(cp, LiquidWater.heatKJPerKgK(kelvin, mpa), cp * 1e-8);
  }

  /**
   * Saturation pressure (Pa, IAPWS-IF97 region 4), heat of evaporation (kJ/kg, IAPWS SR1-86(1992)
   * and Clapeyron), density (kg/m³) and specific heat (kJ/kg/K, IAPWS-IF97 region 1).
   */
  @ParameterizedTest
  @CsvSource({
    "20, 2339.21, 2453.8, 998.206, 4.1848",
    "21, 2488.10, 2451.4, 997.995, 4.1841",
    "25, 3169.75, 2441.9, 997.048, 4.1819",
    "30, 4246.69, 2430.0, 995.652, 4.1800",
    "35, 5628.62, 2418.1, 994.039, 4.1789",
    "40, 7384.43, 2406.1, 992.224, 4.1786",
    "42, 8209.01, 2401.3, 991.446, 4.1786",
    "45, 9594.39, 2394.1, 990.223, 4.1788"
  })
  void waterOfABathIsAsInTheTables(double c, double pa, double latent, double rho, double cp) {
    assertEquals(pa, Water.saturationKPa(c) * 1000, 0.03);
    assertEquals(latent, Water.latentJPerG(c), 0.5);
    assertEquals(rho, Water.densityGPerL(c), 0.02);
    assertEquals(cp, Water.heatJPerGK(c), 0.0005);
  }

  /** CRC Handbook 1992-93, vapour pressure of water (kPa): 0.05 % from IAPWS, as its age allows. */
  @ParameterizedTest
  @CsvSource({"20, 2.3388", "25, 3.1690", "30, 4.2455", "35, 5.6267", "40, 7.3814", "45, 9.5895"})
  void anOlderHandbookAgrees(double celsius, double kPa) {
    assertEquals(kPa, Water.saturationKPa(celsius), kPa * 6e-4);
  }

  /** Tanaka and others, Metrologia 38 (2001), the formula of the CIPM, valid from 0 to 40 °C. */
  @ParameterizedTest
  @CsvSource({"1", "4", "10", "20", "30", "40"})
  void densityAgreesWithTheMetrologists(double t) {
    double square = (t - 3.983035) * (t - 3.983035);
    double cipm = 999.974950 * (1 - square * (t + 301.797) / (522528.9 * (t + 69.34881)));
    assertEquals(cipm, Water.densityGPerL(t), 0.015);
  }

  /** Magnus form with the constants of Alduchov and Eskridge 1996, as the simulated tray has it. */
  @ParameterizedTest
  @CsvSource({"0", "15", "30", "45", "50"})
  void theSimulatedTrayUsesAVapourPressureWithinAThirdOfAPercent(double t) {
    double magnus = 0.61094 * Math.exp(17.625 * t / (t + 243.04));
    assertEquals(magnus, Water.saturationKPa(t), magnus * 3e-3);
  }

  /** Check values of IAPWS SR1-86(1992): the triple point and the normal boiling point. */
  @ParameterizedTest
  @CsvSource({"273.16, 2500.5", "373.1243, 2256.5"})
  void heatOfEvaporationAtTheFixedPoints(double kelvin, double kJPerKg) {
    assertEquals(kJPerKg, WaterVapour.latentKJPerKg(kelvin), 0.6);
  }

  /** Own arithmetic, m cp dT: 3 L from 20 to 42 °C take 275.3 kJ. */
  @Test
  void threeLitresToPrintingTemperatureTakeAboutThreeHundredKilojoules() {
    assertEquals(275.3, Water.heatKJ(3, 20, 42), 0.5);
    assertTrue(Water.heatKJ(1, 42, 20) < 0);
  }

  /** Saturated air of 21 °C holds 18.35 g/m³: IAPWS, recomputed. */
  @Test
  void saturatedAirHoldsWhatTheTablesSay() {
    assertEquals(18.35, Water.saturatedAirGPerM3(21), 0.005);
  }

  @Test
  void outsideOfLiquidWaterTheNearerEndIsTaken() {
    assertEquals(Water.saturationKPa(0), Water.saturationKPa(-10));
    assertEquals(Water.densityGPerL(100), Water.densityGPerL(130));
  }
}
