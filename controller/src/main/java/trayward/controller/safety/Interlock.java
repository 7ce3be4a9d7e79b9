package trayward.controller.safety;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import trayward.controller.event.Alarm;
import trayward.controller.event.AlarmState;
import trayward.controller.event.TripCause;
import trayward.controller.event.WithheldReason;

/**
 * The interlock: a pure function from (state, inputs) to a verdict. No I/O, no clock, no threads.
 *
 * <p>Order within a step: gather evidence, latch what trips, serve requests (stop first), move the
 * state, judge every permissive anew, and only then mint a permit, for this scan alone.
 */
public final class Interlock {

  /** Period of the scan loop, ms: 10 Hz. */
  public static final int PERIOD_MS = 100;

  private static final Permission.Withheld NOT_RUNNING =
      new Permission.Withheld(Set.of(WithheldReason.NOT_RUNNING));

  private final Limits limits;
  private final int lookMs;

  /**
   * An interlock with its limits.
   *
   * @param limits the limits in force
   * @param spinDownS time the fan needs to come to rest, s
   */
  public Interlock(Limits limits, double spinDownS) {
    this.limits = limits;
    int wantedMs = (int) Math.round(spinDownS * 1000) + limits.ms(Limit.LOOK_EXTRA_S);
    this.lookMs = Math.min(wantedMs, limits.ms(Limit.LOOK_MAX_S));
  }

  /** Length of the look of SR-03, ms. */
  public int lookMs() {
    return lookMs;
  }

  /**
   * One scan.
   *
   * @param before the state the last scan left
   * @param in what this scan found
   * @param scan number of this scan, stamped on the permit
   */
  public Verdict step(InterlockState before, InterlockInputs in, long scan) {
    Seen seen = gather(before, in);
    Map<Request, Refusal> refused =
        in.requests().isEmpty() ? Map.of() : new EnumMap<>(Request.class);
    Set<TripCause> tripped = newlyTripped(seen, before.latch());
    Latch told = before.latch();
    if (in.asks(Request.ACKNOWLEDGE)) {
      told = told.acknowledge();
    }
    Latch latch = told.with(tripped); // nobody has seen yet what trips in this scan
    boolean reset = in.asks(Request.RESET) && mayReset(seen, latch, tripped, refused);
    boolean start = in.asks(Request.START) && mayStart(seen, latch, refused);
    State wanted = move(seen, latch, reset, start);
    Set<WithheldReason> missing =
        wanted.purged() ? Permissives.missing(seen) : NOT_RUNNING.reasons();
    State state = wanted.purged() ? purgedState(seen, missing) : wanted;
    Permission permission = permission(seen, state, missing, scan);
    InterlockState next =
        next(seen, reset ? Latch.OPEN : latch, state, permission instanceof HeaterPermit);
    List<Alarm> alarms = alarms(seen, next);
    return new Verdict(
        next,
        permission,
        next.fan().commanded(),
        state.purged() || lets(permission, Relay.SAFETY, scan),
        sounds(alarms),
        tripped,
        alarms,
        refused);
  }

  private static Permission permission(
      Seen seen, State state, Set<WithheldReason> missing, long scan) {
    if (state.purged() && missing.isEmpty()) {
      return new HeaterPermit(scan);
    }
    boolean purging = state == State.PURGING && seen.state() == State.PURGING;
    if (purging && Permissives.testable(seen)) {
      Optional<Relay> alone = seen.in().contactTest();
      if (alone.isPresent()) {
        return new ContactPermit(scan, alone.get());
      }
    }
    return new Permission.Withheld(missing);
  }

  private static boolean lets(Permission permission, Relay relay, long scan) {
    return permission instanceof ContactPermit contact && contact.lets(relay, scan);
  }

