package trayward.host.app.goals;

import java.util.EnumMap;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/**
 * What one session gave. Immutable once made.
 *
 * @param values by measure; infinite where the bath never came to stay
 */
record Figures(Map<Measure, Double> values) {

  /** The measures of {@code in}, each from {@code figure}. */
  static Figures of(GoalCase in, ToDoubleFunction<Measure> figure) {
    Map<Measure, Double> values = new EnumMap<>(Measure.class);
    for (Measure measure : in.measures()) {
      values.put(measure, figure.applyAsDouble(measure));
    }
    return new Figures(values);
  }

  /** A figure; NaN where it is not measured. */
  double get(Measure measure) {
    return values.getOrDefault(measure, Double.NaN);
  }
}
