package trayward.host.app.goals;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/** What is known and done, and the goals for it: none of the trays may do worse. */
enum GoalCase {
  TWO_PROBES(1, "two probes, unknown tray", 1.05, 0.15, 1.10, 1.25, 0.05, 0.03),
  TRAY_WALL(2, "two probes, a wall the model lacks", 1.05, 0.15, 1.15, 1.30, 0.05, 0.03),
  LEARNED(3, "two probes, learned tray", 1.02, 0.10, 1.07, 1.20, 0.04, 0.01),
  ONE_PROBE(4, "one probe, unknown tray", 1.08, 0.15, 1.30, 1.30, 0.10, 0.03),
  /** Its overshoot alone: {@link #COVERED_K}. */
  COVERED(5, "covered, uncovered, covered again"),
  /** For the wear of a contact; no goals of its own. */
  SLOW_RELAY(6, "two probes, relay cycle of 10 s");

  /** Goal of the overshoot of a covered bath, K. */
  private static final double COVERED_K = 0.25;

  private static final List<Measure> OF_A_POUR =
      List.of(
          Measure.HEAT_UP,
          Measure.OVERSHOOT,
          Measure.POUR,
          Measure.SHEET,
          Measure.RIPPLE,
          Measure.STANDING_ERROR,
          Measure.RELAY,
          Measure.LOOKS,
          Measure.TRIPS);

  private static final List<Measure> OF_A_COVER =
      List.of(Measure.COVERED, Measure.COVERED_BOUND, Measure.LOOKS, Measure.TRIPS);

  private final int number;
  private final String words;
  private final double heatUp;
  private final double overshootK;
  private final double pour;
  private final double sheet;
  private final double rippleK;
  private final double standingK;

  GoalCase(int number, String words) {
    this(number, words, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN);
  }

  GoalCase(
      int number,
      String words,
      double heatUp,
      double overshootK,
      double pour,
      double sheet,
      double rippleK,
      double standingK) {
    this.number = number;
    this.words = words;
    this.heatUp = heatUp;
    this.overshootK = overshootK;
    this.pour = pour;
    this.sheet = sheet;
    this.rippleK = rippleK;
    this.standingK = standingK;
  }

  /** Tells it from the others where a number is needed; never changed, or its noise would be. */
  int number() {
    return number;
  }

  String words() {
    return words;
  }

  /** For a key of JSON and a file name. */
  String key() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The most that counts as reached; empty where nothing is asked. */
  OptionalDouble goal(Measure measure) {
    double goal =
        switch (measure) {
          case HEAT_UP -> heatUp;
          case OVERSHOOT -> overshootK;
          case POUR -> pour;
          case SHEET -> sheet;
          case RIPPLE -> rippleK;
          case STANDING_ERROR -> standingK;
          case COVERED -> covers() ? COVERED_K : Double.NaN;
          case COVERED_BOUND, RELAY, LOOKS -> Double.NaN;
          case TRIPS -> 0;
        };
    return Double.isNaN(goal) ? OptionalDouble.empty() : OptionalDouble.of(goal);
  }

  /** What is measured in it, in order of the table. */
  List<Measure> measures() {
    return covers() ? OF_A_COVER : OF_A_POUR;
  }

  boolean covers() {
    return this == COVERED;
  }

  boolean plateFitted() {
    return this != ONE_PROBE;
  }

  /** Heat capacity of the tray's wall, J/K. */
  double wallJPerK() {
    return this == TRAY_WALL ? 400 : 0;
  }

  /** Cycle of the heater relay, s: a contact lives longer with 10 s. */
  double cycleS() {
    return this == SLOW_RELAY ? 10 : 5;
  }

  /** The case in which the others met the same trays: what we know does not concern them. */
  GoalCase othersIn() {
    return this == LEARNED || this == SLOW_RELAY ? TWO_PROBES : this;
  }
}
