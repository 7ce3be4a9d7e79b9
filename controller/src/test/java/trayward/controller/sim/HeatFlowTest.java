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
