package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.fail;

import java.util.Set;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import trayward.controller.event.TripCause;
import trayward.controller.event.WithheldReason;
import trayward.controller.keep.KeepLoad;
import trayward.controller.keep.KeepRecord;

/**
 * Drives the interlock scan by scan. Inputs are healthy until a test changes them, and then stay
 * changed: both proofs follow the fan's command, the probes read, the stop circuit is whole, a
 * person stands at the tray. Requests and lateness last for one scan.
 */
public final class Bench {

  /** Set temperature of a fresh bench, °C. */
  public static final double SET_C = 40;

  private static final KeepLoad NO_RECORD = new KeepLoad.Loaded(KeepRecord.CLEAN);

  private final Interlock interlock;
  final Conditions now = new Conditions();
  private InterlockState state;
  private @Nullable InterlockInputs found;
  private @Nullable Verdict verdict;
  private long scan;

  private Bench(Limits limits, KeepLoad load) {
    this.interlock = new Interlock(limits, 4); // a fan at rest after 4 s: a look of 6 s
    this.state = InterlockState.powerUp(load);
  }

  /** Power has just come on with this record. */
  static Bench powerUp(KeepLoad load) {
    return new Bench(Limits.STANDARD, load);
  }

  /** Power has just come on, nothing on record. */
  static Bench powerUp() {
    return powerUp(NO_RECORD);
  }

  /** In {@code wanted}, by the shortest way a person has. In LOCKOUT the air was lost. */
  public static Bench in(State wanted) {
    return in(Limits.STANDARD, wanted);
  }

  static Bench in(Limits limits, State wanted) {
    Bench bench = new Bench(limits, NO_RECORD);
    bench.run(bench.interlock.lookMs() / 1000.0);
    switch (wanted) {
      case OFF -> {}
      case PROVING -> bench.ask(Request.START).scan();
      case PURGING -> bench.ask(Request.START).until(wanted);
      case READY -> bench.bath(SET_C + 0.75).ask(Request.START).until(wanted).scan();
      case HEATING -> bench.ask(Request.START).until(wanted);
      case HOLDING -> bench.bath(SET_C).ask(Request.START).until(wanted);
      case AFTER_RUN -> bench.ask(Request.START).until(State.HEATING).ask(Request.STOP).scan();
      case LOCKOUT -> bench.ask(Request.START).until(State.HEATING).air(Proof.ABSENT).run(0.5);
    }
    assertEquals(wanted, bench.state(), "the bench could not be brought there");
    return bench;
  }

  /** Sets both proofs; null lets them follow the fan's command. */
  Bench air(@Nullable Proof proof) {
    return airflow(proof).tachometer(proof);
  }

  Bench airflow(@Nullable Proof proof) {
    now.airflow = proof;
    return this;
  }

  Bench tachometer(@Nullable Proof proof) {
    now.tachometer = proof;
    return this;
  }

  /** The bath as read, °C. */
  public Bench bath(double celsius) {
    now.bath = Conditions.read(celsius);
    return this;
  }

  /** The bath probe gives nothing that can be believed; its last good reading is remembered. */
  Bench bathBad() {
    now.bath = Conditions.bad(now.bath);
    return this;
  }

  Bench stopCircuit(boolean closed) {
    now.circuit = closed;
    return this;
  }

  /** Any other change of what the next scans find. */
  Bench given(Consumer<Conditions> change) {
    change.accept(now);
    return this;
  }

  /** The next scan comes this much later than it was due. */
  Bench late(int ms) {
    now.lateMs = ms;
    return this;
  }

  /** Asked in the next scan. */
  public Bench ask(Request... requests) {
    now.asked.addAll(Set.of(requests));
    return this;
  }

  /** One scan. */
  public Verdict scan() {
    InterlockInputs in = now.take(state.fan().commanded());
    Verdict made = interlock.step(state, in, ++scan);
    found = in;
    verdict = made;
    state = made.next();
    return made;
  }

  /** Scans for so many seconds; the last verdict. */
  Verdict run(double seconds) {
    for (long left = Math.round(seconds * 1000 / Interlock.PERIOD_MS); left > 0; left--) {
      scan();
    }
    return last();
  }

  /** Scans until a state is reached; it must come within two minutes. */
  Bench until(State wanted) {
    for (int scans = 0; state() != wanted; scans++) {
      if (scans > 1200) {
        fail(wanted + " was not reached, but " + state());
      }
      scan();
    }
    return this;
  }

  State state() {
    return state.state();
  }

  /** What lies between two scans. */
  InterlockState between() {
    return state;
  }

  /** What the last scan found. */
  InterlockInputs found() {
    if (found == null) {
      throw new IllegalStateException("no scan yet");
    }
    return found;
  }

  Verdict last() {
    if (verdict == null) {
      throw new IllegalStateException("no scan yet");
    }
    return verdict;
  }

  /** Number of the last scan. */
  public long scanNumber() {
    return scan;
  }

  Set<WithheldReason> withheld() {
    return last().permission() instanceof Permission.Withheld w ? w.reasons() : Set.of();
  }

  @Nullable TripCause firstOut() {
    return state.latch().firstOut().orElse(null);
  }
}
