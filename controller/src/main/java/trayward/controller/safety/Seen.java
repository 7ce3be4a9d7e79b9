package trayward.controller.safety;

/**
 * One scan's evidence, gathered before anything is decided: the inputs and every watch brought up
 * to date. Immutable.
 */
record Seen(
    Limits limits,
    int lookMs,
    InterlockInputs in,
    InterlockState before,
    int stateMs,
    FanWatch fan,
    AirWatch air,
    ProbeWatch probes,
    RunMemory run,
    StopHold hold) {

  State state() {
    return before.state();
  }

  double get(Limit limit) {
    return limits.get(limit);
  }

  int ms(Limit limit) {
    return limits.ms(limit);
  }

  /** SR-09: protection uses the higher of the two bath probes; NaN where none ever read. */
  double bathC() {
    return higher(in.bath(), in.secondBath());
  }

  /** Whether the bath temperature is known: read at least once, and bad no longer than allowed. */
  boolean bathKnown() {
    return known(in.bath(), probes.bathBadMs()) && secondKnown();
  }

  private boolean secondKnown() {
    return !in.secondBath().fitted() || known(in.secondBath(), probes.secondBadMs());
  }

  /** Whether the plate's temperature is known, or no plate probe is fitted. */
  boolean plateKnownOrBlind() {
    return !in.plate().fitted() || known(in.plate(), probes.plateBadMs());
  }

  boolean plateAtLeast(double celsius) {
    return in.plate().valid() && in.plate().celsius() >= celsius;
  }

  private boolean known(Temperature probe, int badMs) {
    return !Double.isNaN(probe.celsius()) && badMs < ms(Limit.BAD_PROBE_S);
  }

  static double higher(Temperature one, Temperature two) {
    if (Double.isNaN(two.celsius()) || !two.fitted()) {
      return one.celsius();
    }
    return Double.isNaN(one.celsius()) ? two.celsius() : Math.max(one.celsius(), two.celsius());
  }

  /** SR-27: the bath as last read is above the warm limit; with a dead band once {@code on}. */
  boolean warmerThanWarm(boolean on) {
    return bathC() > get(Limit.WARM_C) - (on ? 0.5 : 0);
  }

  /**
   * SR-21: the bath is above the warm limit, or nobody knows. Half a kelvin of dead band keeps the
   * fan from starting and stopping around the limit.
   */
  boolean warmOrUnknown() {
    double warm = get(Limit.WARM_C);
    return !bathKnown() || bathC() > (fan.commanded() ? warm - 0.5 : warm);
  }
}
