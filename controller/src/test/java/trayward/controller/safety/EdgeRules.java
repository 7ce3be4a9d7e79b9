package trayward.controller.safety;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import trayward.controller.event.TripCause;

/**
 * What must hold of every step of the interlock, whatever the state and the inputs: judged from
 * inputs, outputs and the words of the requirements. Null where all is well, else what is not.
 */
final class EdgeRules {

  private final Limits limits;
  private final int lookMs;

  EdgeRules(Limits limits, int lookMs) {
    this.limits = limits;
    this.lookMs = lookMs;
  }

  @Nullable String broken(InterlockState before, InterlockInputs in, Verdict verdict) {
    InterlockState after = verdict.next();
    String found = permit(before, in, verdict);
    found = found != null ? found : path(before, in, verdict);
    found = found != null ? found : latch(before, in, verdict);
    found = found != null ? found : stop(in, verdict);
    found = found != null ? found : fan(in, verdict);
    if (found == null && (after.state() == State.LOCKOUT) != after.latch().holds()) {
      return "latch and LOCKOUT are one";
    }
    return found;
  }

  private static boolean proves(Proof proof) {
    return proof == Proof.PRESENT || proof == Proof.NOT_FITTED;
  }

  private static boolean air(InterlockInputs in) {
    return proves(in.airflow()) && proves(in.tachometer());
  }

  /** SR-01: a permit means that every permissive holds in this very scan. */
  private @Nullable String permit(InterlockState before, InterlockInputs in, Verdict verdict) {
    State state = verdict.next().state();
    boolean heats = state == State.HEATING || state == State.HOLDING;
    if (verdict.permitted() != heats) {
      return "heat is permitted in HEATING and HOLDING, and there alone";
    }
    boolean test = verdict.permission() instanceof ContactPermit;
    if (verdict.safetyRelay() && !state.purged() && !test) {
      return "the safety relay is closed outside of a purged run and its test";
    }
    if (test && (state != State.PURGING || !air(in) || in.lateMs() >= 200 || !in.storeWritable())) {
      return "a contact test outside of a proven purge";
    }
    if (!verdict.permitted()) {
      return null;
    }
    double bath = in.bath().celsius();
    boolean second = in.secondBath().fitted();
    if (!air(in) || !before.fan().commanded() || !verdict.fan()) {
      return "heat without a proof of a commanded fan in this scan";
    }
    if (Double.isNaN(bath) || bath > in.setC() + 0.5 || bath >= 55) {
      return "heat with the bath unknown or above set";
    }
    if (second && !(in.secondBath().celsius() <= in.setC() + 0.5)) {
      return "heat with the second probe unknown or above set";
    }
    if (in.plate().fitted() && !(in.plate().celsius() < 72)) {
      return "heat with the plate unknown or too hot";
    }
    if (in.lateMs() >= 200 || !in.storeWritable() || in.hostSilentMs() >= 60_000) {
      return "heat in a late scan, without a record or without the host";
    }
    if (in.looking() || in.level() == Level.UNSURE || !in.findings().isEmpty()) {
      return "heat with a finding, a look or an unsure level";
    }
    boolean overdue = verdict.next().run().presenceMs() >= limits.ms(Limit.PRESENCE_MIN);
    return overdue ? "heat without presence" : null;
  }

  /** SR-02, SR-04, SR-13, SR-26: the only way to heat is start, proving, purge, both contacts. */
  private @Nullable String path(InterlockState before, InterlockInputs in, Verdict verdict) {
    State from = before.state();
    State to = verdict.next().state();
    if (from == to) {
      return null;
    }
    boolean started =
        in.requests().contains(Request.START) && !verdict.refused().containsKey(Request.START);
    boolean rest = from == State.OFF || from == State.AFTER_RUN;
    if (to == State.PROVING && !(rest && started) && from != State.PURGING) {
      return "proving without a start";
    }
    boolean proven = before.air().provenMs() >= limits.ms(Limit.PROVING_S);
    if (to == State.PURGING && !(from == State.PROVING && proven && air(in))) {
      return "purge without proving";
    }
    boolean purged = before.stateMs() >= limits.ms(Limit.PURGE_S);
    boolean enters = to.purged() && !from.purged();
    if (enters && !(from == State.PURGING && purged && air(in) && in.contactsSound())) {
      return "ready without a whole purge and sound contacts";
    }
    boolean returned = before.run().hostLost() && in.hostSilentMs() < 60_000;
    return to.inRun() && returned && from.inRun() ? "a run outlives the loss of its host" : null;
  }

