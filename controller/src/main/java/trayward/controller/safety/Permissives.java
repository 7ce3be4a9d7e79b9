package trayward.controller.safety;

import java.util.EnumSet;
import java.util.Set;
import trayward.controller.event.WithheldReason;

/** SR-01: everything that must hold in this very scan before a permit is given. Pure. */
final class Permissives {

  private static final Set<WithheldReason> NONE = Set.of();

  private Permissives() {}

  /** Every reason that withholds heat now in a purged state; empty where all is well. */
  static Set<WithheldReason> missing(Seen seen) {
    EnumSet<WithheldReason> missing = null;
    for (WithheldReason reason : ALL) {
      if (withholds(reason, seen)) {
        if (missing == null) {
          missing = EnumSet.noneOf(WithheldReason.class);
        }
        missing.add(reason);
      }
    }
    return missing == null ? NONE : missing;
  }

  /** SR-26: whether one relay may be closed alone now: what could go wrong with heat is well. */
  static boolean testable(Seen seen) {
    return !withholds(WithheldReason.PROOF_BREAK, seen)
        && !withholds(WithheldReason.SCAN_LATE, seen)
        && !withholds(WithheldReason.PROBE_UNSURE, seen)
        && !withholds(WithheldReason.STORE_UNWRITABLE, seen);
  }

  private static final WithheldReason[] ALL = WithheldReason.values();

  private static boolean withholds(WithheldReason reason, Seen seen) {
    InterlockInputs in = seen.in();
    return switch (reason) {
      case NOT_RUNNING -> !seen.state().purged();
      case PRESENCE_DUE -> seen.run().presenceMs() >= seen.ms(Limit.PRESENCE_MIN);
      case HOST_LOST -> in.hostSilentMs() >= seen.ms(Limit.HOST_LOST_S);
      case LEVEL_UNSURE -> in.level() == Level.UNSURE;
      case PROOF_BREAK -> !in.airProven() || !seen.fan().commanded() || !seen.fan().clear();
      case ABOVE_SET -> seen.bathC() > in.setC() + seen.get(Limit.ABOVE_SET_K);
      case LOOKING -> in.looking();
      case SCAN_LATE -> in.lateMs() >= seen.get(Limit.LATE_PERIODS) * Interlock.PERIOD_MS;
      case PROBE_UNSURE -> !seen.bathKnown() || !seen.plateKnownOrBlind();
      case STORE_UNWRITABLE -> !in.storeWritable();
    };
  }
}
