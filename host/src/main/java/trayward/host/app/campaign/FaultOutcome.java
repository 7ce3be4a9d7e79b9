package trayward.host.app.campaign;

import java.util.Optional;
import trayward.controller.event.TripCause;

/**
 * What became of one tried fault.
 *
 * @param kind which
 * @param state the state told in the row before it began
 * @param needed a trip is needed, and it mattered for at least its whole patience, or tripped
 * @param trip the first cause latched after it that it explains; empty for none
 * @param detectS from when it could first matter to that trip, s; NaN where neither
 * @param misnamed a lockout after it bore a name that nothing explains
 * @param preempted a lockout by the session's other fault came first
 */
record FaultOutcome(
    FaultKind kind,
    String state,
    boolean needed,
    Optional<TripCause> trip,
    double detectS,
    boolean misnamed,
    boolean preempted) {

  /** It mattered long enough, nothing else came first, and nothing tripped. */
  boolean missed() {
    return needed && trip.isEmpty() && !preempted && !misnamed;
  }
}
