package trayward.controller.sense;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** IEC 60751: A = 3.9083e-3, B = -5.775e-7, C = -4.183e-12; its table, two decimals, is as here. */
class Pt100Test {

  /** Values of the standard's equations (coefficients read in a secondary source, recomputed). */
  @ParameterizedTest(name = "{0} °C")
  @CsvSource({
    "0, 100.000000",
    "25, 109.734656",
    "40, 115.540800",
    "50, 119.397125",
    "100, 138.505500",
    "-10, 96.085879",
    "-50, 80.306282",
  })
  void resistanceAndTemperatureAreTheStandardsBothWays(double celsius, double ohm) {
    assertEquals(ohm, Pt100.ohm(celsius), 1e-6);
    assertEquals(celsius, Pt100.celsius(ohm), 3e-6); // half a unit of the last digit, over 0.39 Ω/K
  }

  @Test
  void theWayBackIsExactOverTheWholeRange() {
    for (int t = -2000; t <= 8500; t++) {
      assertEquals(t / 10.0, Pt100.celsius(Pt100.ohm(t / 10.0)), 1e-9);
    }
  }

  @Test
  void theTwoEquationsMeetAtZero() {
    assertEquals(-1e-6, Pt100.celsius(Pt100.ohm(-1e-6)), 1e-10);
    assertEquals(0, Pt100.celsius(100), 1e-12);
  }

  /** A short, a break, and what no sensor of the range has, is no temperature. */
  @ParameterizedTest
  @ValueSource(doubles = {0, -1, 18.5, 390.5, 4000, Double.NaN, Double.POSITIVE_INFINITY})
  void whatNoTemperatureHasIsNone(double ohm) {
    assertTrue(Double.isNaN(Pt100.celsius(ohm)));
  }

  @ParameterizedTest
  @ValueSource(doubles = {-200.1, 850.1, Double.NaN})
  void whatTheStandardDoesNotCoverHasNoResistance(double celsius) {
    assertTrue(Double.isNaN(Pt100.ohm(celsius)));
  }

  /** Class A ±(0.15 + 0.002 |t|), B ±(0.3 + 0.005 |t|) of IEC 60751 (read second-hand). */
  @Test
  void theToleranceClassesAreTheStandards() {
    assertEquals(0.23, Pt100.Tolerance.A.kelvin(40), 1e-12);
    assertEquals(0.50, Pt100.Tolerance.B.kelvin(40), 1e-12);
    assertEquals(0.50, Pt100.Tolerance.B.kelvin(-40), 1e-12);
  }
}
