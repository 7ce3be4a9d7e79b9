package trayward.controller.safety;

import trayward.controller.event.TripCause;
import trayward.controller.keep.KeepLoad;
import trayward.controller.keep.KeepRecord;

/**
 * The interlock between two scans. A value; every age in it saturates.
 *
 * @param state where it stands
 * @param stateMs how long it has stood there, ms
 * @param fan the fan's command and the look of SR-03
 * @param air proof of moving air through time
 * @param probes badness of the probes through time
 * @param run what a run remembers
 * @param latch what has tripped
 * @param hold the stop button held in lockout
 * @param warnings the life cycles of all warnings
 * @param looking the fan is held off in lockout to see whether a stuck proof has let go
 */
public record InterlockState(
    State state,
    int stateMs,
    FanWatch fan,
    AirWatch air,
    ProbeWatch probes,
    RunMemory run,
    Latch latch,
    StopHold hold,
    WarningWatch warnings,
    boolean looking) {

  /** SR-12, SR-13: power-up is OFF, or LOCKOUT where the record says so or cannot be read. */
  public static InterlockState powerUp(KeepLoad load) {
    if (load instanceof KeepLoad.Loaded loaded) {
      return powerUp(Latch.of(loaded.record()), loaded.record().heatInProgress());
    }
    return powerUp(Latch.OPEN.with(java.util.Set.of(TripCause.STORE_FAILED)), true);
  }

  private static InterlockState powerUp(Latch latch, boolean heated) {
    return new InterlockState(
        latch.holds() ? State.LOCKOUT : State.OFF,
        0,
        FanWatch.POWER_UP,
        AirWatch.START,
        ProbeWatch.START,
        RunMemory.start(heated),
        latch,
        StopHold.RELEASED,
        WarningWatch.START,
        false);
  }

  /** What of this must survive power loss. */
  public KeepRecord keep() {
    return new KeepRecord(latch.causes(), latch.firstOut(), latch.acknowledged(), run.heated());
  }
}
