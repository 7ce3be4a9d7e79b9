package trayward.controller.regulate;

import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.hipparchus.complex.Complex;
import org.hipparchus.util.FastMath;

/**
 * A transfer function of real zeros and poles with a delay:
 *
 * <pre>
 *   G(s) = k (1 + Z1 s)(1 + Z2 s)... exp(-theta s) / (s^n (1 + T1 s)(1 + T2 s)...)
 * </pre>
 *
 * <p>Immutable; safe on any thread.
 *
 * @param gain k, above 0: more heat, more temperature
 * @param zerosS time constants Z of the zeros, s; negative for a zero in the right half-plane,
 *     which makes the answer start the wrong way
 * @param lagsS time constants T of the poles, s, above 0
 * @param delayS theta, s, not negative
 * @param integrators n, not negative
 */
public record TransferFunction(
    double gain, List<Double> zerosS, List<Double> lagsS, double delayS, int integrators)
    implements FrequencyResponse {

  /** Refuses what is not a transfer function of this form: that would be a mistake in code. */
  public TransferFunction {
    zerosS = List.copyOf(zerosS);
    lagsS = List.copyOf(lagsS);
    boolean lagsGood = lagsS.stream().allMatch(t -> t > 0 && Double.isFinite(t));
    boolean zerosGood = zerosS.stream().allMatch(Double::isFinite);
    boolean gainGood = gain > 0 && Double.isFinite(gain);
    boolean delayGood = delayS >= 0 && Double.isFinite(delayS);
    if (!lagsGood || !zerosGood || !gainGood || !delayGood || integrators < 0) {
      throw new IllegalArgumentException(
          "not a transfer function: gain %s zeros %s lags %s delay %s integrators %d"
              .formatted(gain, zerosS, lagsS, delayS, integrators));
    }
  }

  /** k exp(-theta s) / ((1 + T1 s)(1 + T2 s)...). */
  public static TransferFunction lags(double gain, double delayS, double... lagsS) {
    return new TransferFunction(gain, List.of(), boxed(lagsS), delayS, 0);
  }

  /** The same with {@code more} integrators. */
  public TransferFunction integrating(int more) {
    return new TransferFunction(gain, zerosS, lagsS, delayS, integrators + more);
  }

  /** The same with further zeros, s; negative ones lie in the right half-plane. */
  public TransferFunction withZeros(double... moreS) {
    List<Double> all = Stream.concat(zerosS.stream(), boxed(moreS).stream()).toList();
    return new TransferFunction(gain, all, lagsS, delayS, integrators);
  }

  /** A PID in cascade form without a filter: Kc (1 + tauI s)(1 + tauD s) / (tauI s). */
  public static TransferFunction controller(Simc.Series series) {
    return new TransferFunction(
        series.gain() / series.integralS(),
        List.of(series.integralS(), series.derivativeS()),
        List.of(),
        0,
        1);
  }

  @Override
  public Complex at(double radPerS) {
    double size = sizeAt(radPerS);
    double phase = phaseRad(radPerS);
    return new Complex(size * FastMath.cos(phase), size * FastMath.sin(phase));
  }

  /** The modulus of the gain at {@code radPerS}. */
  public double sizeAt(double radPerS) {
    double size = gain / FastMath.pow(radPerS, integrators);
    for (double zero : zerosS) {
      size *= FastMath.hypot(1, radPerS * zero);
    }
    for (double lag : lagsS) {
      size /= FastMath.hypot(1, radPerS * lag);
    }
    return size;
  }

  /** The phase at {@code radPerS}, rad, as it adds up: not folded into one turn. */
  public double phaseRad(double radPerS) {
    double phase = -radPerS * delayS - integrators * FastMath.PI / 2;
    for (double zero : zerosS) {
      phase += FastMath.atan(radPerS * zero);
    }
    for (double lag : lagsS) {
      phase -= FastMath.atan(radPerS * lag);
    }
    return phase;
  }

  /** The longest time in it, s; 0 where it has none. */
  double slowestS() {
    return timesS().max().orElse(0);
  }

  /** The shortest time in it, s; 0 where it has none. */
  double fastestS() {
    return timesS().min().orElse(0);
  }

  private DoubleStream timesS() {
    DoubleStream zeros = zerosS.stream().mapToDouble(Math::abs);
    DoubleStream lags = lagsS.stream().mapToDouble(t -> t);
    return DoubleStream.concat(DoubleStream.of(delayS), DoubleStream.concat(zeros, lags))
        .filter(t -> t > 0);
  }

  private static List<Double> boxed(double... values) {
    return Arrays.stream(values).boxed().toList();
  }
}
