package trayward.controller.safety;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;
import trayward.controller.quantity.Ages;

/**
 * The ages of an interlock state, each reduced to what the interlock can tell of it: young, or old
 * enough for its limit; zero only where zero means something. Any age may grow old between two
 * scans, in whatever order: more courses of time than there are, and so every one there is.
 */
final class AbstractAges {

  private static final int YOUNG_MS = 1;

  private final Limits limits;
  private final int lookMs;
  private final boolean keepWarnings;

  AbstractAges(Limits limits, int lookMs, boolean keepWarnings) {
    this.limits = limits;
    this.lookMs = lookMs;
    this.keepWarnings = keepWarnings;
  }

  private static int two(int ageMs, int limitMs) {
    return ageMs >= limitMs ? limitMs : YOUNG_MS;
  }

  private static int three(int ageMs, int limitMs) {
    return ageMs == 0 ? 0 : two(ageMs, limitMs);
  }

  /** Age of the state that its own limit looks at; a state without one has none. */
  private int stateLimitMs(State state) {
    return switch (state) {
      case PROVING -> limits.ms(Limit.NO_PROOF_S);
      case PURGING -> limits.ms(Limit.PURGE_S);
      case READY -> limits.ms(Limit.READY_MIN);
      case OFF, HEATING, HOLDING, AFTER_RUN, LOCKOUT -> 0;
    };
  }

  /** The state as the exploration keeps it. */
  InterlockState reduced(InterlockState s) {
    int stateLimit = stateLimitMs(s.state());
    int window = limits.ms(Limit.BREAK_WINDOW_S);
    int bad = limits.ms(Limit.BAD_PROBE_S);
    AirWatch air = s.air();
    ProbeWatch probes = s.probes();
    RunMemory run = s.run();
    FanWatch fan = s.fan();
    return new InterlockState(
        s.state(),
        stateLimit == 0 ? 0 : two(s.stateMs(), stateLimit),
        new FanWatch(
            fan.commanded(),
            fan.commanded() ? 0 : two(fan.offMs(), lookMs),
            fan.airflowClear(),
            fan.tachometerClear()),
        air(s.state(), air, window),
        new ProbeWatch(
            three(probes.bathBadMs(), bad),
            three(probes.secondBadMs(), bad),
            three(probes.plateBadMs(), bad),
            three(probes.apartMs(), limits.ms(Limit.DISAGREE_S))),
        new RunMemory(
            run.heated(),
            run.arrived(),
            run.setC(),
            s.state().inRun() ? YOUNG_MS : two(run.coolMs(), limits.ms(Limit.AFTER_RUN_S)),
            s.state().purged() || keepWarnings ? presence(run.presenceMs()) : YOUNG_MS,
            run.hostLost()),
        s.latch(),
        new StopHold(
            s.hold().seenReleased(),
            three(s.hold().heldMs(), limits.ms(Limit.STOP_HELD_S)),
            s.hold().fanStopped()),
        keepWarnings ? reduced(s.warnings()) : WarningWatch.START,
        s.looking());
  }

  /**
   * Air, as far as this state looks at it: breaks count within a run and are forgotten at its
   * beginning; their number is read in the scan of a new one only. What is left out here may grow
   * old again where it is looked at.
   */
  private AirWatch air(State state, AirWatch air, int window) {
    boolean run = state.inRun();
    boolean proves = state == State.PURGING || state.purged();
    int last = run ? three(air.lastBreakMs(), window) : Ages.MAX_MS;
    return new AirWatch(
        proves ? YOUNG_MS : two(air.provenMs(), limits.ms(Limit.PROVING_S)),
        state.purged()
            ? three(air.brokenMs(), limits.ms(Limit.BREAK_S))
            : Math.min(1, air.brokenMs()),
        last,
        run ? two(air.olderBreakMs(), window) : Ages.MAX_MS,
        last == 0 ? air.breaks() : 0);
  }

  private int warnMs() {
    return limits.ms(Limit.PRESENCE_MIN) - limits.ms(Limit.PRESENCE_WARN_MIN);
  }

  private int presence(int ageMs) {
    int due = limits.ms(Limit.PRESENCE_MIN);
    return ageMs >= due ? due : keepWarnings && ageMs >= warnMs() ? warnMs() : YOUNG_MS;
  }

  private WarningWatch reduced(WarningWatch warnings) {
    return new WarningWatch(
        warnings.stands().stream()
            .map(w -> new WarningWatch.Stand(w.state(), w.changingMs() == 0 ? 0 : YOUNG_MS))
            .toList());
  }

