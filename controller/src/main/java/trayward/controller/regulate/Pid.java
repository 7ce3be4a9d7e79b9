package trayward.controller.regulate;

/**
 * State of an ISA-form PID between two samples, as a value. Pure.
 *
 * <p>The recurrence is the textbook one of Åström and Hägglund (derivative on the measurement by
 * backward differences, set-point weight b, back-calculation):
 *
 * <pre>
 *   P = K (b r - y)
 *   D = Td/(Td + N h) D' - K Td N/(Td + N h) (y - y')
 *   v = P + I + D,  u = v held to its limits
 *   I'' = I + K h/Ti (r - y) + h/Tt (u - v)
 * </pre>
 *
 * @param integral I, to be used at the next sample, duty
 * @param derivative D of the last sample, duty
 * @param measuredC y of the last sample, °C; NaN before the first
 */
public record Pid(double integral, double derivative, double measuredC) {

  /** A controller that has seen nothing, with its integral part at {@code integral}. */
  public static Pid start(double integral) {
    return new Pid(integral, 0, Double.NaN);
  }

  /**
   * What one sample gave.
   *
   * @param wanted v, before the limits
   * @param given u, within the limits
   * @param next the state for the next sample
   */
  public record Step(double wanted, double given, Pid next) {}

  /**
   * One sample.
   *
   * @param gains the settings
   * @param setC r, °C
   * @param yC y, °C, finite
   * @param hS time since the last sample, s, above 0
   * @param low lower limit of the output
   * @param high upper limit of the output
   */
  public Step step(PidGains gains, double setC, double yC, double hS, double low, double high) {
    double span = gains.derivativeS() + gains.filter() * hS;
    double before = Double.isNaN(measuredC) ? yC : measuredC;
    double d =
        gains.derivativeS() == 0
            ? 0
            : gains.derivativeS() / span * derivative
                - gains.gain() * gains.derivativeS() * gains.filter() / span * (yC - before);
    double v = gains.gain() * (gains.weight() * setC - yC) + integral + d;
    double u = Math.max(low, Math.min(high, v));
    double i =
        integral
            + gains.gain() * hS / gains.integralS() * (setC - yC)
            + hS / gains.trackingS() * (u - v);
    return new Step(v, u, new Pid(i, d, yC));
  }

  /**
   * The same state under new settings or a new set temperature without a jump of the output: the
   * integral part takes up the change of the proportional part.
   */
  public Pid carriedOver(PidGains from, double fromSetC, PidGains to, double toSetC) {
    if (Double.isNaN(measuredC)) {
      return this;
    }
    double before = from.gain() * (from.weight() * fromSetC - measuredC);
    double after = to.gain() * (to.weight() * toSetC - measuredC);
    return new Pid(integral + before - after, derivative, measuredC);
  }
}