  /** SR-12: a trip holds until its cause is gone, it is acknowledged, and a person resets it. */
  private static @Nullable String latch(
      InterlockState before, InterlockInputs in, Verdict verdict) {
    Optional<TripCause> was = before.latch().firstOut();
    Optional<TripCause> is = verdict.next().latch().firstOut();
    if (was.isPresent() && is.isPresent() && !was.equals(is)) {
      return "first-out changed";
    }
    if (before.state() != State.LOCKOUT || verdict.next().state() == State.LOCKOUT) {
      return null;
    }
    boolean acknowledged =
        before.latch().acknowledged() || in.requests().contains(Request.ACKNOWLEDGE);
    boolean reset = in.requests().contains(Request.RESET) && in.atTray();
    if (verdict.next().state() != State.OFF || !acknowledged || !reset) {
      return "a lockout ended without acknowledgement and reset";
    }
    for (TripCause cause : before.latch().causes()) {
      if (in.findings().contains(cause)) {
        return cause + " is still found";
      }
      boolean there =
          switch (cause) {
            case SCAN_LATE -> in.lateMs() >= 1000;
            case STORE_FAILED -> !in.storeWritable();
            case BATH_PROBE_BAD ->
                !in.bath().valid() || (in.secondBath().fitted() && !in.secondBath().valid());
            case PLATE_PROBE_BAD -> in.plate().fitted() && !in.plate().valid();
            case PROBES_DISAGREE ->
                in.bath().valid()
                    && in.secondBath().valid()
                    && Math.abs(in.bath().celsius() - in.secondBath().celsius()) > 2;
            case TRAY_DRY, PLATE_TOO_HOT ->
                in.plate().fitted() && !(in.plate().valid() && in.plate().celsius() < 70);
            case BATH_TOO_HOT -> !(in.bath().celsius() < 53);
            case PROOF_STUCK -> false; // judged with the fan at rest, see the fan's own rules
            case AIR_NOT_PROVEN, AIR_LOST -> before.fan().commanded() && !air(in);
            case HEAT_NOT_ARRIVING, RELAY_STUCK -> false; // findings, above
          };
      if (there) {
        return cause + " is still present";
      }
    }
    return null;
  }

  /** SR-14: stop wins from everywhere. */
  private static @Nullable String stop(InterlockInputs in, Verdict verdict) {
    boolean asked = in.requests().contains(Request.STOP) || !in.stopCircuitClosed();
    if (!asked) {
      return null;
    }
    if (verdict.refused().containsKey(Request.STOP)) {
      return "a stop was refused";
    }
    boolean open = !verdict.permitted() && !verdict.safetyRelay();
    return open && !verdict.next().state().inRun() ? null : "a stop did not end the run";
  }

  /** SR-05, SR-20, SR-21: when the fan must be commanded on. */
  private @Nullable String fan(InterlockInputs in, Verdict verdict) {
    if (verdict.fan()) {
      return null;
    }
    InterlockState after = verdict.next();
    State state = after.state();
    if (state == State.PURGING || state.purged() || state == State.AFTER_RUN) {
      return "a run or after-run without a commanded fan";
    }
    double bath = in.bath().celsius();
    double second = in.secondBath().celsius();
    boolean known = !Double.isNaN(bath) && (!in.secondBath().fitted() || !Double.isNaN(second));
    boolean warm = !known || bath > 30 || second > 30;
    boolean looking = after.looking() || after.fan().offMs() < lookMs;
    boolean held = state == State.LOCKOUT && after.hold().fanStopped();
    boolean proving = state == State.PROVING && !after.fan().clear();
    return warm && !looking && !held && !proving ? "a warm bath without a commanded fan" : null;
  }
}
