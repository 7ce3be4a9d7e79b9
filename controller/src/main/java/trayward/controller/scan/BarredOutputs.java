package trayward.controller.scan;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import trayward.controller.port.Contact;
import trayward.controller.port.LineReadings;
import trayward.controller.port.OutputLine;
import trayward.controller.port.OutputLines;

/**
 * Outputs one at a time, for commissioning, with heat barred. Beside the scan, and never together
 * with one, the only writer of outputs.
 *
 * <p>There is no permit of the interlock here because there is no heat: it needs both relays
 * closed, and what is wanted is one output or none, so no request for two can even be said (SR-01).
 * Each relay is closed alone, as the contact test of a purge does (SR-26), but for seconds, and
 * only after the other has been open for as long as its hardware takes to let go. The watchdog line
 * pulses only where it is tried itself or holds the safety relay in; while the heater relay is
 * closed it is silent, so that the hardware of SR-18 holds the safety relay open as well. The stop
 * circuit opens a relay at once (SR-14), and a contact that is read as closed keeps the other relay
 * open: it may be welded.
 *
 * <p>One thread steps; another may close.
 */
public final class BarredOutputs implements AutoCloseable {

  /** An output that can be tried. */
  public enum Output {
    /** The extraction fan. */
    FAN,
    /** The sounder. */
    BUZZER,
    /** The red lamp beside it. */
    LAMP,
    /** The pulse line alone. */
    WATCHDOG_LINE,
    /** The safety relay, and the pulses that hold it in. */
    SAFETY_RELAY,
    /** The heater relay, the pulse line silent. */
    HEATER_RELAY;

    boolean relay() {
      return this == SAFETY_RELAY || this == HEATER_RELAY;
    }
  }

  /** What became of a wish. */
  public enum Doing {
    /** Nothing is wanted, or everything has been closed for good. */
    OFF,
    /** It is on. */
    ON,
    /** It comes once the other relay has been open for long enough. */
    RESTING,
    /** It had its time. */
    OVER,
    /** The stop circuit is open, or no input answers. */
    STOPPED,
    /** The contact of the other relay reads as closed. */
    OTHER_CONTACT_CLOSED
  }

  /** Longest time a relay is closed: seen and heard, and even with a welded one no kettle boils. */
  public static final long RELAY_NANOS = TimeUnit.SECONDS.toNanos(5);

  /** Longest time of the others: a fan may take 15 s to its speed. */
  public static final long OTHERS_NANOS = TimeUnit.SECONDS.toNanos(60);

  /** The hardware lets go of the safety relay a second after the last pulse; twice that. */
  public static final long REST_NANOS = TimeUnit.SECONDS.toNanos(2);

  private final OutputLines outputs;
  private long heaterLastNanos;
  private long safetyLastNanos;
  private @Nullable Output wanted;
  private boolean begun;
  private boolean spent;
  private long sinceNanos;
  private boolean pulse;
  private boolean closed;

  /** All outputs, which are switched off. */
  public BarredOutputs(OutputLines outputs, long nowNanos) {
    this.outputs = outputs;
    // Whoever had the outputs before may have left a relay closed until now.
    this.heaterLastNanos = nowNanos;
    this.safetyLastNanos = nowNanos;
    allOff();
  }

  /**
   * Drives the outputs once; to be called ten times a second.
   *
   * @param want the one output that is to be on, or none
   * @param in inputs of this moment
   * @param nowNanos monotonic time
   */
  public synchronized Doing step(Optional<Output> want, LineReadings in, long nowNanos) {
    if (closed) {
      return Doing.OFF;
    }
    try {
      Output now = want.orElse(null);
      if (now != wanted) {
        wanted = now;
        begun = false;
        spent = false;
      }
      Doing doing = now == null ? Doing.OFF : judge(now, in, nowNanos);
      write(doing == Doing.ON ? now : null, nowNanos);
      return doing;
    } catch (RuntimeException e) {
      close();
      throw e;
    }
  }

  private Doing judge(Output now, LineReadings in, long nowNanos) {
    if (spent) {
      return Doing.OVER;
    }
    if (now.relay() && !(in.present() && in.stopCircuitClosed())) {
      spent = true; // it must be wanted anew: releasing the stop closes nothing
      return Doing.STOPPED;
    }
    Contact other = now == Output.HEATER_RELAY ? in.safetyContact() : in.heaterContact();
    if (now.relay() && other == Contact.CLOSED) {
      spent = true;
      return Doing.OTHER_CONTACT_CLOSED;
    }
    if (!begun && now.relay() && nowNanos - otherLastNanos(now) < REST_NANOS) {
      return Doing.RESTING;
    }
    if (!begun) {
      begun = true;
      sinceNanos = nowNanos;
    }
    spent = nowNanos - sinceNanos > (now.relay() ? RELAY_NANOS : OTHERS_NANOS);
    return spent ? Doing.OVER : Doing.ON;
  }

  /** When the other relay was last closed, or held in by a pulse. */
  private long otherLastNanos(Output now) {
    return now == Output.HEATER_RELAY ? safetyLastNanos : heaterLastNanos;
  }

  /** Opens before it closes. */
  private void write(@Nullable Output on, long nowNanos) {
    if (on != Output.HEATER_RELAY) {
      outputs.heaterRelay().write(false);
    }
    if (on != Output.SAFETY_RELAY) {
      outputs.safetyRelay().write(false);
    }
    outputs.fan().write(on == Output.FAN);
    outputs.buzzer().write(on == Output.BUZZER);
    outputs.lamp().write(on == Output.LAMP);
    if (on == Output.WATCHDOG_LINE || on == Output.SAFETY_RELAY) {
      safetyLastNanos = nowNanos;
      pulse = !pulse;
      outputs.watchdogLine().write(pulse);
    }
    if (on == Output.SAFETY_RELAY) {
      outputs.safetyRelay().write(true);
    }
    if (on == Output.HEATER_RELAY) {
      heaterLastNanos = nowNanos;
      outputs.heaterRelay().write(true);
    }
  }

  /** Switches everything off, each even where another fails, and for good. */
  @Override
  public synchronized void close() {
    closed = true;
    allOff();
  }

  private void allOff() {
    RuntimeException failed = null;
    for (OutputLine line :
        List.of(
            outputs.heaterRelay(),
            outputs.safetyRelay(),
            outputs.watchdogLine(),
            outputs.fan(),
            outputs.buzzer(),
            outputs.lamp())) {
      try {
        line.write(false);
      } catch (RuntimeException e) { // the others all the same
        failed = e;
      }
    }
    if (failed != null) {
      throw failed;
    }
  }
}
