package trayward.controller.safety;

import java.util.List;
import java.util.Map;
import java.util.Set;
import trayward.controller.event.Alarm;
import trayward.controller.event.TripCause;

/**
 * What one scan of the interlock decided. Immutable.
 *
 * @param next the state to hand in at the next scan
 * @param permission a permit for this scan, or why there is none
 * @param fan command to the fan
 * @param safetyRelay command to the second relay
 * @param buzzer an alarm calls; the scan gives buzzer and lamp its rhythm
 * @param tripped causes newly latched in this scan
 * @param alarms every latched alarm with its life-cycle state, first-out first
 * @param refused requests refused in this scan, with the reason; whatever was asked and is not here
 *     was carried out
 */
public record Verdict(
    InterlockState next,
    Permission permission,
    boolean fan,
    boolean safetyRelay,
    boolean buzzer,
    Set<TripCause> tripped,
    List<Alarm> alarms,
    Map<Request, Refusal> refused) {

  /** Whether heat is permitted. */
  public boolean permitted() {
    return permission instanceof HeaterPermit;
  }
}
