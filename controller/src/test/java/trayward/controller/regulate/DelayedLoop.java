package trayward.controller.regulate;

/**
 * A PI controller around one lag, or an integrator, with a delay: stepped so finely that an
 * integral over the answer is good to some 1e-5. Each step takes the mean of the input over its own
 * length.
 */
final class DelayedLoop {

  /** What an answer is judged by. */
  record Answer(double iae, double totalVariation, double peak, double lastError) {}

  private final double gain;
  private final double lagS;
  private final double delayS;
  private final double kc;
  private final double tauI;

  /** {@code lagS} infinite: an integrator, k'/s. {@code tauI} infinite: no integral part. */
  DelayedLoop(double gain, double lagS, double delayS, double kc, double tauI) {
    this.gain = gain;
    this.lagS = lagS;
    this.delayS = delayS;
    this.kc = kc;
    this.tauI = tauI;
  }

  /** From rest, steps of set point and of load at the plant's input, each at time 0. */
  Answer step(double set, double load, int stepsInDelay, double untilS) {
    double h = delayS / stepsInDelay;
    double kept = Double.isInfinite(lagS) ? 1 : Math.exp(-h / lagS);
    double taken = Double.isInfinite(lagS) ? gain * h : gain * -Math.expm1(-h / lagS);
    double[] line = new double[stepsInDelay];
    double y = 0;
    double integral = 0;
    double u = kc * set;
    double iae = 0;
    double variation = Math.abs(u);
    double peak = 0;
    for (long i = 0; i * h < untilS; i++) {
      int place = (int) (i % stepsInDelay);
      double error = set - y;
      y = kept * y + taken * (line[place] + load);
      double next = set - y;
      integral += h * (error + next) / 2;
      double wanted = kc * (next + integral / tauI);
      line[place] = (u + wanted) / 2;
      variation += Math.abs(wanted - u);
      iae += h * (Math.abs(error) + Math.abs(next)) / 2;
      peak = Math.max(peak, y);
      u = wanted;
    }
    return new Answer(iae, variation, peak, set - y);
  }
}
