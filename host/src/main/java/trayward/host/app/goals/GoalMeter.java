package trayward.host.app.goals;

import java.util.OptionalDouble;
import trayward.host.report.ResultMeter;
import trayward.host.report.TraceRow;
import trayward.host.report.Turn;

/** Measures a session as it passes. Mutable; one thread. */
final class GoalMeter {

  /** Length of the part on which ripple is measured, s. */
  private static final double RIPPLE_S = 600;

  /** Rows are counted in tenths of a second; a slack far below one. */
  private static final double SLACK_S = 1e-6;

  private final Story story;
  private final ResultMeter courses;
  private boolean heating;
  private boolean contact;
  private double overshootK;
  private double coveredK;
  private double coveredBoundK;
  private double least = Double.POSITIVE_INFINITY;
  private double most = Double.NEGATIVE_INFINITY;
  private double hourSumK;
  private long hourRows;
  private long operations;
  private int looks;
  private int trips;

  GoalMeter(Story story) {
    this.story = story;
    this.courses = new ResultMeter(story.endS());
  }

  /** A new course begins before the row of this time is told. */
  void turn(Turn turn) {
    heating |= turn.word().equals("heat");
    courses.turn(turn);
  }

  /** With the heat off from here the bath would rise so far above set, K. */
  void coveredBound(double kelvin) {
    coveredBoundK = Math.max(coveredBoundK, kelvin);
  }

  /** The interlock began to look closer. */
  void look() {
    looks++;
  }

  /** Something tripped. */
  void trip() {
    trips++;
  }

  /**
   * A tenth of a second.
   *
   * @param tS plant time, s
   * @param bathC true bath, °C
   * @param setC set temperature, °C
   * @param closed the heater relay's contact
   */
  void row(double tS, double bathC, double setC, boolean closed) {
    courses.row(courseRow(tS, bathC, setC));
    double errorK = bathC - setC;
    boolean switched = closed != contact;
    contact = closed;
    if (tS >= story.firstS() - SLACK_S) {
      coveredK = Math.max(coveredK, errorK);
      return;
    }
    if (heating) {
      overshootK = Math.max(overshootK, errorK);
    }
    if (tS >= story.hourFromS() - SLACK_S) {
      hourSumK += errorK;
      hourRows++;
      operations += switched ? 1 : 0;
    }
    if (tS >= story.firstS() - RIPPLE_S - SLACK_S) {
      least = Math.min(least, bathC);
      most = Math.max(most, bathC);
    }
  }

  /** What of a row the course of the bath is measured on. */
  private static TraceRow courseRow(double tS, double bathC, double setC) {
    return new TraceRow(
        tS, bathC, bathC, bathC, 0, 0, setC, 0, false, false, false, false, 0, false, 0, 0, false,
        false, "", "", 0, 0, true);
  }

  /** The figures of a whole session. */
  Figures figures(GoalCase in) {
    return Figures.of(in, this::figure);
  }

  private double figure(Measure measure) {
    return switch (measure) {
      case HEAT_UP -> ratio(courses.heatUpS(), courses.timeOptimalS());
      case OVERSHOOT -> overshootK;
      case POUR -> recovery("pour");
      case SHEET -> recovery("sheet");
      case RIPPLE -> most - least;
      case STANDING_ERROR -> Math.abs(hourSumK / hourRows);
      case COVERED -> coveredK;
      case COVERED_BOUND -> coveredBoundK;
      case RELAY -> operations;
      case LOOKS -> looks;
      case TRIPS -> trips;
    };
  }

  private double recovery(String word) {
    return courses.recoveries().stream()
        .filter(r -> r.word().equals(word))
        .mapToDouble(r -> ratio(r.settleS(), r.boundS()))
        .max()
        .orElse(Double.POSITIVE_INFINITY);
  }

  /** A bound of nil was not disturbed enough to be measured: the ratio says 1 or never. */
  private static double ratio(OptionalDouble settleS, OptionalDouble boundS) {
    double bound = boundS.orElse(0);
    double settle = settleS.orElse(Double.POSITIVE_INFINITY);
    return bound > 0 ? settle / bound : settle <= 0 ? 1 : Double.POSITIVE_INFINITY;
  }
}
