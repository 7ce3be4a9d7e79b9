package trayward.controller.safety;

import java.util.EnumSet;
import java.util.Set;
import trayward.controller.event.TripCause;

/** Which causes are present in a scan, and when a latched one is gone. Pure. */
final class Trips {

  /** A hot bath or plate must fall this far under its limit to count as gone: no chatter. */
  private static final double COOLED_K = 2;

  private static final Set<TripCause> NONE = Set.of();

  private Trips() {}

  /** Every cause that trips in this scan, given the state before it. */
  static Set<TripCause> present(Seen seen) {
    EnumSet<TripCause> found = null;
    for (TripCause cause : ALL) {
      if (trips(cause, seen)) {
        if (found == null) {
          found = EnumSet.noneOf(TripCause.class);
        }
        found.add(cause);
      }
    }
    return found == null ? NONE : found;
  }

  private static final TripCause[] ALL = TripCause.values();

  private static boolean trips(TripCause cause, Seen seen) {
    InterlockInputs in = seen.in();
    boolean notOff = seen.state() != State.OFF;
    return switch (cause) {
      case SCAN_LATE -> in.lateMs() >= seen.ms(Limit.LATE_TRIP_S);
      case STORE_FAILED -> seen.state().inRun() && !in.storeWritable();
      case BATH_PROBE_BAD ->
          finds(cause, seen)
              || (notOff
                  && (bad(seen, seen.probes().bathBadMs())
                      || bad(seen, seen.probes().secondBadMs())));
      case PLATE_PROBE_BAD ->
          finds(cause, seen) || (notOff && bad(seen, seen.probes().plateBadMs()));
      case PROBES_DISAGREE -> notOff && seen.probes().apartMs() >= seen.ms(Limit.DISAGREE_S);
      case TRAY_DRY -> seen.plateAtLeast(seen.get(Limit.PLATE_DRY_C)) || finds(cause, seen);
      case PLATE_TOO_HOT -> seen.plateAtLeast(seen.get(Limit.PLATE_HARD_C));
      case BATH_TOO_HOT -> bathTooHot(seen);
      case PROOF_STUCK ->
          seen.state() == State.PROVING && !seen.fan().clear() && seen.fan().looked(seen.lookMs());
      case AIR_NOT_PROVEN ->
          seen.state() == State.PROVING
              && !in.airProven()
              && seen.stateMs() >= seen.ms(Limit.NO_PROOF_S);
      case AIR_LOST -> seen.state().purged() && airLost(seen);
      case HEAT_NOT_ARRIVING, RELAY_STUCK -> finds(cause, seen);
    };
  }

  private static boolean finds(TripCause cause, Seen seen) {
    return seen.in().findings().contains(cause);
  }

  private static boolean bad(Seen seen, int badMs) {
    return badMs >= seen.ms(Limit.BAD_PROBE_S);
  }

  /** SR-06: at the hard limit always; above set + 5 K once the bath had arrived. */
  private static boolean bathTooHot(Seen seen) {
    return hotter(seen.in().bath(), seen) || hotter(seen.in().secondBath(), seen);
  }

  private static boolean hotter(Temperature probe, Seen seen) {
    return probe.valid()
        && (probe.celsius() >= seen.get(Limit.BATH_HARD_C)
            || (seen.run().arrived()
                && probe.celsius() >= seen.in().setC() + seen.get(Limit.OVER_SET_K)));
  }

  /** SR-05: absent for half a second, or three breaks within a minute. */
  private static boolean airLost(Seen seen) {
    boolean newBreak = seen.air().lastBreakMs() == 0;
    return seen.air().brokenMs() >= seen.ms(Limit.BREAK_S)
        || (newBreak && seen.air().breaks() >= seen.get(Limit.BREAK_COUNT));
  }

  /** Whether a latched cause is gone, so that it no longer bars a reset (SR-12). */
  static boolean gone(TripCause cause, Seen seen) {
    InterlockInputs in = seen.in();
    return switch (cause) {
      case SCAN_LATE -> in.lateMs() < seen.ms(Limit.LATE_TRIP_S);
      case STORE_FAILED -> in.storeWritable();
      case BATH_PROBE_BAD ->
          in.bath().valid()
              && (in.secondBath().valid() || !in.secondBath().fitted())
              && !finds(cause, seen);
      case PLATE_PROBE_BAD -> (in.plate().valid() || !in.plate().fitted()) && !finds(cause, seen);
      case PROBES_DISAGREE -> seen.probes().apartMs() == 0;
      case TRAY_DRY, PLATE_TOO_HOT -> plateCooled(seen) && !finds(cause, seen);
      case BATH_TOO_HOT -> bathCooled(seen);
      case PROOF_STUCK -> seen.fan().clear();
      // A fan at rest proves nothing either way: proving comes again before any heat.
      case AIR_NOT_PROVEN, AIR_LOST -> in.airProven() || !seen.fan().commanded();
      case HEAT_NOT_ARRIVING, RELAY_STUCK -> !finds(cause, seen);
    };
  }

  private static boolean plateCooled(Seen seen) {
    return !seen.in().plate().fitted()
        || (seen.in().plate().valid()
            && seen.in().plate().celsius() < seen.get(Limit.PLATE_DRY_C) - COOLED_K);
  }

  private static boolean bathCooled(Seen seen) {
    double bath = seen.bathC();
    return seen.bathKnown()
        && bath < seen.get(Limit.BATH_HARD_C) - COOLED_K
        && (!seen.run().arrived()
            || bath < seen.in().setC() + seen.get(Limit.OVER_SET_K) - COOLED_K);
  }
}
