package trayward.host.forecast;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;

class WatchTest {

  private static final Features USUAL = Features.of(0.1, 0.75, 0.045, 3);
  private static final Forecaster FORECASTER =
      Forecaster.of(new Printer(Printer.CHOSEN, 0.1, new Random(21)).prints(40));

  private static Conditions at(double bathC) {
    return new Conditions(bathC, USUAL);
  }

  private static Forecast.Window window(Forecast forecast) {
    return assertInstanceOf(Forecast.Window.class, forecast, forecast.words());
  }

  private static double tauS(double bathC) {
    return window(FORECASTER.emergence(at(bathC))).expectedS();
  }

  private static Watch until(Watch watch, double untilS, double bathC) {
    Watch next = watch;
    for (double s = watch.time().elapsedS() + 1; s <= untilS; s++) {
      next = next.at(s, OptionalDouble.of(bathC));
    }
    return next.at(untilS, OptionalDouble.of(bathC));
  }

  private static String refusal(Watch watch) {
    return assertInstanceOf(Forecast.Refused.class, watch.now()).reason();
  }

  @Test
  void atInTheWindowIsTheForecast() {
    Forecast.Window forecast = window(FORECASTER.emergence(at(36)));
    Forecast.Window live = window(Watch.begun(FORECASTER, at(36)).now());
    assertEquals(forecast.expectedS(), live.expectedS(), 1e-6);
    assertEquals(forecast.eighty().low(), live.eighty().low(), 1e-6);
    assertEquals(forecast.eighty().high(), live.eighty().high(), 1e-6);
    assertEquals(forecast.ninetyFive().low(), live.ninetyFive().low(), 1e-6);
    assertEquals(forecast.ninetyFive().high(), live.ninetyFive().high(), 1e-6);
    assertEquals(40, live.prints());
  }

  /** Own arithmetic: half the way at 36 °C, the other half at 40 °C. */
  @Test
  void whenTheBathGetsWarmerOnTheWayWhatIsLeftShrinks() {
    double halfS = tauS(36) / 2;
    Watch watch = until(until(Watch.begun(FORECASTER, at(36)), halfS, 36), halfS + 0.001, 40);
    Forecast.Window live = window(watch.now());
    assertEquals(halfS + tauS(40) / 2, live.expectedS(), 0.5);
    assertTrue(live.expectedS() < tauS(36) - 10);
    double wide = live.ninetyFive().high() - live.ninetyFive().low();
    Interval all = window(FORECASTER.emergence(at(40))).ninetyFive();
    assertEquals(all.high() - all.low(), wide, 2, "as wide as a print all at 40 °C");
  }

  @Test
  void theWindowIsNeverInThePastAndSaysWhenToWatchAndWhenTheSheetIsLate() {
    Watch watch = Watch.begun(FORECASTER, at(38));
    boolean late = false;
    for (int s = 1; s <= 7200; s += s < 600 ? 1 : 20) {
      watch = watch.at(s, OptionalDouble.of(38));
      Forecast.Window live = window(watch.now());
      assertTrue(live.ninetyFive().low() >= s, live + " at " + s);
      assertTrue(
          live.ninetyFive().low() <= live.eighty().low()
              && live.eighty().low() <= live.expectedS()
              && live.expectedS() <= live.eighty().high()
              && live.eighty().high() <= live.ninetyFive().high()
              && live.ninetyFive().high() < 1e7,
          live + " at " + s);
      Forecast.Window begun = window(FORECASTER.emergence(at(38)));
      assertEquals(s >= begun.eighty().low(), live.open());
      assertEquals(live.open(), live.words().startsWith("emergence: watch now; "), live.words());
      late = live.words().contains("later than past prints let expect");
      assertEquals(s > begun.ninetyFive().high(), late);
    }
    assertTrue(late);
    assertEquals(
        "longer than any print that is watched", refusal(watch.at(7201, OptionalDouble.of(38))));
  }

  @Test
  void withoutReadingsItNoLongerKnowsAfterHalfAMinute() {
    Watch watch = until(Watch.begun(FORECASTER, at(38)), 60, 38);
    Forecast.Window before = window(watch.now());
    Forecast.Window held = window(watch.at(85, OptionalDouble.empty()).now());
    assertEquals(before.expectedS(), held.expectedS(), 0.5);
    assertEquals(
        "no valid bath reading for too long: the watch no longer knows",
        refusal(watch.at(91, OptionalDouble.empty())));
  }

  @Test
  void withoutAFirstReadingItWaitsAndThenCountsFromIn() {
    Watch blind = Watch.begun(FORECASTER, at(Double.NaN)).at(20, OptionalDouble.empty());
    assertEquals("no valid bath reading yet", refusal(blind));
    double expectedS = window(blind.at(25, OptionalDouble.of(38)).now()).expectedS();
    assertEquals(tauS(38), expectedS, 0.5);
  }

  @Test
  void beyondTheLoggedTemperaturesItRefusesAndAfterwardsSaysForHowLong() {
    Watch watch = until(Watch.begun(FORECASTER, at(38)), 30, 38);
    Watch hot = until(watch, 40, 44);
    assertTrue(refusal(hot).startsWith("the bath's 44.0 °C is beyond the "), refusal(hot));
    Forecast.Window back = window(until(hot, 50, 38).now());
    assertEquals(1, back.caveats().size());
    assertTrue(back.words().contains("(10 s beyond the logged 3"), back.words());
  }

  @Test
  void withoutPrintsTheWatchSaysSo() {
    assertEquals("no prints yet", refusal(Watch.begun(Forecaster.of(List.of()), at(38))));
  }

  @Test
  void afterEmergenceThePullIsWaitedFor() {
    Watch watch = until(Watch.begun(FORECASTER, at(38)), 100, 38).emergedAt(100);
    Forecast.Window pull = window(watch.now());
    assertEquals(Forecast.Moment.PULL, pull.moment());
    assertEquals(100 * Printer.PULL_RATIO, pull.expectedS(), 5);
    assertTrue(pull.words().startsWith("pull: start watching from 2:"), pull.words());
    Forecast.Window again = window(watch.notEmerged().now());
    assertEquals(Forecast.Moment.EMERGENCE, again.moment());
  }

  @Test
  void aMarkOfEmergenceThatComesLateCountsFromItsOwnTime() {
    Watch watch = until(Watch.begun(FORECASTER, at(38)), 104, 38).emergedAt(100);
    assertEquals(100 * Printer.PULL_RATIO, window(watch.now()).expectedS(), 5);
    Watch never = watch.emergedAt(Double.NaN);
    assertEquals(Forecast.Moment.EMERGENCE, window(never.now()).moment());
  }

  @Test
  void aWarmerBathAfterEmergenceBringsThePullNearer() {
    Watch watch = until(Watch.begun(FORECASTER, at(36)), 120, 36).emergedAt(120);
    double staysS = window(until(watch, 130, 36).now()).expectedS();
    double warmerS = window(until(watch, 130, 40).now()).expectedS();
    double paceRatio = tauS(40) / tauS(36);
    assertEquals(130 + (staysS - 130) * paceRatio, warmerS, 4);
    assertTrue(warmerS < staysS - 8, warmerS + " and " + staysS);
  }
}
