package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import trayward.controller.event.Alarm;
import trayward.controller.event.AlarmCause;
import trayward.controller.event.TripCause;

/**
 * What must hold after every scan whatever the inputs, judged from inputs and outputs by the words
 * of the requirements and default limits, with counts of its own.
 */
final class Oracle {

  private State state;
  private Optional<TripCause> firstOut = Optional.empty();
  private boolean fanBefore;
  private boolean startedByAPerson;
  private int provenMs = -1;
  private int purgeMs;
  private int badMs;
  private boolean bathRead;

  /** Scans in which heat was permitted. */
  int heated;

  /** Lockouts entered. */
  int lockouts;

  Oracle(State powerUp) {
    this.state = powerUp;
  }

  private static boolean proves(Proof proof) {
    return proof == Proof.PRESENT || proof == Proof.NOT_FITTED;
  }

  void judge(InterlockInputs in, Verdict verdict, String where) {
    boolean air = proves(in.airflow()) && proves(in.tachometer());
    provenMs = !air ? -1 : provenMs < 0 ? 0 : provenMs + in.elapsedMs();
    boolean bathBad = !in.bath().valid() || (in.secondBath().fitted() && !in.secondBath().valid());
    badMs = bathBad ? badMs + in.elapsedMs() : 0;
    bathRead |= in.bath().valid();
    State now = verdict.next().state();
    moved(in, verdict, now, where);
    if (verdict.permitted()) {
      heated++;
      permitted(in, verdict, air, where);
    } else {
      assertTrue(!(now == State.HEATING || now == State.HOLDING), where);
    }
    Optional<TripCause> first = verdict.next().latch().firstOut();
    assertEquals(now == State.LOCKOUT, first.isPresent(), where + ": latch and LOCKOUT are one");
    assertTrue(firstOut.isEmpty() || first.isEmpty() || firstOut.equals(first), where);
    assertEquals(
        first.map(cause -> (AlarmCause) cause),
        verdict.alarms().stream()
            .map(Alarm::cause)
            .filter(cause -> cause instanceof TripCause)
            .findFirst(),
        where);
    assertTrue(!verdict.safetyRelay() || now.purged(), where);
    firstOut = first;
    fanBefore = verdict.fan();
    state = now;
  }

  /** SR-12, SR-13, SR-02, SR-04: how states may follow each other. */
  private void moved(InterlockInputs in, Verdict verdict, State now, String where) {
    boolean started =
        in.requests().contains(Request.START) && !verdict.refused().containsKey(Request.START);
    boolean reset =
        in.requests().contains(Request.RESET) && !verdict.refused().containsKey(Request.RESET);
    if (state == State.LOCKOUT && now != State.LOCKOUT) {
      assertTrue(reset && now == State.OFF && in.atTray(), where + ": left LOCKOUT for " + now);
    }
    if (now == State.LOCKOUT && state != State.LOCKOUT) {
      lockouts++;
    }
    boolean rest = state == State.OFF || state == State.AFTER_RUN;
    if (now.inRun() && rest) {
      assertTrue(started && now == State.PROVING, where + ": a run began without a start");
      startedByAPerson = true;
    }
    if (!now.inRun()) {
      startedByAPerson = false;
    }
    if (now == State.PURGING && state != State.PURGING) {
      assertTrue(state == State.PROVING && provenMs >= 5000 && fanBefore, where + ": proving");
      purgeMs = 0;
    } else if (state == State.PURGING) {
      purgeMs += in.elapsedMs();
    }
    if (now.purged() && !state.purged()) {
      assertTrue(state == State.PURGING && purgeMs >= 60_000, where + ": purge");
      assertTrue(provenMs >= 65_000, where + ": proven for " + provenMs + " ms");
    }
  }

  /** SR-01 and what it gathers. */
  private void permitted(InterlockInputs in, Verdict verdict, boolean air, String where) {
    State now = verdict.next().state();
    assertTrue(now == State.HEATING || now == State.HOLDING, where);
    assertTrue(startedByAPerson, where + ": heat without a start");
    assertTrue(!verdict.next().latch().holds(), where + ": heat under a latch");
    assertTrue(air, where + ": heat without a proof in this scan");
    assertTrue(verdict.fan() && fanBefore, where + ": heat without the fan commanded");
    assertTrue(bathRead && badMs < 3000, where + ": heat without a known bath");
    assertTrue(in.bath().celsius() <= in.setC() + 0.5, where + ": heat above set");
    assertTrue(
        !in.secondBath().valid() || in.secondBath().celsius() <= in.setC() + 0.5,
        where + ": heat above set by the second probe");
    assertTrue(!in.plate().valid() || in.plate().celsius() < 72, where + ": heat, plate hot");
    assertTrue(in.stopCircuitClosed(), where + ": heat with an open stop circuit");
    assertTrue(!in.requests().contains(Request.STOP), where + ": heat in the scan of a stop");
    assertTrue(in.storeWritable(), where + ": heat without a record");
    assertTrue(in.lateMs() < 200, where + ": heat in a late scan");
    assertTrue(in.hostSilentMs() < 60_000, where + ": heat without the host");
    assertTrue(in.findings().isEmpty(), where + ": heat with a finding");
  }
}
