package trayward.host.forecast;

import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Three prints say little, and the window shows it. */
class FewPrintsTest {

  private static final Features USUAL = Features.of(0.05, 0.5, 0.04, 3);

  private static Forecast.Window window(Forecast forecast) {
    return assertInstanceOf(Forecast.Window.class, forecast);
  }

  private static double factor(Interval window) {
    return window.high() / window.low();
  }

  /** Three prints that agree to the second: the window of 95 % still spans a factor of 1.86. */
  @Test
  void threePrintsGiveAWideWindowHoweverWellTheyAgree() {
    List<PastPrint> three = new ArrayList<>();
    List<PastPrint> many = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      PastPrint print = new PastPrint(i, 38, 190, OptionalDouble.of(300), USUAL);
      many.add(print);
      if (i < 3) {
        three.add(print);
      }
    }
    Conditions next = new Conditions(38, USUAL);
    Forecast.Window few = window(Forecaster.of(three).emergence(next));
    Forecast.Window lots = window(Forecaster.of(many).emergence(next));
    System.out.printf(
        "three prints that agree: 80 %% factor %.2f, 95 %% factor %.2f; sixty: %.2f, %.2f%n",
        factor(few.eighty()),
        factor(few.ninetyFive()),
        factor(lots.eighty()),
        factor(lots.ninetyFive()));
    assertTrue(factor(few.eighty()) > 1.4, "" + few);
    assertTrue(factor(few.ninetyFive()) > 1.8, "" + few);
    assertTrue(factor(lots.ninetyFive()) < 1.3, "" + lots);
  }

  @Test
  void threePrintsThatScatterGiveAWindowOfAFactorOfTwo() {
    double least = Double.POSITIVE_INFINITY;
    double sum = 0;
    for (int seed = 0; seed < 200; seed++) {
      Printer printer = new Printer(Printer.CHOSEN, 0.15, new Random(seed));
      List<PastPrint> prints = printer.prints(3);
      Conditions next = printer.within(prints);
      double factor = factor(window(Forecaster.of(prints).emergence(next)).ninetyFive());
      least = Math.min(least, factor);
      sum += factor;
    }
    System.out.printf("three prints: 95 %% factor at least %.2f, mean %.2f%n", least, sum / 200);
    assertTrue(least > 1.8, "" + least);
  }
}
