package trayward.controller.regulate;

import java.util.Arrays;
import java.util.function.DoublePredicate;
import org.hipparchus.complex.Complex;
import org.hipparchus.util.FastMath;

/**
 * How much error of its plant a loop stands. Åström and Hägglund: Ms from 1.4 (calm) to 2 (lively)
 * is common practice. Immutable; safe on any thread.
 *
 * @param stable whether the closed loop is stable; where it is not, Ms and Mt mean nothing, the
 *     gain margin tells by what the gain must be multiplied, and there is no delay margin
 * @param ms Ms, the largest of |1/(1 + L)|
 * @param mt Mt, the largest of |L/(1 + L)|
 * @param gainMargin times the loop's gain may grow; infinite where the phase never passes -180
 *     degrees
 * @param phaseMarginRad the least phase margin, rad; infinite where the loop's gain never is 1
 * @param crossoverRadPerS where that is, rad/s; NaN where there is none
 * @param delayMarginS delay that may be added, s; infinite where there is no crossover
 */
public record LoopRobustness(
    boolean stable,
    double ms,
    double mt,
    double gainMargin,
    double phaseMarginRad,
    double crossoverRadPerS,
    double delayMarginS) {

  /** At the top of the band a loop's gain must be below this, or its end has not been seen. */
  private static final double ROLLED_OFF = 0.5;

  /**
   * Looks at {@code loop} over a band of frequencies that reaches from where it only integrates to
   * where its gain is well below 1. The loop itself, opened, has a positive gain, no unstable pole
   * and at most two integrators. A loop whose gain has not fallen at the top of the band is not
   * called stable.
   *
   * @param loop plant and controller in series
   * @param lowRadPerS bottom of the band, rad/s
   * @param highRadPerS top of the band, rad/s
   */
  public static LoopRobustness of(FrequencyResponse loop, double lowRadPerS, double highRadPerS) {
    FrequencySweep sweep = new FrequencySweep(lowRadPerS, highRadPerS);
    boolean stable = encirclesNothing(loop, sweep) && loop.at(highRadPerS).norm() < ROLLED_OFF;
    double[] unity = sweep.crossings(w -> loop.at(w).norm() - 1);
    double crossover = Double.NaN;
    double phaseMargin = Double.POSITIVE_INFINITY;
    double delayMargin = Double.POSITIVE_INFINITY;
    for (double w : unity) {
      double margin = phaseMarginAt(loop, w);
      if (margin < phaseMargin) {
        phaseMargin = margin;
        crossover = w;
      }
      double turn = margin < 0 ? margin + 2 * FastMath.PI : margin;
      delayMargin = Math.min(delayMargin, turn / w);
    }
    return new LoopRobustness(
        stable,
        sweep.peak(w -> 1 / loop.at(w).add(1).norm()),
        sweep.peak(w -> loop.at(w).norm() / loop.at(w).add(1).norm()),
        gainMargin(loop, sweep, stable),
        phaseMargin,
        crossover,
        stable ? delayMargin : 0);
  }

  /** The least phase margin, degrees. */
  public double phaseMarginDeg() {
    return FastMath.toDegrees(phaseMarginRad);
  }

  /** Nyquist: seen from -1 the loop, open and stable, ends in the direction of the origin. */
  private static boolean encirclesNothing(FrequencyResponse loop, FrequencySweep sweep) {
    double[] points = sweep.points();
    Complex before = loop.at(points[0]).add(1);
    // Two integrators and a lag begin beyond -180 degrees, not short of +180.
    double start = before.getArgument();
    double turned = start > FastMath.PI / 2 ? start - 2 * FastMath.PI : start;
    for (double w : points) {
      Complex now = loop.at(w).add(1);
      turned += now.divide(before).getArgument();
      before = now;
    }
    return FastMath.abs(turned) < FastMath.PI / 2;
  }

  /** Angle from -180 degrees to the loop at a gain of 1, rad, -pi to pi. */
  private static double phaseMarginAt(FrequencyResponse loop, double w) {
    double margin = loop.at(w).getArgument() + FastMath.PI;
    return margin > FastMath.PI ? margin - 2 * FastMath.PI : margin;
  }

  private static double gainMargin(FrequencyResponse loop, FrequencySweep sweep, boolean stable) {
    DoublePredicate counts = size -> !stable || size < 1;
    return Arrays.stream(sweep.crossings(w -> loop.at(w).getImaginary()))
        .mapToObj(loop::at)
        .filter(l -> l.getReal() < 0)
        .mapToDouble(Complex::norm)
        .filter(counts)
        .map(size -> 1 / size)
        .min()
        .orElse(Double.POSITIVE_INFINITY);
  }
}
