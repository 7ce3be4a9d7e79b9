package trayward.host.app.goals;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.TreeSet;

/**
 * All figures of a run and what they say of the goals. Immutable.
 *
 * @param fromSeed first seed
 * @param trays in order of seeds, at least one
 */
record Measured(long fromSeed, List<TrayFigures> trays) {

  Measured {
    trays = List.copyOf(trays);
  }

  Spread spread(GoalCase in, Contender contender, Measure measure) {
    return Spread.of(trays, in, contender, measure);
  }

  /** Whether the worst tray under our regulator meets the goal; true where there is none. */
  boolean met(GoalCase in, Measure measure) {
    OptionalDouble goal = in.goal(measure);
    return goal.isEmpty() || spread(in, Contender.OURS, measure).worst() <= goal.getAsDouble();
  }

  /** Trays under our regulator that miss the goal. */
  long missing(GoalCase in, Measure measure) {
    double goal = in.goal(measure).orElse(Double.POSITIVE_INFINITY);
    return trays.stream().filter(t -> !(t.figure(in, Contender.OURS, measure) <= goal)).count();
  }

  /** A goal and how many it has been missed by. */
  record Missed(GoalCase in, Measure measure, long trays) {}

  /** Every goal missed. */
  List<Missed> missed() {
    List<Missed> missed = new ArrayList<>();
    for (GoalCase in : GoalCase.values()) {
      for (Measure measure : in.measures()) {
        if (!met(in, measure)) {
          missed.add(new Missed(in, measure, missing(in, measure)));
        }
      }
    }
    return missed;
  }

  /** How many goals there are. */
  static long goals() {
    long count = 0;
    for (GoalCase in : GoalCase.values()) {
      count += in.measures().stream().filter(m -> in.goal(m).isPresent()).count();
    }
    return count;
  }

  /** Seeds of the trays that are worst in something a case measures of the bath. */
  List<Long> worstSeeds(GoalCase in) {
    TreeSet<Long> seeds = new TreeSet<>();
    for (Measure measure : in.measures()) {
      if (measure.ofTheBath()) {
        seeds.add(spread(in, Contender.OURS, measure).worstSeed());
      }
    }
    return List.copyOf(seeds);
  }
}
