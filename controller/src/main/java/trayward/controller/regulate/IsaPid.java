package trayward.controller.regulate;

import org.hipparchus.complex.Complex;

/**
 * A PID in ISA form as a continuous system, from control error to duty:
 *
 * <pre>
 *   C(s) = K (1 + 1/(Ti s) + Td s / (1 + Td s / N))
 * </pre>
 *
 * <p>Derivative on the measurement instead, and a set-point weight, change what a new set
 * temperature does, not the loop. Source: Åström and Hägglund, the form of {@link Pid}. Immutable;
 * safe on any thread.
 *
 * @param gain K, duty per K
 * @param integralS Ti, s; infinite for no integral part
 * @param derivativeS Td, s; 0 for no derivative part
 * @param filter N: the derivative's filter has the time constant Td/N; infinite for no filter
 */
public record IsaPid(double gain, double integralS, double derivativeS, double filter)
    implements FrequencyResponse {

  /** A proportional controller. */
  public static IsaPid p(double gain) {
    return pi(gain, Double.POSITIVE_INFINITY);
  }

  /** A controller without a derivative part. */
  public static IsaPid pi(double gain, double integralS) {
    return pid(gain, integralS, 0);
  }

  /** A controller whose derivative is not filtered: what tuning rules speak of. */
  public static IsaPid pid(double gain, double integralS, double derivativeS) {
    return new IsaPid(gain, integralS, derivativeS, Double.POSITIVE_INFINITY);
  }

  /** The controller of a cascade-form tuning, unfiltered. */
  public static IsaPid of(Simc.Series series) {
    Simc.Series ideal = series.ideal();
    return pid(ideal.gain(), ideal.integralS(), ideal.derivativeS());
  }

  /** The same with the derivative filtered at Td/N. */
  public IsaPid filtered(double n) {
    return new IsaPid(gain, integralS, derivativeS, n);
  }

  @Override
  public Complex at(double radPerS) {
    Complex s = new Complex(0, radPerS);
    Complex derivative = s.multiply(derivativeS).divide(s.multiply(derivativeS / filter).add(1));
    return derivative.add(new Complex(1, -1 / (integralS * radPerS))).multiply(gain);
  }
}
