package trayward.host.heat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Vapour of an open bath. */
class PoolEvaporationTest {

  private static final PoolEvaporation STILL = new PoolEvaporation(0.12, 0, 21, 0.5, 1);

  /** IAPWS: 0.12 m², water of 42 °C, room of 21 °C and 50 %. */
  @Test
  void theDeficitOfATrayIsThatOfTheTables() {
    assertEquals(6.965, STILL.deficitKPa(42), 0.002);
  }

  /** Pool equation with the SI coefficients of the ASHRAE handbook, recomputed: g/h and W. */
  @ParameterizedTest
  @CsvSource({"0, 111.5, 74.4", "0.1, 121.3, 80.9"})
  void aTrayLosesWhatThePoolEquationSays(double draught, double gPerH, double watts) {
    PoolEvaporation tray = new PoolEvaporation(0.12, draught, 21, 0.5, 1);
    assertEquals(gPerH, tray.gramsPerHourAt(42), 0.2);
    assertEquals(watts, tray.wattsAt(42), 0.2);
    assertEquals(gPerH / 0.998, tray.millilitresPerHourAt(42), 0.2);
  }

  /** Own integration of the reference tray: 45.02 W at 40 °C. */
  @Test
  void theReferenceTrayLosesFortyFiveWatts() {
    assertEquals(45.02, new PoolEvaporation(0.072, 0.15, 20, 0.5, 1).wattsAt(40), 0.45);
  }

  /** ASHRAE Transactions 1998, vol. 104, pt. 1A, abstract: undisturbed pools at 74 %. */
  @Test
  void anUndisturbedBathLosesThreeQuarters() {
    PoolEvaporation calm = new PoolEvaporation(0.12, 0, 21, 0.5, PoolEvaporation.UNDISTURBED);
    assertEquals(0.74 * STILL.wattsAt(42), calm.wattsAt(42), 1e-9);
  }

  /**
   * The equation was published as 95 + 0.425 v in Btu/(h ft² inHg) and ft/min: 0.0885 + 0.0779 v in
   * kW/(m² kPa) by unit conversion; the handbook's SI edition prints 0.089 + 0.0782 v.
   */
  @Test
  void theCoefficientsAreThoseOfTheInchPoundEquation() {
    double unit = 0.29307107 / 0.09290304 / 3.38638866 / 1000; // Btu/h, ft², inHg; kW
    assertEquals(0.0885, 95 * unit, 0.0005);
    assertEquals(0.0779, 0.425 * unit * 196.8504, 0.0005);
    double still = STILL.wattsAt(42) / 1000 / 0.12 / STILL.deficitKPa(42);
    PoolEvaporation windy = new PoolEvaporation(0.12, 1, 21, 0.5, 1);
    double blown = windy.wattsAt(42) / 1000 / 0.12 / windy.deficitKPa(42);
    assertEquals(95 * unit, still, 0.0006);
    assertEquals(0.425 * unit * 196.8504, blown - still, 0.0005);
  }

  /**
   * Three other correlations for the same tray, recomputed: 35 rho (drho)^(1/3) dW (Shah, ASHRAE
   * Transactions 2002 to 2014, constant from memory) 109.6 g/h; Nu = 0.54 Ra^(1/4) with Lewis (from
   * memory) 111.2; (25 + 19 v) A (xs - x) (from memory, conservative) 141.3.
   */
  @ParameterizedTest
  @CsvSource({"109.6, 0.03", "111.2, 0.1", "141.3, 0.25"})
  void otherCorrelationsSayTheSameWithinTheirDoubt(double gPerH, double share) {
    assertEquals(gPerH, STILL.gramsPerHourAt(42), gPerH * share);
  }

  @Test
  void aCoverStopsItAndACoolBathInDampAirLosesNothing() {
    assertEquals(0, STILL.covered().wattsAt(42));
    assertEquals(0, new PoolEvaporation(0.12, 0.1, 30, 0.9, 1).millilitresPerHourAt(20));
    assertTrue(STILL.wattsAt(20) > 0);
  }

  @ParameterizedTest
  @CsvSource({
    "0, 0, 20, 0.5, 1",
    "0.1, -1, 20, 0.5, 1",
    "0.1, 0, 60, 0.5, 1",
    "0.1, 0, 20, 1.2, 1",
    "0.1, 0, 20, 0.5, NaN"
  })
  void whatIsNoBathIsRefused(double area, double draught, double room, double rh, double factor) {
    assertThrows(
        IllegalArgumentException.class, () -> new PoolEvaporation(area, draught, room, rh, factor));
  }
}
