package trayward.controller.safety;

import trayward.controller.quantity.Ages;

/**
 * What a run remembers between scans. A value.
 *
 * @param heated a permit has been given since the last after-run ended
 * @param arrived the bath has been within 1 K of this set temperature
 * @param setC the set temperature that is meant, °C
 * @param coolMs how long the bath has been known to be cool, ms
 * @param presenceMs age of the last sign of presence, ms
 * @param hostLost the required host was lost in this run
 */
public record RunMemory(
    boolean heated, boolean arrived, double setC, int coolMs, int presenceMs, boolean hostLost) {

  /** Nothing run yet. */
  static RunMemory start(boolean heated) {
    return new RunMemory(heated, false, Double.NaN, 0, 0, false);
  }

  RunMemory next(InterlockInputs in, State state, double bathC, boolean known, Limits limits) {
    boolean sameSet = in.setC() == setC;
    boolean near = known && Math.abs(bathC - in.setC()) <= limits.get(Limit.ARRIVED_K);
    boolean here = state != State.OFF; // in AFTER_RUN a welded relay would show by it
    boolean sign =
        in.asks(Request.PRESENCE)
            || in.asks(Request.START)
            || in.asks(Request.ACKNOWLEDGE)
            || in.asks(Request.RESET);
    return new RunMemory(
        heated,
        here && (near || (sameSet && arrived)),
        in.setC(),
        Ages.whileTrue(known && bathC < limits.get(Limit.WARM_C), coolMs, in.elapsedMs()),
        sign ? 0 : Ages.older(presenceMs, in.elapsedMs()),
        state.inRun() && (hostLost || silent(in, limits)));
  }

  RunMemory heated(boolean now) {
    return now == heated ? this : new RunMemory(now, arrived, setC, coolMs, presenceMs, hostLost);
  }

  RunMemory warm() {
    return coolMs == 0 ? this : new RunMemory(heated, arrived, setC, 0, presenceMs, hostLost);
  }

  private static boolean silent(InterlockInputs in, Limits limits) {
    return in.hostSilentMs() >= limits.ms(Limit.HOST_LOST_S);
  }

  /** SR-13, SR-16: the host was lost and is back; reconnection never starts heat. */
  boolean hostReturned(InterlockInputs in, Limits limits) {
    return hostLost && !silent(in, limits);
  }
}
