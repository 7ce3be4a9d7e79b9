package trayward.host.forecast;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The law of emergence by ordinary least squares, without any belief: to show and to compare.
 * Immutable.
 *
 * @param coefficients each with its standard error; of the temperature's term this is the fitted
 *     apparent activation energy, kJ/mol
 * @param residualSd standard deviation of ln(time) about it
 * @param freedom degrees of freedom left
 * @param rSquared share of the variance of ln(time) that it explains
 */
public record PlainFit(
    List<Coefficient> coefficients, double residualSd, int freedom, double rSquared) {

  /** Prints beyond the coefficients, so that a standard error means something: judgement. */
  static final int SPARE_PRINTS = 3;

  /** Copies. */
  public PlainFit {
    coefficients = List.copyOf(coefficients);
  }

  /**
   * Fits the terms that every print tells and that vary; temperature alone where these cannot be
   * told apart or the prints are too few for them.
   */
  static Optional<PlainFit> of(List<PastPrint> prints) {
    List<Term> terms = new ArrayList<>(List.of(Term.CONSTANT));
    for (Term term : Term.values()) {
      if (term != Term.CONSTANT && varies(term, prints)) {
        terms.add(term);
      }
    }
    Optional<PlainFit> all = of(terms, prints);
    return all.isPresent() || !terms.contains(Term.TEMPERATURE)
        ? all
        : of(List.of(Term.CONSTANT, Term.TEMPERATURE), prints);
  }

  private static Optional<PlainFit> of(List<Term> terms, List<PastPrint> prints) {
    if (terms.size() < 2 || prints.size() < terms.size() + SPARE_PRINTS) {
      return Optional.empty();
    }
    double[][] rows = new double[prints.size()][terms.size()];
    double[] values = new double[prints.size()];
    for (int i = 0; i < rows.length; i++) {
      for (int j = 0; j < terms.size(); j++) {
        rows[i][j] = entry(terms.get(j), prints.get(i)).orElseThrow();
      }
      values[i] = Math.log(prints.get(i).emergenceS());
    }
    return LinearFit.where(rows, values).map(fit -> of(terms, fit));
  }

  private static PlainFit of(List<Term> terms, LinearFit fit) {
    List<Coefficient> coefficients = new ArrayList<>();
    for (int j = 0; j < terms.size(); j++) {
      coefficients.add(new Coefficient(terms.get(j), fit.coefficient(j), fit.standardError(j)));
    }
    return new PlainFit(coefficients, fit.residualSd(), fit.freedom(), fit.rSquared());
  }

  private static boolean varies(Term term, List<PastPrint> prints) {
    boolean told = prints.stream().allMatch(print -> entry(term, print).isPresent());
    return told
        && prints.stream().mapToDouble(p -> entry(term, p).orElseThrow()).distinct().count() > 1;
  }

  private static OptionalDouble entry(Term term, PastPrint print) {
    return switch (term) {
      case CONSTANT -> OptionalDouble.of(1);
      case TEMPERATURE -> OptionalDouble.of(Arrhenius.entry(print.emergenceC()));
      case EXHAUSTION, BROMIDE, STRENGTH, STOPS -> print.features().entry(term);
    };
  }

  /** A coefficient; empty where the prints do not tell it. */
  public Optional<Coefficient> coefficient(Term term) {
    return coefficients.stream().filter(c -> c.term() == term).findFirst();
  }
}