  private Seen gather(InterlockState before, InterlockInputs in) {
    int dt = in.elapsedMs();
    ProbeWatch probes = before.probes().next(in, limits);
    Seen bare =
        new Seen(
            limits,
            lookMs,
            in,
            before,
            trayward.controller.quantity.Ages.older(before.stateMs(), dt),
            before.fan().next(in, lookMs),
            before.air().next(in.airProven(), dt, limits.ms(Limit.BREAK_WINDOW_S)),
            probes,
            before.run(),
            before.hold().next(in, before.state(), limits.ms(Limit.STOP_HELD_S)));
    RunMemory run = before.run().next(in, before.state(), bare.bathC(), bare.bathKnown(), limits);
    return new Seen(
        limits,
        lookMs,
        in,
        before,
        bare.stateMs(),
        bare.fan(),
        bare.air(),
        probes,
        run,
        bare.hold());
  }

  private static Set<TripCause> newlyTripped(Seen seen, Latch latch) {
    Set<TripCause> present = Trips.present(seen);
    if (present.isEmpty() || latch.causes().containsAll(present)) {
      return Set.of();
    }
    EnumSet<TripCause> fresh = EnumSet.copyOf(present);
    fresh.removeAll(latch.causes());
    return fresh;
  }

  private static boolean mayReset(
      Seen seen, Latch latch, Set<TripCause> tripped, Map<Request, Refusal> refused) {
    Refusal refusal = null;
    if (seen.state() != State.LOCKOUT) {
      refusal = Refusal.NOT_LOCKED_OUT;
    } else if (!latch.acknowledged()) {
      refusal = Refusal.NOT_ACKNOWLEDGED;
    } else if (!tripped.isEmpty()
        || !latch.causes().stream().allMatch(cause -> Trips.gone(cause, seen))) {
      refusal = Refusal.CAUSE_PRESENT;
    } else if (!seen.in().atTray()) {
      refusal = Refusal.NOBODY_AT_TRAY;
    }
    if (refusal != null) {
      refused.put(Request.RESET, refusal);
    }
    return refusal == null;
  }

  private static boolean mayStart(Seen seen, Latch latch, Map<Request, Refusal> refused) {
    Refusal refusal = null;
    if (latch.holds()) {
      refusal = Refusal.LOCKED_OUT;
    } else if (seen.state() != State.OFF && seen.state() != State.AFTER_RUN) {
      refusal = Refusal.ALREADY_RUNNING;
    } else if (seen.in().stop()) {
      refusal = Refusal.STOP_PRESSED;
    } else if (seen.probes().bathBadMs() >= seen.ms(Limit.BAD_PROBE_S)) {
      refusal = Refusal.BATH_PROBE_BAD;
    } else if (!seen.in().storeWritable()) {
      refusal = Refusal.STORE_UNWRITABLE;
    } else if (seen.in().startUnconfirmed()) {
      refusal = Refusal.CONFIRM_FIRST;
    }
    if (refusal != null) {
      refused.put(Request.START, refusal);
    }
    return refusal == null;
  }

  /** The state after this scan, before READY, HEATING and HOLDING are told apart. */
  private static State move(Seen seen, Latch latch, boolean reset, boolean start) {
    if (reset) {
      return State.OFF;
    }
    if (latch.holds()) {
      return State.LOCKOUT;
    }
    State now = seen.state();
    if (now.inRun() && (seen.in().stop() || seen.run().hostReturned(seen.in(), seen.limits()))) {
      return seen.run().heated() ? State.AFTER_RUN : State.OFF;
    }
    return switch (now) {
      case OFF -> start ? State.PROVING : State.OFF;
      case PROVING ->
          seen.air().provenMs() >= seen.ms(Limit.PROVING_S) && seen.fan().commanded()
              ? State.PURGING
              : State.PROVING;
      case PURGING -> purging(seen);
      case READY -> seen.stateMs() >= seen.ms(Limit.READY_MIN) ? State.AFTER_RUN : State.READY;
      case HEATING, HOLDING -> State.READY;
      case AFTER_RUN -> start ? State.PROVING : afterRun(seen);
      case LOCKOUT -> State.LOCKOUT;
    };
  }

