package trayward.controller.safety;

import trayward.controller.event.TripCause;

/** When the fan is commanded on (SR-03, SR-05, SR-20, SR-21). Pure. */
final class FanRule {

  private FanRule() {}

  static boolean commands(Seen seen, State state, Latch latch, RunMemory run, boolean looking) {
    return switch (state) {
      case OFF -> (seen.warmOrUnknown() || run.heated()) && seen.fan().looked(seen.lookMs());
      case PROVING ->
          seen.fan().commanded() || (seen.fan().looked(seen.lookMs()) && seen.fan().clear());
      case PURGING, READY, HEATING, HOLDING, AFTER_RUN -> true;
      case LOCKOUT ->
          !seen.hold().fanStopped()
              && !looking
              && seen.fan().looked(seen.lookMs())
              && wantedInLockout(seen, latch, run);
    };
  }

  private static boolean wantedInLockout(Seen seen, Latch latch, RunMemory run) {
    boolean airLost = latch.causes().contains(TripCause.AIR_LOST) && !latch.acknowledged();
    return seen.warmOrUnknown() || run.heated() || airLost;
  }
}
