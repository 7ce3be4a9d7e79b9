package trayward.host.forecast;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** How often the windows of a print that is watched hold it. */
class WatchCoverageTest {

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
          double emergenceS = sheet.emergenceAtThisTemperature(watch);
          eighty[k] += live.eighty().holds(emergenceS) ? 1 : 0;
          ninetyFive[k] += live.ninetyFive().holds(emergenceS) ? 1 : 0;
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
            return new PastPrint(i, 38, s, OptionalDouble.of(pullS), Features.NONE);
          });
      double pullS = 140 * Math.exp(ratio + scatter * random.nextGaussian());
      boolean sound = Arrays.stream(past).allMatch(p -> p.pullS().isPresent()) && pullS > 140;
      if (!sound) {
        trial--;
        continue;
      }
      Conditions conditions = new Conditions(38, Features.of(0.1, 0.75, 0.045, 3));
      Watch watch = Watch.begun(Forecaster.of(List.of(past)), conditions);
      Watch later = watch.at(60, OptionalDouble.of(38)).at(140, OptionalDouble.of(38));
      Forecast.Window pull = (Forecast.Window) later.emergedAt(140).now();
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
