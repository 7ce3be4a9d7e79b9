package trayward.host.forecast;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ForecasterTest {

  private static final Features USUAL = Features.of(0.05, 0.5, 0.04, 3);

  private static Printer chosen(int seed) {
    return new Printer(Printer.CHOSEN, 0.1, new Random(seed));
  }

  private static Forecast.Window window(Forecast forecast) {
    return assertInstanceOf(Forecast.Window.class, forecast);
  }

  private static double factor(Interval window) {
    return window.high() / window.low();
  }

  @Test
  void aPrinterWhoseLawIsKnownIsRecovered() {
    Forecaster forecaster = Forecaster.of(chosen(1).prints(400));
    List<Coefficient> learned = forecaster.emergenceCoefficients();
    for (int j = 0; j < learned.size(); j++) {
      Coefficient c = learned.get(j);
      assertEquals(Printer.CHOSEN[j], c.value(), 3 * c.standardError(), c.term().word());
    }
    assertTrue(learned.get(1).standardError() < 2, "the activation energy is known to 2 kJ/mol");
    Conditions next = new Conditions(37, Features.of(0.12, 0.9, 0.05, 2.5));
    double expectedS = chosen(1).expectedS(next);
    assertEquals(expectedS, window(forecaster.emergence(next)).expectedS(), 0.02 * expectedS);
    assertEquals(
        Printer.PULL_RATIO * expectedS,
        window(forecaster.pull(next)).expectedS(),
        0.03 * Printer.PULL_RATIO * expectedS);
  }

  @Test
  void thePlainFitShowsTheActivationEnergyWithItsStandardError() {
    PlainFit plain = Forecaster.of(chosen(2).prints(60)).plain().orElseThrow();
    Coefficient energy = plain.coefficient(Term.TEMPERATURE).orElseThrow();
    assertEquals(75, energy.value(), 3 * energy.standardError());
    assertTrue(energy.standardError() > 1 && energy.standardError() < 8, "" + energy);
    assertEquals("kJ/mol", energy.term().unit());
    assertEquals(54, plain.freedom());
    assertEquals(0.1, plain.residualSd(), 0.03);
  }

  @Test
  void withFewPrintsThePlainFitKnowsTemperatureAloneAndWithFewerNothing() {
    List<PastPrint> prints = chosen(3).prints(8);
    PlainFit plain = Forecaster.of(prints).plain().orElseThrow();
    assertEquals(2, plain.coefficients().size());
    assertTrue(Forecaster.of(prints.subList(0, 4)).plain().isEmpty());
  }

  @Test
  void printsAllAtOneTemperatureHaveNoPlainActivationEnergy() {
    List<PastPrint> prints = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      prints.add(new PastPrint(i, 38, 180 + i, OptionalDouble.empty(), Features.NONE));
    }
    assertTrue(Forecaster.of(prints).plain().isEmpty());
    assertEquals(
        1,
        window(Forecaster.of(prints).emergence(new Conditions(38, USUAL))).expectedS() / 185,
        0.05);
  }

  @Test
  void withoutPrintsNothingIsForecast() {
    Forecaster forecaster = Forecaster.of(List.of());
    assertEquals(
        new Forecast.Refused("no prints yet"), forecaster.emergence(new Conditions(38, USUAL)));
    assertEquals(
        new Forecast.Refused("no print with a pull yet"),
        forecaster.pull(new Conditions(38, USUAL)));
  }

  @Test
  void beyondTheLoggedTemperaturesItRefusesAndNamesThem() {
    Forecaster forecaster =
        Forecaster.of(
            List.of(
                new PastPrint(1, 36, 200, OptionalDouble.empty(), USUAL),
                new PastPrint(2, 40, 150, OptionalDouble.empty(), USUAL)));
    for (double bathC : new double[] {35.5, 36, 40, 40.5}) {
      window(forecaster.emergence(new Conditions(bathC, USUAL)));
    }
    assertEquals(
        "no forecast: the bath's 40.6 °C is beyond the 36.0 to 40.0 °C of the prints so far",
        forecaster.emergence(new Conditions(40.6, USUAL)).words());
    assertEquals(
        "no forecast: the bath's 35.4 °C is beyond the 36.0 to 40.0 °C of the prints so far",
        forecaster.emergence(new Conditions(35.4, USUAL)).words());
    assertEquals(
        "no forecast: the bath temperature is not known",
        forecaster.emergence(new Conditions(Double.NaN, USUAL)).words());
  }

  @Test
  void onlyTheNewestFiveHundredPrintsCount() {
    List<PastPrint> prints = new ArrayList<>();
    for (int i = 0; i < 600; i++) {
      prints.add(new PastPrint(i, i < 100 ? 20 : 38, 200, OptionalDouble.empty(), USUAL));
    }
    Forecaster forecaster = Forecaster.of(prints);
    assertEquals(500, forecaster.prints().size());
    assertInstanceOf(Forecast.Refused.class, forecaster.emergence(new Conditions(20, USUAL)));
  }

  @Test
  void whatCannotBeAPrintTeachesNothing() {
    List<PastPrint> prints = new ArrayList<>();
    for (double bathC : new double[] {85, -127, Double.NaN, Double.POSITIVE_INFINITY}) {
      prints.add(new PastPrint(1, bathC, 200, OptionalDouble.empty(), USUAL));
    }
    for (double s : new double[] {0, -3, Double.NaN, Double.POSITIVE_INFINITY, 1e6}) {
      prints.add(new PastPrint(1, 38, s, OptionalDouble.empty(), USUAL));
    }
    assertEquals(0, Forecaster.of(prints).prints().size());
    assertTrue(new PastPrint(1, 38, 200, OptionalDouble.of(190), USUAL).pullS().isEmpty());
    assertTrue(new PastPrint(1, 38, 200, OptionalDouble.of(Double.NaN), USUAL).pullS().isEmpty());
    Features slips =
        new Features(
            OptionalDouble.of(-1),
            OptionalDouble.of(Double.NaN),
            OptionalDouble.of(0),
            OptionalDouble.of(1e9));
    assertEquals(Features.NONE, slips);
  }

  @Test
  void whatIsNotToldOfTheComingPrintWidensItsWindowAndIsSaid() {
    Forecaster forecaster = Forecaster.of(chosen(5).prints(40));
    Conditions told = new Conditions(38, Features.of(0.1, 0.75, 0.045, 3));
    Forecast.Window full = window(forecaster.emergence(told));
    Forecast.Window less = window(forecaster.emergence(new Conditions(38, Features.NONE)));
    assertTrue(factor(less.eighty()) > 1.3 * factor(full.eighty()), full + " and " + less);
    assertEquals(full.expectedS(), less.expectedS(), 0.1 * full.expectedS());
    assertEquals(List.of(), full.caveats());
    assertEquals(
        List.of(
            "exhaustion not told", "bromide not told", "strength not told", "exposure not told"),
        less.caveats());
  }

  @Test
  void theWindowIsToldInWordsRoundedOutward() {
    Forecast.Window window =
        new Forecast.Window(
            Forecast.Moment.EMERGENCE,
            215,
            new Interval(190.9, 215, 244.1),
            new Interval(170, 215, 3725.2),
            12,
            false,
            List.of());
    assertEquals("start watching from 3:10", window.startWatching());
    assertEquals("80 %: 3:10 to 4:05, 95 %: 2:50 to 62:06, from 12 prints", window.howSure());
    assertEquals(
        "emergence: start watching from 3:10; 80 %: 3:10 to 4:05, 95 %: 2:50 to 62:06, from 12"
            + " prints",
        window.words());
  }
}