  private static State purging(Seen seen) {
    if (!seen.in().airProven()) {
      return State.PROVING;
    }
    boolean cleared = seen.stateMs() >= seen.ms(Limit.PURGE_S);
    return cleared && seen.in().contactsSound() ? State.READY : State.PURGING;
  }

  private static State afterRun(Seen seen) {
    return seen.run().coolMs() >= seen.ms(Limit.AFTER_RUN_S) ? State.OFF : State.AFTER_RUN;
  }

  private static State purgedState(Seen seen, Set<WithheldReason> missing) {
    if (!missing.isEmpty()) {
      return State.READY;
    }
    // Half a kelvin is part of the states' definition, not a limit.
    return seen.in().bath().celsius() < seen.in().setC() - 0.5 ? State.HEATING : State.HOLDING;
  }

  private InterlockState next(Seen seen, Latch latch, State state, boolean permitted) {
    boolean same = state == seen.state();
    boolean entersProving = state == State.PROVING && !same;
    RunMemory run = seen.run();
    if (permitted) {
      run = run.heated(true).warm(); // the after-run time counts from the last heat, also a trip's
    } else if (cleared(seen, state)) {
      run = run.heated(false);
    }
    if (state == State.AFTER_RUN && !same) {
      run = run.warm(); // the after-run time counts from here at the earliest
    }
    boolean looking = looking(seen, latch, state);
    boolean fan = FanRule.commands(seen, state, latch, run, looking);
    return new InterlockState(
        state,
        same ? seen.stateMs() : 0,
        seen.fan().command(fan),
        entersProving ? seen.air().forgetBreaks() : seen.air(),
        seen.probes(),
        run,
        latch,
        seen.hold(),
        seen.before().warnings().next(seen),
        looking);
  }

  /** SR-20: heat is forgotten once the bath has been cool for the after-run time, also at rest. */
  private static boolean cleared(Seen seen, State state) {
    boolean resting = state == State.OFF || state == State.LOCKOUT;
    return resting && seen.run().coolMs() >= seen.ms(Limit.AFTER_RUN_S);
  }

  /** Acknowledging a stuck proof holds the fan off once, to see whether the proof has let go. */
  private boolean looking(Seen seen, Latch latch, State state) {
    boolean stuck = state == State.LOCKOUT && latch.causes().contains(TripCause.PROOF_STUCK);
    boolean begins = seen.in().asks(Request.ACKNOWLEDGE) && !seen.fan().clear();
    boolean goesOn =
        seen.before().looking() && !(seen.fan().looked(lookMs) && !seen.fan().commanded());
    return stuck && (begins || goesOn);
  }

  private static boolean sounds(List<Alarm> alarms) {
    for (Alarm alarm : alarms) {
      if (alarm.sounds()) {
        return true;
      }
    }
    return false;
  }

  /** Latched trips, first-out first, then warnings. */
  private static List<Alarm> alarms(Seen seen, InterlockState next) {
    List<Alarm> warnings = next.warnings().alarms();
    Latch latch = next.latch();
    if (!latch.holds()) {
      return List.copyOf(warnings);
    }
    List<Alarm> alarms = new ArrayList<>();
    latch.firstOut().ifPresent(first -> alarms.add(alarm(first, seen, latch)));
    for (TripCause cause : latch.causes()) {
      if (latch.firstOut().filter(first -> first == cause).isEmpty()) {
        alarms.add(alarm(cause, seen, latch));
      }
    }
    alarms.addAll(warnings);
    return List.copyOf(alarms);
  }

  private static Alarm alarm(TripCause cause, Seen seen, Latch latch) {
    return new Alarm(cause, AlarmState.of(!Trips.gone(cause, seen), latch.acknowledged()));
  }
}
