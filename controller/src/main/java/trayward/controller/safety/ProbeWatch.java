package trayward.controller.safety;

import trayward.controller.quantity.Ages;

/**
 * How long each probe has been bad, and the two bath probes apart (SR-08, SR-09). A value.
 *
 * @param bathBadMs time the bath probe has been bad, ms
 * @param secondBadMs the same of the second bath probe
 * @param plateBadMs the same of the plate probe
 * @param apartMs time the two bath probes have disagreed, ms; waits while either reads nothing
 */
public record ProbeWatch(int bathBadMs, int secondBadMs, int plateBadMs, int apartMs) {

  /** All well. */
  static final ProbeWatch START = new ProbeWatch(0, 0, 0, 0);

  /** After this scan's readings. */
  ProbeWatch next(InterlockInputs in, Limits limits) {
    int dt = in.elapsedMs();
    boolean both = in.bath().valid() && in.secondBath().valid();
    boolean apart =
        Math.abs(in.bath().celsius() - in.secondBath().celsius()) > limits.get(Limit.DISAGREE_K);
    return new ProbeWatch(
        Ages.whileTrue(bad(in.bath()), bathBadMs, dt),
        Ages.whileTrue(bad(in.secondBath()), secondBadMs, dt),
        Ages.whileTrue(bad(in.plate()), plateBadMs, dt),
        both ? Ages.whileTrue(apart, apartMs, dt) : apartMs);
  }

  private static boolean bad(Temperature probe) {
    return probe.fitted() && !probe.valid();
  }
}
