package trayward.controller.safety;

import trayward.controller.event.AlarmCause;
import trayward.controller.event.TripCause;
import trayward.controller.event.Warning;
import trayward.controller.quantity.Range;

/**
 * How long a condition stands before its alarm comes, and is away before its alarm goes (ISA-18.2:
 * on-delay and off-delay). Pure.
 */
final class AlarmDelay {

  /** Off-delay of every alarm, so that what comes and goes is one alarm. */
  static final Limit OFF = Limit.WARNING_CLEAR_S;

  private AlarmDelay() {}

  /** On-delay of a warning beyond what its condition has waited already, ms. */
  static int onMs(Warning warning, Limits limits) {
    return switch (warning) {
      case BATH_WITHOUT_AIR -> limits.ms(Limit.NO_AIR_ALARM_S);
      // These have waited long enough before they are told.
      case LEVEL_UNSURE, HOST_LOST, PRESENCE_DUE, LEVEL_LOW -> 0;
    };
  }

  /** The whole delay before an alarm comes, in words that name its limit. */
  static String onWords(AlarmCause cause) {
    if (cause instanceof TripCause trip) {
      return onWords(trip);
    }
    return switch ((Warning) cause) {
      case BATH_WITHOUT_AIR -> named(Limit.NO_AIR_ALARM_S);
      case HOST_LOST -> named(Limit.HOST_LOST_S);
      case PRESENCE_DUE -> named(Limit.PRESENCE_MIN) + " less " + named(Limit.PRESENCE_WARN_MIN);
      case LEVEL_LOW, LEVEL_UNSURE -> "none beyond the estimate's own";
    };
  }

  private static String onWords(TripCause trip) {
    return switch (trip) {
      case SCAN_LATE -> named(Limit.LATE_TRIP_S);
      case BATH_PROBE_BAD, PLATE_PROBE_BAD -> named(Limit.BAD_PROBE_S);
      case PROBES_DISAGREE -> named(Limit.DISAGREE_S);
      case AIR_NOT_PROVEN -> named(Limit.NO_PROOF_S);
      case AIR_LOST ->
          named(Limit.BREAK_S)
              + ", or "
              + named(Limit.BREAK_COUNT)
              + " breaks in "
              + named(Limit.BREAK_WINDOW_S);
      case PROOF_STUCK -> "the look at the resting fan, at most " + named(Limit.LOOK_MAX_S);
      case RELAY_STUCK -> named(Limit.READ_BACK_S) + ", or as soon as heat without command is sure";
      case TRAY_DRY -> "none at its limit; before it, once the model is sure";
      case HEAT_NOT_ARRIVING -> "once the energy sent and not seen is sure";
      case STORE_FAILED, PLATE_TOO_HOT, BATH_TOO_HOT -> "none";
    };
  }

  /** Whether an alarm holds after its condition has gone until a person resets it (SR-12). */
  static boolean latches(AlarmCause cause) {
    return cause instanceof TripCause;
  }

  private static String named(Limit limit) {
    return ("`" + limit.key() + "` " + Range.plain(limit.standard()))
        + (limit.unit().isEmpty() ? "" : " " + limit.unit());
  }
}
