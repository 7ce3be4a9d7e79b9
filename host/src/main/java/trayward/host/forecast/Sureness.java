package trayward.host.forecast;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.distribution.discrete.BinomialDistribution;

/**
 * How sure the forecasts of emergence were, told from the prints themselves. Immutable.
 *
 * @param forecasts how many of the last prints could be forecast from those before each
 * @param held how many of these emerged within their window of 80 %
 * @param warnings why the forecast plainly does not hold, a clause each; empty where nothing tells
 */
public record Sureness(int forecasts, int held, List<String> warnings) {

  /** Prints looked back on: the count then means something, and old habits do not count. */
  public static final int LOOK_BACK = 20;

  /** Share of prints that a window should hold. */
  static final double LEVEL = 0.8;

  /** A count as low as this is less likely in windows that hold: one false alarm in twenty. */
  static final double COUNT_CHANCE = 0.05;

  /** Two trends are looked for, after every print: each must be plain. */
  static final double TREND_CHANCE = 0.01;

  /** Fewer prints show no trend worth a warning: judgement. */
  static final int TREND_PRINTS = 10;

  /** Copies. */
  public Sureness {
    warnings = List.copyOf(warnings);
  }

  static Sureness of(List<PastPrint> prints, Law law) {
    int forecasts = 0;
    int held = 0;
    for (int i = Math.max(1, prints.size() - LOOK_BACK); i < prints.size(); i++) {
      PastPrint print = prints.get(i);
      Law before = Forecaster.emergenceLaw(prints.subList(0, i));
      if (before.refusal(print.emergenceC()).isEmpty()) {
        double below = before.likely(conditions(print)).below(Math.log(print.emergenceS()));
        forecasts++;
        held += Math.abs(below - 0.5) <= LEVEL / 2 ? 1 : 0;
      }
    }
    List<String> warnings = new ArrayList<>();
    if (forecasts > 0 && tail(forecasts, held) < COUNT_CHANCE) {
      warnings.add("too few prints emerged within their window: take it for wider than it says");
    }
    if (prints.size() >= TREND_PRINTS) {
      trends(prints, law, warnings);
    }
    return new Sureness(forecasts, held, warnings);
  }

  /** How likely so few or fewer would be if the windows held what they say. */
  static double tail(int forecasts, int held) {
    return new BinomialDistribution(forecasts, LEVEL).cumulativeProbability(held);
  }

  /** What is left beside the law must follow neither the order of the prints nor a bend. */
  private static void trends(List<PastPrint> prints, Law law, List<String> warnings) {
    double[] left = new double[prints.size()];
    double[][] bend = new double[left.length][];
    double[][] order = new double[left.length][];
    double middle =
        prints.stream().mapToDouble(p -> Arrhenius.entry(p.emergenceC())).average().orElse(0);
    for (int i = 0; i < left.length; i++) {
      PastPrint print = prints.get(i);
      double x = Arrhenius.entry(print.emergenceC()) - middle;
      left[i] = Math.log(print.emergenceS()) - law.likely(conditions(print)).centre();
      bend[i] = new double[] {1, x, x * x};
      order[i] = new double[] {1, i};
    }
    if (plain(LinearFit.where(bend, left), 2)) {
      warnings.add(
          "times do not follow one law of temperature over "
              + law.logged()
              + ": trust the window only near temperatures often printed at");
    }
    Optional<LinearFit> drift = LinearFit.where(order, left);
    if (plain(drift, 1)) {
      boolean later = drift.orElseThrow().coefficient(1) > 0;
      warnings.add(
          "from print to print emergence comes "
              + (later ? "later" : "sooner")
              + " than what is told of the bath explains");
    }
  }

  private static boolean plain(Optional<LinearFit> fit, int column) {
    return fit.isPresent() && fit.get().chanceOfNone(column) < TREND_CHANCE;
  }

  private static Conditions conditions(PastPrint print) {
    return new Conditions(print.emergenceC(), print.features());
  }

  /** One line: how many held, and what speaks against the forecast. */
  public String words() {
    String count =
        forecasts == 0
            ? "no print could be forecast yet"
            : held + " of the last " + forecasts + " forecasts held their print within 80 %";
    return warnings.isEmpty() ? count : count + "; " + String.join("; ", warnings);
  }
}
