package trayward.host.forecast;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ArrheniusTest {

  /** Own arithmetic: energies that double, or more, the pace from 20 to 30 °C; 42 to 20 °C. */
  @ParameterizedTest
  @CsvSource({
    "19.39, 1.3, 1.742",
    "47.43, 1.9, 3.890",
    "51.22, 2.0, 4.336",
    "59.92, 2.25, 5.563",
    "76.08, 2.8, 8.837"
  })
  void anActivationEnergyTellsThePaceBetweenTwoTemperatures(
      double energyKj, double tenKelvin, double from20To42) {
    assertEquals(tenKelvin, pace(energyKj, 20, 30), 0.002);
    assertEquals(from20To42, pace(energyKj, 20, 42), 0.003);
  }

  private static double pace(double energyKj, double fromC, double toC) {
    return Math.exp(energyKj * (Arrhenius.entry(fromC) - Arrhenius.entry(toC)));
  }

  /**
   * Two-point form, own arithmetic on the data of a general-chemistry exercise: hydrogen iodide,
   * 9.51e-9 at 500 K and 1.10e-5 at 600 K, is 175.93 kJ/mol.
   */
  @Test
  void twoRateConstantsHundredKelvinApartAreAsTheirEnergyTells() {
    assertEquals(Math.log(1.10e-5 / 9.51e-9), Math.log(pace(175.93, 226.85, 326.85)), 0.003);
  }

  @Test
  void aTimeHalvesInAboutTenKelvinAsIsBelieved() {
    assertEquals(2.0, pace(Priors.ACTIVATION_KJ_PER_MOL, 35, 45), 0.1);
  }

  @Test
  void aBathThatStaysHasItsOwnTemperatureForMean() {
    assertEquals(38, Arrhenius.meanC(List.of(0.0, 10.0, 50.0), List.of(38.0, 38.0, 38.0)), 1e-9);
    assertEquals(38, Arrhenius.meanC(List.of(0.0), List.of(38.0)), 1e-9);
    assertTrue(Double.isNaN(Arrhenius.meanC(List.of(), List.of())));
  }

  /** Own arithmetic: the mean of the two paces, turned back into a temperature. */
  @Test
  void halfTheTimeHotterCountsMoreThanHalfTheTimeColder() {
    List<Double> atS = new ArrayList<>();
    List<Double> bathC = new ArrayList<>();
    for (int i = 0; i <= 2000; i++) {
      atS.add(i * 0.1);
      bathC.add(i < 1000 ? 30.0 : 40.0);
    }
    double mean = Arrhenius.meanC(atS, bathC);
    assertEquals((1 + pace(60, 30, 40)) / 2, pace(60, 30, mean), 1e-3);
    assertTrue(mean > 35.5 && mean < 37, "" + mean);
  }

  @Test
  void rowsThatAreNoReadingsArePassedOver() {
    List<Double> atS = List.of(0.0, 1.0, 2.0, Double.NaN, 1.5, 4.0);
    List<Double> bathC = List.of(38.0, Double.NaN, 38.0, 20.0, 20.0, 38.0);
    assertEquals(38, Arrhenius.meanC(atS, bathC), 1e-9);
    assertEquals(38, Arrhenius.meanC(List.of(0.0, 1.0), List.of(85.0, 38.0)), 1e-9);
  }
}
