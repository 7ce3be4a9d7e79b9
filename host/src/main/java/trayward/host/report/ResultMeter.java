package trayward.host.report;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * Measures a rehearsal as it passes: heat-up, overshoot, ripple, recoveries. Everything is measured
 * on the true bath. One thread.
 */
public final class ResultMeter {

  /** Half-width of the band in which the bath counts as arrived, K. */
  static final double BAND_K = 0.2;

  /** Length of the last part on which ripple and standing error are measured, s. */
  static final double TAIL_S = 600;

  /** Rows are counted in tenths of a second; a slack far below one. */
  private static final double SLACK_S = 1e-6;

  private final double endS;
  private final List<Course> courses = new ArrayList<>();
  private @Nullable Course current;
  private boolean heating;
  private boolean coolingToLowerSet;
  private double overshootK = Double.NEGATIVE_INFINITY;
  private double tailMin = Double.POSITIVE_INFINITY;
  private double tailMax = Double.NEGATIVE_INFINITY;
  private double tailErrorSum;
  private long tailRows;
  private double maxBathC = Double.NEGATIVE_INFINITY;
  private double maxPlateC = Double.NEGATIVE_INFINITY;

  /** A meter for a rehearsal that ends at {@code endS}. */
  public ResultMeter(double endS) {
    this.endS = endS;
  }

  /** A new course begins before the row of this time is told. */
  public void turn(Turn turn) {
    if (turn.word().equals("heat")) {
      heating = true;
    }
    coolingToLowerSet |= turn.setLowered();
    Course course = new Course(turn);
    current = course;
    courses.add(course);
  }

  /** A row of the trace. */
  public void row(TraceRow row) {
    double error = row.bathTrueC() - row.setC();
    maxBathC = Math.max(maxBathC, row.bathTrueC());
    maxPlateC = Math.max(maxPlateC, row.plateTrueC());
    if (coolingToLowerSet && error <= BAND_K) {
      coolingToLowerSet = false;
    }
    if (heating && !coolingToLowerSet) {
      overshootK = Math.max(overshootK, error);
    }
    if (current != null) {
      current.row(row.tS(), error, coolingToLowerSet);
    }
    if (row.tS() >= endS - TAIL_S - SLACK_S) {
      tailMin = Math.min(tailMin, row.bathTrueC());
      tailMax = Math.max(tailMax, row.bathTrueC());
      tailErrorSum += error;
      tailRows++;
    }
  }

  /** Time from the first permitted heat to the band; empty where it never stays there, s. */
  public OptionalDouble heatUpS() {
    return heat().map(Course::settleS).orElseGet(OptionalDouble::empty);
  }

  /** The time-optimal way for the same, s. */
  public OptionalDouble timeOptimalS() {
    return heat().map(c -> c.turn.boundS()).orElseGet(OptionalDouble::empty);
  }

  private java.util.Optional<Course> heat() {
    return courses.stream().filter(c -> c.turn.word().equals("heat")).findFirst();
  }

  /** Highest true bath above set since heat was first permitted, K; empty without heat. */
  public OptionalDouble overshootK() {
    return heating && overshootK > Double.NEGATIVE_INFINITY
        ? OptionalDouble.of(Math.max(0, overshootK))
        : OptionalDouble.empty();
  }

  /** Peak to peak of the true bath over the last part, K. */
  public double ripplePpK() {
    return tailMax - tailMin;
  }

  /** Mean of true bath less set over the last part, K. */
  public double standingErrorK() {
    return tailErrorSum / tailRows;
  }

  /** Highest true bath, °C. */
  public double maxBathC() {
    return maxBathC;
  }

  /** Highest true plate, °C. */
  public double maxPlateC() {
    return maxPlateC;
  }

  /** Every recovery, in order of time. */
  public List<Recovery> recoveries() {
    return courses.stream()
        .filter(c -> c.turn.recovers())
        .map(
            c ->
                new Recovery(
                    c.turn.tS(), c.turn.word(), c.settleS(), c.turn.boundS(), c.overshootK()))
        .toList();
  }

  /**
   * How the bath came back after a disturbance.
   *
   * @param tS when it was disturbed, s
   * @param word by what
   * @param settleS time until it entered the band to stay, s
   * @param boundS the time-optimal way, s
   * @param overshootK highest above set, K
   */
  public record Recovery(
      double tS,
      String word,
      OptionalDouble settleS,
      OptionalDouble boundS,
      OptionalDouble overshootK) {}

  /** One course: from a turn to the next. */
  private static final class Course {
    private final Turn turn;
    private double enteredS = Double.NaN;
    private double overshoot = Double.NEGATIVE_INFINITY;

    Course(Turn turn) {
      this.turn = turn;
    }

    void row(double tS, double error, boolean cooling) {
      if (Math.abs(error) > BAND_K) {
        enteredS = Double.NaN;
      } else if (Double.isNaN(enteredS)) {
        enteredS = tS;
      }
      if (!cooling) {
        overshoot = Math.max(overshoot, error);
      }
    }

    OptionalDouble settleS() {
      return Double.isNaN(enteredS)
          ? OptionalDouble.empty()
          : OptionalDouble.of(enteredS - turn.tS());
    }

    OptionalDouble overshootK() {
      return overshoot > Double.NEGATIVE_INFINITY
          ? OptionalDouble.of(Math.max(0, overshoot))
          : OptionalDouble.empty();
    }
  }
}
