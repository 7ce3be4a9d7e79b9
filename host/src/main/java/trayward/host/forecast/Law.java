package trayward.host.forecast;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/**
 * One law of a print's times, learned from prints: ln of a time, or of a ratio of two, linear in
 * its terms and shrunk toward what is believed. Immutable.
 *
 * <p>A print that does not tell a feature counts less: its row is weighed by what the feature's
 * spread may have done to its time, judged by the belief. A feature that no print tells widens all
 * rows and all forecasts alike; since the scatter is learned, prints that agree take that back.
 */
final class Law {

  /**
   * How far beyond the logged temperatures a forecast still goes, K: about a probe's error with a
   * print's own drift. The time changes by some 4 % within it, less than prints scatter.
   */
  static final double TOLERANCE_K = 0.5;

  private final List<Belief> beliefs;
  private final List<Told> told;
  private final ShrunkFit fit;
  private final double own;
  private final int prints;
  private final double coolestC;
  private final double hottestC;

  private Law(List<Belief> beliefs, List<Told> told, double own, ShrunkFit fit, Range range) {
    this.beliefs = beliefs;
    this.told = told;
    this.own = own;
    this.fit = fit;
    this.prints = range.prints;
    this.coolestC = range.coolestC;
    this.hottestC = range.hottestC;
  }

  private record Range(int prints, double coolestC, double hottestC) {}

  /** Learns it from prints that teach. */
  static Law of(
      List<Belief> beliefs,
      double scatter,
      List<PastPrint> prints,
      ToDoubleFunction<PastPrint> logTime) {
    List<Told> told = beliefs.stream().map(belief -> Told.of(belief.term(), prints)).toList();
    double own = 1;
    for (int j = 0; j < told.size(); j++) {
      own += told.get(j).any() ? 0 : doubtful(beliefs.get(j), told.get(j), scatter);
    }
    double[][] rows = new double[prints.size()][];
    double[] values = new double[prints.size()];
    for (int i = 0; i < rows.length; i++) {
      PastPrint print = prints.get(i);
      double width = own;
      for (int j = 0; j < told.size(); j++) {
        width +=
            told.get(j).any() && untold(beliefs.get(j).term(), print.features())
                ? doubtful(beliefs.get(j), told.get(j), scatter)
                : 0;
      }
      double weight = 1 / Math.sqrt(width);
      rows[i] = row(beliefs, told, print.emergenceC(), print.features());
      for (int j = 0; j < rows[i].length; j++) {
        rows[i][j] *= weight;
      }
      values[i] = weight * logTime.applyAsDouble(print);
    }
    Range range =
        new Range(
            rows.length,
            prints.stream().mapToDouble(PastPrint::emergenceC).min().orElse(Double.NaN),
            prints.stream().mapToDouble(PastPrint::emergenceC).max().orElse(Double.NaN));
    return new Law(
        beliefs, told, own, ShrunkFit.of(Priors.of(beliefs, scatter), rows, values), range);
  }

  /** What not telling adds to a row's variance, in units of the believed scatter's. */
  private static double doubtful(Belief belief, Told told, double scatter) {
    return isFeature(belief.term())
        ? told.variance(belief.mean(), belief.doubt()) / (scatter * scatter)
        : 0;
  }

  private static boolean isFeature(Term term) {
    return switch (term) {
      case CONSTANT, TEMPERATURE -> false;
      case EXHAUSTION, BROMIDE, STRENGTH, STOPS -> true;
    };
  }

  private static boolean untold(Term term, Features features) {
    return isFeature(term) && features.entry(term).isEmpty();
  }

  private static double[] row(
      List<Belief> beliefs, List<Told> told, double bathC, Features features) {
    double[] row = new double[beliefs.size()];
    for (int j = 0; j < row.length; j++) {
      Term term = beliefs.get(j).term();
      row[j] =
          switch (term) {
            case CONSTANT -> 1;
            case TEMPERATURE -> Arrhenius.entry(bathC);
            case EXHAUSTION, BROMIDE, STRENGTH, STOPS -> {
              OptionalDouble entry = features.entry(term);
              yield entry.isPresent() ? entry.getAsDouble() : told.get(j).mean();
            }
          };
    }
    return row;
  }

  /** How the logarithm would be distributed, for a bath temperature that is one. */
  Likely likely(Conditions at) {
    double more = 0;
    for (int j = 0; j < told.size(); j++) {
      if (told.get(j).any() && untold(beliefs.get(j).term(), at.features())) {
        more += told.get(j).variance(fit.coefficient(j), fit.doubt(j));
      }
    }
    return fit.likely(row(beliefs, told, at.bathC(), at.features()), own, more);
  }

  /** The expected time or ratio. */
  double expected(Conditions at) {
    return Math.exp(fit.centre(row(beliefs, told, at.bathC(), at.features())));
  }

  /** Why no forecast is given at a bath temperature; empty where one is. */
  Optional<String> refusal(double bathC) {
    if (!Arrhenius.bath(bathC)) {
      return Optional.of("the bath temperature is not known");
    }
    return beyond(bathC)
        ? Optional.of(
            String.format(
                Locale.ROOT,
                "the bath's %.1f °C is beyond the %s of the prints so far",
                bathC,
                logged()))
        : Optional.empty();
  }

  /** Whether a temperature lies beyond those logged, by more than {@value #TOLERANCE_K} K. */
  boolean beyond(double bathC) {
    return !(bathC >= coolestC - TOLERANCE_K && bathC <= hottestC + TOLERANCE_K);
  }

  /** The logged temperatures in words. */
  String logged() {
    return hottestC - coolestC < 0.05
        ? String.format(Locale.ROOT, "%.1f °C", coolestC)
        : String.format(Locale.ROOT, "%.1f to %.1f °C", coolestC, hottestC);
  }

  /** How many prints it was learned from. */
  int prints() {
    return prints;
  }

  /** The terms with what is believed of them now. */
  List<Coefficient> coefficients() {
    Coefficient[] all = new Coefficient[beliefs.size()];
    for (int j = 0; j < all.length; j++) {
      all[j] = new Coefficient(beliefs.get(j).term(), fit.coefficient(j), fit.doubt(j));
    }
    return List.of(all);
  }

  /** Features that prints tell and these do not. */
  List<Term> missing(Features features) {
    return IntStream.range(0, told.size())
        .filter(j -> told.get(j).any() && untold(beliefs.get(j).term(), features))
        .mapToObj(j -> beliefs.get(j).term())
        .toList();
  }
}
