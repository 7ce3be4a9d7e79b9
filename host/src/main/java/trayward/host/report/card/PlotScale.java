package trayward.host.report.card;

import java.util.ArrayList;
import java.util.List;
import trayward.host.session.TraceSample;

/**
 * Where a moment and a temperature lie in a plot, and its lines of a round number. Immutable.
 *
 * @param fromS left end, session seconds
 * @param toS right end, session seconds, beyond the left
 * @param lowC lower end, °C
 * @param highC upper end, °C
 */
record PlotScale(double fromS, double toS, double lowC, double highC) {

  /** A plot of less would show a probe's steps as if they were waves, K. */
  private static final double LEAST_K = 2;

  /** More lines than this would be a grid and no help. */
  private static final int LINES_MAX = 8;

  private static final double[] STEPS_K = {0.5, 1, 2, 5, 10, 20};
  private static final double[] STEPS_S = {30, 60, 120, 300, 600, 1800, 3600, 7200, 21_600};

  /** One that holds every valid sample and set temperature. */
  static PlotScale of(List<TraceSample> samples, double fromS, double toS) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (TraceSample sample : samples) {
      for (double c : new double[] {sample.bathC(), sample.setC()}) {
        if (!Double.isNaN(c)) {
          low = Math.min(low, c);
          high = Math.max(high, c);
        }
      }
    }
    if (!(low <= high)) {
      low = 19;
      high = 21;
    }
    double more = Math.max(0.1 * (high - low), (LEAST_K - (high - low)) / 2);
    return new PlotScale(fromS, Math.max(toS, fromS + 1), low - more, high + more);
  }

  /** Share of the width from the left, 0 to 1. */
  double x(double sessionS) {
    return Math.max(0, Math.min(1, (sessionS - fromS) / (toS - fromS)));
  }

  /** Share of the height from below, 0 to 1. */
  double y(double celsius) {
    return Math.max(0, Math.min(1, (celsius - lowC) / (highC - lowC)));
  }

  /** Temperatures that get a line, °C. */
  List<Double> linesC() {
    return lines(lowC, highC, 0, STEPS_K);
  }

  /** Moments that get a line, counted from another one. */
  List<Double> linesS(double zeroS) {
    return lines(fromS, toS, zeroS, STEPS_S);
  }

  private static List<Double> lines(double from, double to, double zero, double[] steps) {
    double step = steps[steps.length - 1];
    for (int i = steps.length - 1; i >= 0 && (to - from) / steps[i] <= LINES_MAX; i--) {
      step = steps[i];
    }
    List<Double> lines = new ArrayList<>();
    double first = zero + step * Math.ceil((from - zero) / step);
    for (int i = 0; i <= 2 * LINES_MAX && first + i * step <= to; i++) {
      lines.add(first + i * step);
    }
    return lines;
  }
}
