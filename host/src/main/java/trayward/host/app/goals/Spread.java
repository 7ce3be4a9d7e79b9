package trayward.host.app.goals;

import java.util.Comparator;
import java.util.List;

/**
 * A measure over all trays, by nearest rank. Infinite is worse than any number. Immutable.
 *
 * @param worst the most
 * @param p90 nine of ten trays are no worse
 * @param median half of the trays are no worse
 * @param worstSeed whose the worst is
 * @param never trays on which it never came to an end
 */
record Spread(double worst, double p90, double median, long worstSeed, long never) {

  /** The spread of a figure, at least one tray. */
  static Spread of(List<TrayFigures> trays, GoalCase in, Contender contender, Measure measure) {
    List<One> sorted =
        trays.stream()
            .map(t -> new One(t.seed(), t.figure(in, contender, measure)))
            .sorted(Comparator.comparingDouble(One::value)) // stable: the first worst seed is named
            .toList();
    double worst = sorted.get(sorted.size() - 1).value();
    One named = sorted.stream().filter(o -> o.value() >= worst).findFirst().orElseThrow();
    return new Spread(
        worst,
        rank(sorted, 0.9),
        rank(sorted, 0.5),
        named.seed(),
        sorted.stream().filter(o -> Double.isInfinite(o.value())).count());
  }

  private static double rank(List<One> sorted, double share) {
    return sorted.get((int) Math.ceil(share * sorted.size()) - 1).value();
  }

  private record One(long seed, double value) {}
}
