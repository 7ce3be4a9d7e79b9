package trayward.host.forecast;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.hipparchus.distribution.continuous.TDistribution;
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
  void theWindowIsNeverInThePastAndSaysWhenTheSheetIsLate() {
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
      late = live.words().contains("later than this bath's prints let expect");
      assertEquals(s > window(FORECASTER.emergence(at(38))).ninetyFive().high(), late);
    }
    assertTrue(late);
    assertEquals(
        "longer than any print that is watched", refusal(watch.at(7201, OptionalDouble.of(38))));
  }

  /** Against drawing: of residuals that are Student's t, those that have not come yet. */
  @Test
  void aSheetThatIsLateHasTheWindowOfThoseThatAreAsLate() {
    Likely likely = new Likely(0, 0.12, 9);
    double floor = Math.log(1.15);
    Random random = new Random(31);
    TDistribution t = new TDistribution(9);
    double[] left =
        random
            .doubles(200_000)
            .map(u -> 0.12 * t.inverseCumulativeProbability(u))
            .filter(x -> x > floor)
            .sorted()
            .toArray();
    assertTrue(left.length > 20_000);
    for (double share : new double[] {0.025, 0.1, 0.5, 0.9, 0.975}) {
      double drawn = left[(int) (share * left.length)];
      assertEquals(drawn, likely.quantileBeyond(floor, share), 0.015 * (drawn - floor) + 0.002);
    }
  }

  @Test
  void farBeyondEveryPrintTheTruncatedQuantilesStayExact() {
    Likely likely = new Likely(0, 0.1, 30);
    double floor = 3; // thirty scales out: a share of about 1e-23 is left
    double before = floor;
    for (double share : new double[] {0.025, 0.5, 0.975}) {
      double quantile = likely.quantileBeyond(floor, share);
      assertTrue(quantile > before, quantile + " after " + before);
      assertEquals(1 - share, likely.above(quantile) / likely.above(floor), 1e-6);
      before = quantile;
    }
    // Where the shares themselves underflow the tail is a power of the distance: own arithmetic.
    Likely narrow = new Likely(0, 0.01, 500);
    assertEquals(8 * Math.pow(2, 1 / 500.0), narrow.quantileBeyond(8, 0.5), 1e-9);
  }

  /** Ten thousand sheets in baths that wander, each looked at halfway and when it is late. */
  @Test
  void inABathThatWandersTheWindowsHoldWhatTheySayEarlyAndLate() {
    Random random = new Random(41);
    int[] seen = new int[2];
    int[] eighty = new int[2];
    int[] ninetyFive = new int[2];
    double[] looks = {0.5, 1.05};
    while (seen[0] < 10_000) {
      Printer printer = Printer.believed(random);
      List<PastPrint> past = printer.prints(8);
      if (!past.stream().allMatch(PastPrint::teaches)) {
        continue;
      }
      Sheet sheet = new Sheet(printer, past, random);
      for (int k = 0; k < looks.length; k++) {
        Watch watch = sheet.at(looks[k]);
        if (!watch.time().knows() || sheet.emergenceS < watch.time().elapsedS()) {
          continue;
        }
        if (watch.now() instanceof Forecast.Window live) {
          seen[k]++;
          eighty[k] += live.eighty().holds(sheet.emergenceAtThisTemperature(watch)) ? 1 : 0;
          ninetyFive[k] += live.ninetyFive().holds(sheet.emergenceAtThisTemperature(watch)) ? 1 : 0;
        }
      }
    }
    for (int k = 0; k < looks.length; k++) {
      double held = (double) eighty[k] / seen[k];
      double held95 = (double) ninetyFive[k] / seen[k];
      System.out.printf(
          "at %.2f of the way, %d sheets: 80 %% held %.3f, 95 %% held %.3f%n",
          looks[k], seen[k], held, held95);
      assertTrue(held > 0.77 && held < 0.83, "80 %: " + held);
      assertTrue(held95 > 0.935 && held95 < 0.965, "95 %: " + held95);
    }
  }

  /** A sheet in a bath that moves by up to 2 K, in steps of a twentieth of its way. */
  private static final class Sheet {
    private final Printer printer;
    private final Forecaster forecaster;
    private final Conditions first;
    private final double lastC;
    private final double noise;
    private final double stepS;
    double emergenceS;

    Sheet(Printer printer, List<PastPrint> past, Random random) {
      this.printer = printer;
      forecaster = Forecaster.of(past);
      first = printer.within(past);
      Conditions last = printer.within(past);
      lastC = first.bathC() + Math.max(-2, Math.min(2, last.bathC() - first.bathC()));
      noise = Math.exp(printer.scatter * random.nextGaussian());
      stepS = Math.min(25, printer.expectedS(first) / 60);
      double way = 0;
      while (way < noise) {
        way += 0.1 * stepS / printer.expectedS(first.at(bathC(emergenceS)));
        emergenceS += 0.1 * stepS;
      }
    }

    double bathC(double s) {
      double share = Math.min(1, s / (stepS * 20));
      return first.bathC() + share * (lastC - first.bathC());
    }

    Watch at(double way) {
      Watch watch = Watch.begun(forecaster, first);
      double untilS = way * forecaster.emergenceS(first.features()).applyAsDouble(lastC);
      for (int i = 1; i * stepS < untilS && i < 2000; i++) {
        watch = watch.at(i * stepS, OptionalDouble.of(bathC(i * stepS)));
      }
      return watch;
    }

    /** When it emerges if the bath stays as it is now, which is what the watch is asked. */
    double emergenceAtThisTemperature(Watch watch) {
      double s = watch.time().elapsedS();
      double way = 0;
      for (double at = 0; at < s; at += 0.1 * stepS) {
        way += Math.min(0.1 * stepS, s - at) / printer.expectedS(first.at(bathC(at)));
      }
      return s + (noise - way) * printer.expectedS(first.at(bathC(s)));
    }
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

  @Test
  void windowsOfThePullHoldWhatTheySay() {
    Random random = new Random(51);
    int[] held = new int[2];
    int trials = 10_000;
    for (int trial = 0; trial < trials; trial++) {
      // A printer drawn as the ratio's prior says, at one temperature: the ratio alone is tried.
      double scatter = Printer.believed(random).scatter * Priors.RATIO_SCATTER / Priors.SCATTER;
      double ratio = Math.log(2) + scatter / Priors.RATIO_SCATTER * 0.35 * random.nextGaussian();
      PastPrint[] past = new PastPrint[6];
      Arrays.setAll(
          past,
          i -> {
            double s = 150 * Math.exp(0.1 * random.nextGaussian());
            double pullS = s * Math.exp(ratio + scatter * random.nextGaussian());
            return new PastPrint(i, 38, s, OptionalDouble.of(pullS), USUAL);
          });
      double pullS = 140 * Math.exp(ratio + scatter * random.nextGaussian());
      boolean sound = Arrays.stream(past).allMatch(p -> p.pullS().isPresent()) && pullS > 140;
      if (!sound) {
        trial--;
        continue;
      }
      Watch watch = until(Watch.begun(Forecaster.of(List.of(past)), at(38)), 1, 38);
      Watch later = watch.at(60, OptionalDouble.of(38)).at(140, OptionalDouble.of(38));
      Forecast.Window pull = window(later.emergedAt(140).now());
      held[0] += pull.eighty().holds(pullS) ? 1 : 0;
      held[1] += pull.ninetyFive().holds(pullS) ? 1 : 0;
    }
    System.out.printf(
        "the pull, 6 prints: 80 %% held %.3f, 95 %% held %.3f%n",
        (double) held[0] / trials, (double) held[1] / trials);
    assertEquals(0.80, (double) held[0] / trials, 0.02);
    assertEquals(0.95, (double) held[1] / trials, 0.01);
  }
}
