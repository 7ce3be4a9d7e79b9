package trayward.controller.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HeatFlowTest {

  /** Rows C-L20 to C-L45: IAPWS SR1-86(1992) with Clapeyron, recomputed; within 0.5 kJ/kg. */
  @ParameterizedTest(name = "C-L{0}")
  @CsvSource({
    "20, 2453.8",
    "21, 2451.4",
    "25, 2441.9",
    "30, 2430.0",
    "35, 2418.1",
    "40, 2406.1",
    "42, 2401.3",
    "45, 2394.1"
  })
  void theLatentHeatIsThatOfSteamTables(double celsius, double kiloJoulesPerKg) {
    assertEquals(kiloJoulesPerKg, HeatFlow.latentJPerG(celsius), 0.5);
  }

  /**
   * Rows C-PS20 to C-PS45, Pa: IAPWS-IF97 region 4, recomputed. The Magnus form with these
   * coefficients is low by up to 0.25 % here (its authors, Alduchov and Eskridge 1996, allow 0.38 %
   * from -40 to 50 °C: from memory).
   */
  @ParameterizedTest(name = "C-PS{0}")
  @CsvSource({
    "20, 2339.21",
    "21, 2488.1",
    "25, 3169.75",
    "30, 4246.69",
    "35, 5628.62",
    "40, 7384.43",
    "42, 8209.01",
    "45, 9594.39"
  })
  void theVapourPressureIsThatOfSteamTablesWithinAQuarterPercent(double celsius, double pascals) {
    assertEquals(1, HeatFlow.saturationKPa(celsius) * 1000 / pascals, 0.0026);
  }

  /**
   * Rows C-CRC20 to C-CRC45, kPa: CRC Handbook 1992-93 (read): 0.05 % below IAPWS, 0.051 % at 45.
   */
  @ParameterizedTest(name = "C-CRC{0}")
  @CsvSource({"20, 2.3388", "25, 3.1690", "30, 4.2455", "35, 5.6267", "40, 7.3814", "45, 9.5895"})
  void theVapourPressureIsThatOfAnOlderHandbook(double celsius, double kPa) {
    assertEquals(1, Evaporations.steamTableKPa(celsius + 273.15) / kPa, 0.00052);
    assertEquals(1, HeatFlow.saturationKPa(celsius) / kPa, 0.0026);
  }

  /**
   * Rows C-RHO20 to C-CP45: density in kg/m³ (IAPWS-IF97 region 1, CIPM 2001 within 0.013) and
   * specific heat in kJ/(kg K) (IAPWS-IF97 region 1), recomputed. The plant holds a litre to be
   * 4180 J/K at every temperature, right at 20 °C and 1 % too much at 45 °C, where it warms that
   * much too slowly: within what is known of any tray.
   */
  @ParameterizedTest(name = "C-RHO{0}, C-CP{0}: {3} % too much")
  @CsvSource({
    "20, 998.206, 4.1848, 0.07",
    "21, 997.995, 4.1841, 0.10",
    "25, 997.048, 4.1819, 0.25",
    "30, 995.652, 4.1800, 0.44",
    "35, 994.039, 4.1789, 0.63",
    "40, 992.224, 4.1786, 0.82",
    "42, 991.446, 4.1786, 0.90",
    "45, 990.223, 4.1788, 1.02"
  })
  void aLitreHoldsTheHeatOfWaterWithinOnePercent(
      double celsius, double kgPerM3, double kiloJoulesPerKgK, double tooMuchPercent) {
    double joulesPerLitre = kgPerM3 * kiloJoulesPerKgK;
    assertEquals(tooMuchPercent, 100 * (HeatFlow.LITRE_J_PER_K / joulesPerLitre - 1), 0.01);
  }

  /**
   * C-HEATUP: 3 L measured out at 20 °C take 275.3 kJ to 42 °C (m cp dT, recomputed). A plant that
   * loses nothing gets that and what its plate takes, and ends 0.2 % lower: 4180 J/K per litre.
   */
  @Test
  void threeLitresTakeTheHeatOfTheCheck() {
    assertEquals(275.3, 3 * 0.998206 * (4.1848 + 4.1786) / 2 * 22, 0.5);
    Plant plant = new Plant(Evaporations.insulated(3));
    double heatJ = 275_300 + plant.parameters().plateJPerK() * 22;
    for (int i = 0; i < 12_000; i++) {
      plant.advance(0.1, heatJ / 1200);
    }
    for (int i = 0; i < 36_000; i++) {
      plant.advance(0.1, 0);
    }
    assertEquals(0, plant.plateC() - plant.bathC(), 1e-6);
    assertEquals(42, plant.bathC(), 0.002 * 22);
  }

  /** Reference tray page: evaporation 45.0 W at 40 °C; row F0 gives 45.02 W, recomputed. */
  @Test
  void theReferenceTrayEvaporatesFortyFiveWattsAtFortyDegrees() {
    assertEquals(45.02, HeatFlow.evaporationW(PlantParameters.REFERENCE, 1, 40), 0.045);
  }

  @Test
  void theFactorScalesEvaporationAndNoughtStopsIt() {
    double one = HeatFlow.evaporationW(PlantParameters.REFERENCE, 1, 40);
    assertEquals(2 * one, HeatFlow.evaporationW(PlantParameters.REFERENCE, 2, 40), 1e-12);
    assertEquals(0, HeatFlow.evaporationW(PlantParameters.REFERENCE, 0, 40));
  }

  @Test
  void dampAirOverAColdBathGivesItNothing() {
    PlantParameters damp = Trays.tray(new Trays.Change(1, 18, 250, 10, 0), 25, 0.9);
    assertEquals(0, HeatFlow.evaporationW(damp, 1, 10));
  }

  /** Plate 50, bath 40, air 20: each rate by hand, without a wall and with one at 30 °C. */
  @Test
  void theRatesAreThoseOfTheEquations() {
    PlantParameters bare = PlantParameters.REFERENCE;
    PlantParameters walled = Trays.tray(new Trays.Change(1, 18, 250, 20, 500));
    double evaporationW = HeatFlow.evaporationW(bare, 1, 40);
    double[] y = {50, 40, 30};
    double[] dy = new double[3];
    HeatFlow.rates(bare, 250, 18, 4180, 1, y, dy);
    assertEquals((250 - 180 - 0.5 * 30) / 1100, dy[0], 1e-15);
    assertEquals((180 - 2.5 * 20 - evaporationW) / 4180, dy[1], 1e-15);
    assertEquals(0, dy[2]);
    HeatFlow.rates(walled, 250, 18, 4180, 1, y, dy);
    assertEquals((180 - 2.5 * 20 - evaporationW - 60) / 4180, dy[1], 1e-15);
    assertEquals(60.0 / 500, dy[2], 1e-15);
  }

  @Test
  void withoutCouplingThePlateHeatsItselfAlone() {
    double[] dy = new double[3];
    HeatFlow.rates(PlantParameters.REFERENCE, 400, 0, 4180, 0, new double[] {50, 40, 40}, dy);
    assertEquals((400 - 0.5 * 30) / 1100, dy[0], 1e-15);
    assertEquals(-2.5 * 20 / 4180, dy[1], 1e-15);
  }
}
