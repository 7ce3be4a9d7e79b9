package trayward.controller.regulate;

/**
 * Turns a duty into relay pulses: at most one pulse a cycle, no pulse or pause shorter than the
 * relay likes, and what was asked for but not given is carried on. A value; {@link #next} returns
 * the following one. Pure.
 *
 * @param on whether the relay is wanted closed until the next step
 * @param ended whether this cycle's pulse is over: one closure a cycle spares the contact
 * @param phaseS time into the cycle, s
 * @param sinceS how long the present pulse or pause has lasted, s
 * @param owedS on-time asked for and not yet given, s; negative where too much was given
 */
public record TimeProportioner(
    boolean on, boolean ended, double phaseS, double sinceS, double owedS) {

  /** At rest; the first step begins a cycle. */
  public static final TimeProportioner START =
      new TimeProportioner(false, false, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, 0);

  /** Half of a 0.1 s scan: the nearest scan ends a pulse, and the rest is carried. */
  private static final double HALF_SCAN_S = 0.05;

  /**
   * The state for the time from now to the next call.
   *
   * @param duty 0 to 1
   * @param elapsedS time since the last call, s
   * @param cycleS length of a cycle, s
   * @param minPulseS shortest pulse or pause, s
   */
  public TimeProportioner next(double duty, double elapsedS, double cycleS, double minPulseS) {
    double phase = phaseS + elapsedS;
    boolean begins = phase > cycleS - HALF_SCAN_S;
    // The debt is bounded by a cycle either way: a longer one would be paid long after its day.
    double owed = owedS + (duty - (on ? 1 : 0)) * (Double.isInfinite(phaseS) ? 0 : elapsedS);
    owed = Math.max(-cycleS, Math.min(cycleS, owed));
    double since = sinceS + elapsedS;
    boolean tooShort = since < minPulseS - HALF_SCAN_S;
    double phaseNow = begins ? 0 : phase;
    double rest = cycleS - phaseNow;
    double need = owed + duty * rest;
    boolean nowOn;
    if (on) {
      nowOn = tooShort || need >= (begins ? minPulseS : HALF_SCAN_S);
    } else {
      boolean mayBegin = begins || (!ended && rest >= minPulseS);
      nowOn = !tooShort && mayBegin && need >= minPulseS;
    }
    boolean over = !begins && (ended || (on && !nowOn));
    return new TimeProportioner(nowOn, over, phaseNow, nowOn == on ? since : 0, owed);
  }
}
