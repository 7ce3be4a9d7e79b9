package trayward.host.report.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import trayward.host.bath.Problem;

/** Lists of two numbers each, such as 2x150,4x50. Stateless. */
final class Pairs {

  /** Hours of a day, and what was breathed in them. */
  static final Predicate<Pair> SPELL = p -> p.first >= 0 && p.first <= 24 && p.second >= 0;

  /** What was found, and its limit. */
  static final Predicate<Pair> SHARE = p -> p.first >= 0 && p.second > 0;

  private Pairs() {}

  /**
   * Two numbers.
   *
   * @param first the first; NaN where there is none
   * @param second the second
   */
  record Pair(double first, double second) {}

  /** As written, with something between the two; NaN for what is no number. */
  static List<Pair> of(String text, String between) {
    List<Pair> all = new ArrayList<>();
    for (String each : text.split(",", -1)) {
      String[] two = each.split(between, -1);
      all.add(
          two.length == 2
              ? new Pair(PlanOption.number(two[0]), PlanOption.number(two[1]))
              : new Pair(Double.NaN, Double.NaN));
    }
    return all;
  }

  /** A problem where one of them is not in order. */
  static Optional<Problem> problem(
      PlanWords w, PlanOption option, String between, Predicate<Pair> inOrder) {
    return w.has(option) && !of(w.text(option), between).stream().allMatch(inOrder)
        ? Optional.of(new Problem(option.name(), w.text(option), option.accepted()))
        : Optional.empty();
  }
}
