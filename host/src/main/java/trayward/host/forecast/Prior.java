package trayward.host.forecast;

import java.util.List;

/**
 * What is believed of a line before a person has made prints of their own. Immutable.
 *
 * @param means expected coefficients
 * @param doubts standard deviation of each, above 0
 * @param scatter standard deviation of one observation about the line
 * @param weight how many observations that scatter is worth, above 0
 */
public record Prior(List<Double> means, List<Double> doubts, double scatter, double weight) {

  /** Copies and checks. */
  public Prior {
    means = List.copyOf(means);
    doubts = List.copyOf(doubts);
    boolean positive = scatter > 0 && weight > 0;
    for (double doubt : doubts) {
      positive &= doubt > 0;
    }
    if (means.isEmpty() || means.size() != doubts.size() || !positive) {
      throw new IllegalArgumentException("a prior needs as many doubts as means, all above 0");
    }
  }

  int columns() {
    return means.size();
  }

  double mean(int column) {
    return means.get(column);
  }

  /** How many observations of the line alone a doubt is worth, as the root of it. */
  double pull(int column) {
    return scatter / doubts.get(column);
  }
}
