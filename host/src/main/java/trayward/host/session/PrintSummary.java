package trayward.host.session;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.hipparchus.stat.descriptive.StreamingStatistics;

/**
 * What a print's temperature trace amounts to. Immutable.
 *
 * <p>Temperatures are of the bath, °C, between in and pull, or up to where the print was left, or
 * the last sample while in progress; only valid samples count.
 *
 * @param atInC when the sheet went in; empty where unknown
 * @param atEmergenceC at emergence; empty where unknown
 * @param atPullC at the pull; empty where unknown
 * @param meanC mean; empty without a sample
 * @param minC lowest; empty without a sample
 * @param maxC highest; empty without a sample
 * @param deviationK sample standard deviation (n - 1), K; empty with fewer than two samples
 * @param samples how many samples counted
 * @param emergenceS seconds from in to emergence; empty where not marked
 * @param pullS seconds from in to pull; empty where not marked
 */
public record PrintSummary(
    OptionalDouble atInC,
    OptionalDouble atEmergenceC,
    OptionalDouble atPullC,
    OptionalDouble meanC,
    OptionalDouble minC,
    OptionalDouble maxC,
    OptionalDouble deviationK,
    long samples,
    OptionalDouble emergenceS,
    OptionalDouble pullS) {

  /**
   * Valid samples further apart than this are no neighbours, seconds: a bath can move half a kelvin
   * meanwhile, and the reading kept with the mark is the better word.
   */
  public static final double GAP_MAX_S = 10;

  /**
   * Sums up a print.
   *
   * @param print the print
   * @param trace the session's samples around it in time order; one on either side of in and pull
   *     lets the temperatures there be interpolated
   */
  public static PrintSummary of(Print print, List<TraceSample> trace) {
    StreamingStatistics bath = new StreamingStatistics();
    double fromS = print.inAt().map(Mark::sessionS).orElse(Double.POSITIVE_INFINITY);
    double toS = print.endS().orElse(Double.POSITIVE_INFINITY);
    for (TraceSample sample : trace) {
      if (sample.bathValid() && sample.sessionS() >= fromS && sample.sessionS() <= toS) {
        bath.addValue(sample.bathC());
      }
    }
    long n = bath.getN();
    return new PrintSummary(
        bathAt(print.inAt(), trace),
        bathAt(print.emergenceAt(), trace),
        bathAt(print.pullAt(), trace),
        when(n >= 1, bath.getMean()),
        when(n >= 1, bath.getMin()),
        when(n >= 1, bath.getMax()),
        when(n >= 2, bath.getStandardDeviation()),
        n,
        print.elapsedS(MarkKind.EMERGENCE),
        print.elapsedS(MarkKind.PULL));
  }

  private static OptionalDouble when(boolean known, double value) {
    return known ? OptionalDouble.of(value) : OptionalDouble.empty();
  }

  private static OptionalDouble bathAt(Optional<Mark> mark, List<TraceSample> trace) {
    if (mark.isEmpty()) {
      return OptionalDouble.empty();
    }
    double atS = mark.get().sessionS();
    Optional<TraceSample> before = Optional.empty();
    Optional<TraceSample> after = Optional.empty();
    for (TraceSample sample : trace) {
      if (sample.bathValid()) {
        if (sample.sessionS() > atS) {
          after = Optional.of(sample);
          break;
        }
        before = Optional.of(sample);
      }
    }
    if (before.filter(sample -> sample.sessionS() == atS).isPresent()) {
      return OptionalDouble.of(before.get().bathC());
    }
    if (before.isEmpty() || after.isEmpty()) {
      return mark.get().bathC();
    }
    return between(before.get(), after.get(), atS, mark.get().bathC());
  }

  private static OptionalDouble between(
      TraceSample before, TraceSample after, double atS, OptionalDouble otherwise) {
    double gapS = after.sessionS() - before.sessionS();
    if (gapS > GAP_MAX_S) {
      return otherwise;
    }
    double share = (atS - before.sessionS()) / gapS;
    return OptionalDouble.of(before.bathC() + share * (after.bathC() - before.bathC()));
  }
}
