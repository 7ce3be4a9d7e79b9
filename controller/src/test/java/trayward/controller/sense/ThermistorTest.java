package trayward.controller.sense;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.sense.Thermistor.Beta;
import trayward.controller.sense.Thermistor.Point;
import trayward.controller.sense.Thermistor.SteinhartHart;

/** Thermistors by both equations. */
class ThermistorTest {

  /** 10 kΩ at 25 °C; values of the β equation, recomputed to 1e-6 of each. */
  @ParameterizedTest(name = "beta {0}: {1} °C")
  @CsvSource({
    "3435, 0, 28704.29039",
    "3435, 20, 12171.40541",
    "3435, 40, 5758.763243",
    "3435, 50, 4101.189901",
    "3435, 100, 987.036768",
    "3950, 0, 33620.603721",
    "3950, 20, 12535.325813",
    "3950, 40, 5301.466859",
    "3950, 50, 3588.182582",
    "3950, 100, 697.519773",
  })
  void theBetaEquationGoesBothWays(double beta, double celsius, double ohm) {
    Beta thermistor = new Beta(10_000, beta);
    assertEquals(ohm, thermistor.ohm(celsius), 1e-6 * ohm);
    assertEquals(celsius, thermistor.celsius(ohm), 1e-4);
    assertEquals(celsius, thermistor.celsius(thermistor.ohm(celsius)), 1e-10);
  }

  /** Coefficients widely published for a 10 kΩ thermistor (Steinhart and Hart, 1968). */
  @ParameterizedTest(name = "{0} Ω")
  @CsvSource({
    "32650, 0.000225",
    "10000, 24.999668",
    "5327, 39.990396",
    "3603, 49.985658",
  })
  void thePublishedCoefficientsGiveThePublishedTemperatures(double ohm, double celsius) {
    SteinhartHart published = new SteinhartHart(1.129148e-3, 2.34125e-4, 8.76741e-8);
    assertEquals(celsius, published.celsius(ohm), 1e-6);
    assertEquals(ohm, published.ohm(published.celsius(ohm)), 1e-9 * ohm);
    assertTrue(published.falls());
  }

  /** The fit through 0, 25 and 50 °C of that table; coefficients recomputed to 1e-12. */
  @Test
  void threePointsOfATableGiveTheThreeCoefficients() {
    Point cold = new Point(0, 32_650);
    Point room = new Point(25, 10_000);
    Point warm = new Point(50, 3603);
    SteinhartHart fit = SteinhartHart.through(cold, room, warm).orElseThrow();
    assertEquals(1.125256672107589e-3, fit.a(), 1e-12);
    assertEquals(2.3472044729782256e-4, fit.b(), 1e-12);
    assertEquals(8.563052731505025e-8, fit.c(), 1e-12);
    for (Point each : new Point[] {cold, room, warm}) {
      assertEquals(each.celsius(), fit.celsius(each.ohm()), 1e-9);
    }
    assertEquals(fit.a(), SteinhartHart.through(warm, cold, room).orElseThrow().a(), 1e-12);
  }

  @Test
  void pointsThatNoFallingResistorHasAreNoFit() {
    Point room = new Point(25, 10_000);
    assertEquals(
        Optional.empty(),
        SteinhartHart.through(room, room, new Point(50, 3603)),
        "one point twice");
    assertEquals(
        Optional.empty(),
        SteinhartHart.through(new Point(0, 3603), room, new Point(50, 32_650)),
        "one that rises");
    assertEquals(
        Optional.empty(),
        SteinhartHart.through(new Point(0, -1), room, new Point(50, 3603)),
        "less than nothing");
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -10_000, Double.NaN, Double.POSITIVE_INFINITY})
  void aShortABreakAndNonsenseAreNoTemperature(double ohm) {
    assertTrue(Double.isNaN(new Beta(10_000, 3950).celsius(ohm)), "beta");
    SteinhartHart published = new SteinhartHart(1.129148e-3, 2.34125e-4, 8.76741e-8);
    assertTrue(Double.isNaN(published.celsius(ohm)), "Steinhart and Hart");
  }

  @Test
  void coefficientsOfNoThermistorAreKnown() {
    assertFalse(new SteinhartHart(1e-3, -2e-4, 1e-7).falls());
    assertFalse(new SteinhartHart(1e-3, 2e-4, -1e-5).falls());
    assertFalse(new SteinhartHart(1e-3, -1e-5, 1e-7).falls(), "rises where it is small");
    assertFalse(new SteinhartHart(Double.NaN, Double.NaN, Double.NaN).falls());
    assertFalse(new Beta(-1, 3950).falls());
    assertFalse(new Beta(10_000, 0).falls());
    assertTrue(new Beta(10_000, 3950).falls());
  }
}
