package trayward.host.forecast;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What the prints tell of one feature, and so what stands for it where it is not told. Immutable.
 *
 * <p>Choice: the average of those that tell, with the spread they show; 0, which is the usual value
 * of {@link Priors}, where none tells. An average leaves the coefficient to those that tell, which
 * leaving prints out would not, since few would be left. The doubt it adds is what the feature's
 * spread makes of the time.
 *
 * @param any whether any print tells
 * @param mean the entry of one that does not
 * @param spread standard deviation of that entry; shrunk toward the belief, so that two prints that
 *     happen to agree do not make it 0
 */
record Told(boolean any, double mean, double spread) {

  static Told of(Term term, List<PastPrint> prints) {
    double[] told =
        prints.stream()
            .map(print -> print.features().entry(term))
            .filter(OptionalDouble::isPresent)
            .mapToDouble(OptionalDouble::getAsDouble)
            .toArray();
    double mean = Arrays.stream(told).average().orElse(0);
    double squares = Arrays.stream(told).map(x -> (x - mean) * (x - mean)).sum();
    double believed = Priors.spread(term);
    double weight = Priors.SPREAD_PRINTS;
    double variance = (weight * believed * believed + squares) / (weight + told.length);
    return new Told(told.length > 0, mean, Math.sqrt(variance));
  }

  /** Variance of ln(time) that not telling adds, for a coefficient and its doubt. */
  double variance(double coefficient, double doubt) {
    return (coefficient * coefficient + doubt * doubt) * spread * spread;
  }
}
