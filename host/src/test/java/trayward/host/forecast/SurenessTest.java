package trayward.host.forecast;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** What the forecast says of itself: of printers it holds for, and of printers it does not. */
class SurenessTest {

  private static final Features USUAL = Features.of(0.05, 0.5, 0.04, 3);

  /** Seconds of Arrhenius' law: own arithmetic, 200 s at 35 °C. */
  private static double arrheniusS(double energyKj, double bathC) {
    return 200 * Math.exp(energyKj * 1000 / 8.314462618 * (1 / (bathC + 273.15) - 1 / 308.15));
  }

  private static List<PastPrint> prints(
      int count, double scatter, DoubleUnaryOperator seconds, Random random) {
    List<PastPrint> prints = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double bathC = 22 + 22 * random.nextDouble();
      double s = seconds.applyAsDouble(bathC) * Math.exp(scatter * random.nextGaussian());
      prints.add(new PastPrint(i, bathC, s, OptionalDouble.empty(), USUAL));
    }
    return prints;
  }

  private static boolean warns(Sureness sureness, String what) {
    return sureness.warnings().stream().anyMatch(warning -> warning.contains(what));
  }

  /** Binomial tails, 20 forecasts at 0.8: 12 or fewer 0.0321, 13 or fewer 0.0867; from memory. */
  @Test
  void twelveOfTwentyIsTooFewAndThirteenIsNot() {
    assertEquals(0.0321, Sureness.tail(20, 12), 5e-5);
    assertEquals(0.0867, Sureness.tail(20, 13), 5e-5);
  }

  @Test
  void ofPrintsItHoldsForFourOfFiveAreHeldAndItWarnsSeldom() {
    int forecasts = 0;
    int held = 0;
    int warned = 0;
    for (int seed = 0; seed < 500; seed++) {
      Printer printer = Printer.believed(new Random(seed));
      Sureness sureness = Forecaster.of(printer.prints(40)).sureness();
      forecasts += sureness.forecasts();
      held += sureness.held();
      warned += sureness.warnings().isEmpty() ? 0 : 1;
    }
    System.out.printf(
        "held %.3f; %d of 500 warned for nothing%n", (double) held / forecasts, warned);
    assertEquals(0.8, (double) held / forecasts, 0.02);
    assertTrue(warned < 50, warned + " of 500 printers were warned for nothing");
  }

  @Test
  void theLastTwentyPrintsAreLookedBackOnAndTheFirstHasNoForecast() {
    List<PastPrint> prints = prints(30, 0.1, c -> arrheniusS(60, c), new Random(4));
    assertTrue(Forecaster.of(prints).sureness().forecasts() <= 20);
    assertEquals(0, Forecaster.of(prints.subList(0, 1)).sureness().forecasts());
    assertEquals("no print could be forecast yet", Forecaster.of(List.of()).sureness().words());
  }

  /** Above 34 °C more heat no longer shortens: diffusion, say. */
  @Test
  void aKinkInTheLawIsSaid() {
    DoubleUnaryOperator kinked = c -> arrheniusS(80, Math.min(c, 34));
    int warned = 0;
    for (int seed = 0; seed < 100; seed++) {
      List<PastPrint> prints = prints(40, 0.1, kinked, new Random(seed));
      warned += warns(Forecaster.of(prints).sureness(), "one law of temperature") ? 1 : 0;
    }
    System.out.printf("a kink: said of %d in 100 printers with 40 prints%n", warned);
    assertTrue(warned >= 95, "" + warned);
  }

  /** Two minutes that no heat shortens, then Arrhenius. */
  @Test
  void anInductionTimeThatDoesNotScaleIsSaidOnceThePrintsShowIt() {
    DoubleUnaryOperator induced = c -> 120 + 0.5 * arrheniusS(90, c);
    int warned = 0;
    int held = 0;
    int forecasts = 0;
    for (int seed = 0; seed < 100; seed++) {
      List<PastPrint> prints = prints(60, 0.08, induced, new Random(seed));
      Sureness sureness = Forecaster.of(prints).sureness();
      warned += warns(sureness, "one law of temperature") ? 1 : 0;
      held += sureness.held();
      forecasts += sureness.forecasts();
    }
    System.out.printf(
        "an induction time: said of %d in 100 printers; windows held %.3f%n",
        warned, (double) held / forecasts);
    assertTrue(warned >= 90, "" + warned);
    // The learned scatter swallows the bend: the windows widen and go on holding about as many.
    assertEquals(0.8, (double) held / forecasts, 0.05);
  }

  @Test
  void timesThatDriftFromPrintToPrintAreSaid() {
    List<PastPrint> prints = new ArrayList<>();
    Random random = new Random(8);
    for (int i = 0; i < 25; i++) {
      double s = 150 * Math.exp(0.02 * i + 0.08 * random.nextGaussian());
      prints.add(new PastPrint(i, 37 + 2 * random.nextDouble(), s, OptionalDouble.empty(), USUAL));
    }
    Sureness sureness = Forecaster.of(prints).sureness();
    assertTrue(warns(sureness, "emergence comes later than"), sureness.words());
  }

  @Test
  void printsThatSuddenlyScatterAreSaidToBeTooFewWithinTheirWindows() {
    Random random = new Random(9);
    List<PastPrint> prints = prints(80, 0.05, c -> arrheniusS(60, c), random);
    prints.addAll(prints(20, 0.4, c -> arrheniusS(60, c), random));
    Forecaster forecaster = Forecaster.of(prints);
    Sureness sureness = forecaster.sureness();
    assertTrue(sureness.held() <= 12, sureness.words());
    assertTrue(warns(sureness, "too few prints emerged within their window"), sureness.words());
    // The first of the twenty, or another, may lie beyond the temperatures before it.
    String count = sureness.held() + " of the last " + sureness.forecasts() + " forecasts";
    assertTrue(sureness.words().startsWith(count), sureness.words());
    assertInstanceOf(
        Forecast.Window.class, forecaster.emergence(new Conditions(35, USUAL)), "it still tells");
  }
}
