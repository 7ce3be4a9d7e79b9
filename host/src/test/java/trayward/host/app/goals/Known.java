package trayward.host.app.goals;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Figures made by hand. */
final class Known {

  private Known() {}

  /**
   * Trays of seeds 1, 2, 3, ...: every figure of ours is 1.01 or, without a bound, 0.001, but for
   * {@code heatUps} in the first case; trips are none; the others are twice as bad, the thermostat
   * never arrives.
   */
  static Measured heatUps(double... heatUps) {
    List<TrayFigures> trays = new ArrayList<>();
    for (int i = 0; i < heatUps.length; i++) {
      double heatUp = heatUps[i];
      Map<GoalCase, Map<Contender, Figures>> all = new EnumMap<>(GoalCase.class);
      for (GoalCase in : GoalCase.values()) {
        all.put(in, contenders(in, heatUp));
      }
      trays.add(new TrayFigures(i + 1, all));
    }
    return new Measured(1, trays);
  }

  private static Map<Contender, Figures> contenders(GoalCase in, double heatUp) {
    Map<Contender, Figures> all = new EnumMap<>(Contender.class);
    for (Contender contender : Contender.values()) {
      boolean ours = contender == Contender.OURS;
      boolean given = ours && in == GoalCase.TWO_PROBES;
      if (ours || in.othersIn() == in) {
        all.put(
            contender,
            Figures.of(in, m -> given && m == Measure.HEAT_UP ? heatUp : figure(contender, m)));
      }
    }
    return all;
  }

  private static double figure(Contender contender, Measure measure) {
    double ours = measure == Measure.TRIPS ? 0 : measure.ratio() ? 1.01 : 0.001;
    return switch (contender) {
      case OURS -> ours;
      case PID -> 2 * ours;
      case THERMOSTAT -> measure.ratio() ? Double.POSITIVE_INFINITY : 2 * ours;
    };
  }
}