  /** Every state that differs from this one by one age grown old. */
  List<InterlockState> older(InterlockState s) {
    List<InterlockState> all = new ArrayList<>();
    int window = limits.ms(Limit.BREAK_WINDOW_S);
    int bad = limits.ms(Limit.BAD_PROBE_S);
    AirWatch a = s.air();
    ProbeWatch p = s.probes();
    RunMemory r = s.run();
    grow(all, s.stateMs(), stateLimitMs(s.state()), ms -> with(s, ms, s.fan(), a, p, r, s.hold()));
    grow(
        all,
        s.fan().offMs(),
        lookMs,
        ms ->
            with(
                s,
                s.stateMs(),
                new FanWatch(false, ms, s.fan().airflowClear(), s.fan().tachometerClear()),
                a,
                p,
                r,
                s.hold()));
    if (!s.state().purged() && s.state() != State.PURGING) {
      growAir(all, s, a.provenMs(), limits.ms(Limit.PROVING_S), ms -> air(a, ms, 0));
    }
    if (s.state().purged()) {
      growAir(all, s, a.brokenMs(), limits.ms(Limit.BREAK_S), ms -> air(a, ms, 1));
    }
    growAir(all, s, a.lastBreakMs(), window, ms -> air(a, ms, 2));
    growAir(all, s, a.olderBreakMs(), window, ms -> air(a, ms, 3));
    growProbes(all, s, p.bathBadMs(), bad, ms -> probes(p, ms, 0));
    growProbes(all, s, p.secondBadMs(), bad, ms -> probes(p, ms, 1));
    growProbes(all, s, p.plateBadMs(), bad, ms -> probes(p, ms, 2));
    growProbes(all, s, p.apartMs(), limits.ms(Limit.DISAGREE_S), ms -> probes(p, ms, 3));
    if (!s.state().inRun()) {
      growRun(all, s, r.coolMs(), limits.ms(Limit.AFTER_RUN_S), ms -> run(r, ms, r.presenceMs()));
    }
    if (s.state().purged() || keepWarnings) {
      growRun(all, s, r.presenceMs(), limits.ms(Limit.PRESENCE_MIN), ms -> run(r, r.coolMs(), ms));
    }
    if (keepWarnings) {
      growRun(all, s, r.presenceMs(), warnMs(), ms -> run(r, r.coolMs(), ms));
      growWarnings(all, s);
    }
    StopHold h = s.hold();
    grow(
        all,
        h.heldMs(),
        limits.ms(Limit.STOP_HELD_S),
        ms ->
            with(
                s,
                s.stateMs(),
                s.fan(),
                a,
                p,
                r,
                new StopHold(h.seenReleased(), ms, h.fanStopped())));
    return all;
  }

  private static void grow(
      List<InterlockState> all, int ageMs, int limitMs, IntFunction<InterlockState> made) {
    if (ageMs == YOUNG_MS && limitMs > 0) {
      all.add(made.apply(limitMs));
    }
  }

  private static void growAir(
      List<InterlockState> all,
      InterlockState s,
      int ageMs,
      int limitMs,
      IntFunction<AirWatch> made) {
    grow(
        all,
        ageMs,
        limitMs,
        ms -> with(s, s.stateMs(), s.fan(), made.apply(ms), s.probes(), s.run(), s.hold()));
  }

  private static void growProbes(
      List<InterlockState> all,
      InterlockState s,
      int ageMs,
      int limitMs,
      IntFunction<ProbeWatch> made) {
    grow(
        all,
        ageMs,
        limitMs,
        ms -> with(s, s.stateMs(), s.fan(), s.air(), made.apply(ms), s.run(), s.hold()));
  }

  private static void growRun(
      List<InterlockState> all,
      InterlockState s,
      int ageMs,
      int limitMs,
      IntFunction<RunMemory> made) {
    grow(
        all,
        ageMs,
        limitMs,
        ms -> with(s, s.stateMs(), s.fan(), s.air(), s.probes(), made.apply(ms), s.hold()));
  }

  private static void growWarnings(List<InterlockState> all, InterlockState s) {
    for (int i = 0; i < s.warnings().stands().size(); i++) {
      WarningWatch.Stand stand = s.warnings().stands().get(i);
      if (stand.changingMs() == YOUNG_MS) {
        List<WarningWatch.Stand> grown = new ArrayList<>(s.warnings().stands());
        grown.set(i, new WarningWatch.Stand(stand.state(), Ages.MAX_MS));
        all.add(
            new InterlockState(
                s.state(),
                s.stateMs(),
                s.fan(),
                s.air(),
                s.probes(),
                s.run(),
                s.latch(),
                s.hold(),
                new WarningWatch(List.copyOf(grown)),
                s.looking()));
      }
    }
  }

  private static AirWatch air(AirWatch a, int ms, int which) {
    return new AirWatch(
        which == 0 ? ms : a.provenMs(),
        which == 1 ? ms : a.brokenMs(),
        which == 2 ? ms : a.lastBreakMs(),
        which == 3 ? ms : a.olderBreakMs(),
        a.breaks());
  }

  private static ProbeWatch probes(ProbeWatch p, int ms, int which) {
    return new ProbeWatch(
        which == 0 ? ms : p.bathBadMs(),
        which == 1 ? ms : p.secondBadMs(),
        which == 2 ? ms : p.plateBadMs(),
        which == 3 ? ms : p.apartMs());
  }

  private static RunMemory run(RunMemory r, int coolMs, int presenceMs) {
    return new RunMemory(r.heated(), r.arrived(), r.setC(), coolMs, presenceMs, r.hostLost());
  }

  private static InterlockState with(
      InterlockState s,
      int stateMs,
      FanWatch fan,
      AirWatch air,
      ProbeWatch probes,
      RunMemory run,
      StopHold hold) {
    return new InterlockState(
        s.state(), stateMs, fan, air, probes, run, s.latch(), hold, s.warnings(), s.looking());
  }
}
