package trayward.host.heat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Mixing by the balance of heat; own arithmetic. */
class MixingTest {

  private static final Mixing BARE = new Mixing(0, 20, 0);

  /** Equal measures meet in the middle, but for the hot litre being the lighter by 1.4 %. */
  @Test
  void equalMeasuresMeetAlmostInTheMiddle() {
    double hot = 983.2;
    double cold = 998.2; // g/L at 60 and 20 °C, handbook values
    assertEquals((hot * 60 + cold * 20) / (hot + cold), BARE.mixedC(1, 60, 1, 20), 0.005);
  }

  @ParameterizedTest
  @CsvSource({"40, 1, 55, 15, 0", "42, 3, 60, 12, 1100", "25, 0.5, 50, 18, 800"})
  void whatIsToBePouredGivesTheTemperatureAndTheVolume(
      double target, double litres, double hotC, double coldC, double trayJPerK) {
    Mixing tray = new Mixing(trayJPerK, 20, 0);
    Mixing.Measures m = tray.measuresFor(target, litres, hotC, coldC).orElseThrow();
    assertEquals(target, tray.mixedC(m.hotLitres(), hotC, m.coldLitres(), coldC), 1e-9);
    assertEquals(litres, m.hotLitres() + m.coldLitres(), litres * 0.01);
  }

  /** A tray of 1100 J/K at 20 °C takes 22 kJ to 40 °C, as 0.36 L more of 55 in place of 15 °C. */
  @Test
  void aColdTrayTakesMoreOfTheHot() {
    double bare = BARE.measuresFor(40, 1, 55, 15).orElseThrow().hotLitres();
    double cold = new Mixing(1100, 20, 0).measuresFor(40, 1, 55, 15).orElseThrow().hotLitres();
    assertEquals(22_000 / (40 * 4178.6) * 1000 / Water.densityGPerL(55), cold - bare, 1e-3);
  }

  @Test
  void whatIsThereAlreadyCounts() {
    Mixing half = new Mixing(0, 20, 0.5);
    Mixing.Measures m = half.measuresFor(40, 1.5, 60, 30).orElseThrow();
    assertEquals(40, half.mixedC(m.hotLitres(), 60, m.coldLitres(), 30), 1e-9);
    assertTrue(half.measuresFor(40, 0.4, 60, 30).isEmpty());
  }

  @ParameterizedTest
  @CsvSource({"60, 55, 15", "10, 55, 15", "40, 15, 55", "40, 40, 40"})
  void whatTwoWatersCannotGiveIsNotGiven(double target, double hotC, double coldC) {
    assertTrue(BARE.measuresFor(target, 1, hotC, coldC).isEmpty());
  }

  @Test
  void whatIsNoTrayIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> new Mixing(-1, 20, 0));
    assertThrows(IllegalArgumentException.class, () -> new Mixing(0, Double.NaN, 0));
  }
}
