package trayward.controller.safety;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import trayward.controller.event.TripCause;
import trayward.controller.keep.KeepLoad;
import trayward.controller.keep.KeepRecord;

/**
 * Walks every reachable state times every input of a slice, breadth first, from every record power
 * can come up with, and judges each step.
 */
final class Exploration {

  /** A walk that grows beyond this is a mistake of the abstraction. */
  private static final int MAX_STATES = 4_000_000;

  /** A way back to OFF takes some scans of a minute each; more is a dead end. */
  private static final int WAY_BACK_SCANS = 40;

  private final Interlock interlock = new Interlock(Limits.STANDARD, 4);
  private final AbstractAges ages;
  private final EdgeRules rules = new EdgeRules(Limits.STANDARD, interlock.lookMs());
  private final List<InterlockInputs> inputs;
  private final List<InterlockInputs> wayBack;

  final Set<InterlockState> reached = new HashSet<>();
  final EnumSet<State> states = EnumSet.noneOf(State.class);
  final EnumSet<TripCause> latched = EnumSet.noneOf(TripCause.class);
  long transitions;
  long heating;

  Exploration(List<InterlockInputs> inputs, boolean keepWarnings) {
    this.inputs = inputs;
    this.ages = new AbstractAges(Limits.STANDARD, interlock.lookMs(), keepWarnings);
    this.wayBack = wayBack();
  }

  private static List<InterlockState> powerUps() {
    List<InterlockState> all = new ArrayList<>();
    all.add(InterlockState.powerUp(new KeepLoad.Unreadable("torn")));
    for (boolean heated : List.of(false, true)) {
      all.add(up(Set.of(), Optional.empty(), false, heated));
      for (TripCause cause : TripCause.values()) {
        for (boolean acknowledged : List.of(false, true)) {
          all.add(up(Set.of(cause), Optional.of(cause), acknowledged, heated));
        }
      }
    }
    return all;
  }

  private static InterlockState up(
      Set<TripCause> causes, Optional<TripCause> first, boolean acknowledged, boolean heated) {
    return InterlockState.powerUp(
        new KeepLoad.Loaded(new KeepRecord(causes, first, acknowledged, heated)));
  }

  /** Null where every step kept every rule, else the first that did not. */
  Optional<String> walk() {
    ArrayDeque<InterlockState> open = new ArrayDeque<>();
    powerUps().forEach(s -> add(open, ages.reduced(s)));
    while (!open.isEmpty()) {
      InterlockState state = open.remove();
      states.add(state.state());
      latched.addAll(state.latch().causes());
      for (InterlockState older : ages.older(state)) {
        add(open, older);
      }
      for (InterlockInputs in : inputs) {
        Verdict verdict = interlock.step(state, in, 1);
        transitions++;
        heating += verdict.permitted() ? 1 : 0;
        String broken = rules.broken(state, in, verdict);
        if (broken != null) {
          return Optional.of(broken + "\n  from " + state + "\n  by " + in + "\n  to " + verdict);
        }
        add(open, ages.reduced(verdict.next()));
      }
      if (!returns(state)) {
        return Optional.of("no way back to OFF from " + state);
      }
      if (reached.size() > MAX_STATES) {
        return Optional.of("more than " + MAX_STATES + " states");
      }
    }
    return Optional.empty();
  }

  private void add(ArrayDeque<InterlockState> open, InterlockState state) {
    if (reached.add(state)) {
      open.add(state);
    }
  }

  /** A person who mends, stops, acknowledges, resets and waits: scans of a minute, each in time. */
  private static List<InterlockInputs> wayBack() {
    List<InterlockInputs> both = new ArrayList<>();
    for (boolean fan : List.of(false, true)) {
      Conditions mended = new Conditions();
      mended.bath = Conditions.read(25);
      mended.second = Conditions.read(25); // two that once disagreed must be seen to agree
      mended.plate = Conditions.read(25);
      mended.asked.addAll(List.of(Request.STOP, Request.ACKNOWLEDGE, Request.RESET));
      InterlockInputs in = mended.take(fan);
      both.add(
          new InterlockInputs(
              60_000,
              0,
              in.airflow(),
              in.tachometer(),
              in.bath(),
              in.secondBath(),
              in.plate(),
              in.setC(),
              in.stopCircuitClosed(),
              in.linesPresent(),
              in.requests(),
              in.atTray(),
              in.storeWritable(),
              in.hostSilentMs(),
              in.contactTest(),
              in.contactsSound(),
              in.looking(),
              in.level(),
              in.startUnconfirmed(),
              in.findings()));
    }
    return both;
  }

  private boolean returns(InterlockState from) {
    InterlockState state = from;
    for (int i = 0; i < WAY_BACK_SCANS; i++) {
      state = interlock.step(state, wayBack.get(state.fan().commanded() ? 1 : 0), 1).next();
      if (state.state() == State.OFF) {
        return true;
      }
    }
    return false;
  }
}
