package trayward.controller.gpio;

import com.pi4j.context.Context;
import java.util.EnumMap;
import java.util.Map;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import trayward.controller.gpio.Pi4jLines.In;
import trayward.controller.gpio.Pi4jLines.Out;
import trayward.controller.port.Contact;
import trayward.controller.port.LineReader;
import trayward.controller.port.LineReadings;
import trayward.controller.port.MonotonicClock;
import trayward.controller.port.OutputLine;
import trayward.controller.port.OutputLines;

/**
 * All lines of a Pi. Made and closed by one thread; read and written by the scan thread; edges come
 * on threads of Pi4J's own, one for each input.
 *
 * <p>From its making until it is written, and again once it is closed, every output is inactive,
 * but for the fan, which closing leaves as it was. Whether the chip keeps a level after the program
 * has ended is the kernel's matter: closing is a courtesy, never the protection.
 */
public final class PiLines implements LineReader, AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(PiLines.class);

  private final Context context;
  private final MonotonicClock clock;
  private final Tachometer tachometer;
  private final Map<PiLine, Out> outputs = new EnumMap<>(PiLine.class);
  private final Map<PiLine, In> inputs = new EnumMap<>(PiLine.class);
  private final Map<PiLine, Press> presses = new EnumMap<>(PiLine.class);
  private boolean readable = true;
  private volatile boolean closed;

  /**
   * Takes the lines of this computer.
   *
   * @param wiring which function stands on which line
   * @param clock monotonic time, for the edges of the tachometer
   * @throws LineUnavailable with one sentence, where this is no Pi, it has no such chip, or a line
   *     is held by another program; no line is then kept
   */
  public static PiLines open(PiWiring wiring, MonotonicClock clock) {
    return new PiLines(Pi4jLines.context(), wiring, clock);
  }

  /** Takes lines of a context, outputs first; gives all back where one cannot be had. */
  PiLines(Context context, PiWiring wiring, MonotonicClock clock) {
    this.context = context;
    this.clock = clock;
    this.tachometer = new Tachometer(wiring.pulsesPerRevolution(), wiring.silenceMs());
    try {
      for (PiLine function : PiLine.values()) {
        wiring.wire(function).ifPresent(wire -> take(function, wire));
      }
    } catch (LineUnavailable e) {
      close();
      throw e;
    }
  }

  private void take(PiLine function, Wire wire) {
    if (function.output()) {
      outputs.put(function, Pi4jLines.output(context, function, wire));
      return;
    }
    In in = Pi4jLines.input(context, function, wire);
    inputs.put(function, in);
    Press press = press(function);
    switch (function.kind()) {
      case EDGES -> in.listen(this::turned);
      case PRESS, EXTRA_PRESS -> in.listen(press::edge);
      case CAUGHT -> in.listen(closed -> press.edge(!closed));
      case OUTPUT, EXTRA, LEVEL, READ_BACK -> {}
    }
  }

  private void turned(boolean active) {
    if (active) {
      tachometer.pulse(clock.nanos());
    }
  }

  private Press press(PiLine function) {
    return presses.computeIfAbsent(function, f -> new Press());
  }

  /** Pulses of the tachometer since the lines were taken. */
  public long tachometerPulses() {
    return tachometer.pulses();
  }

  @Override
  public LineReadings read(long nowNanos) {
    if (closed) {
      return LineReadings.ABSENT;
    }
    try {
      LineReadings readings =
          new LineReadings(
              true,
              level(PiLine.AIRFLOW),
              tachometer.rpm(nowNanos),
              !opened(PiLine.STOP_BUTTON),
              pressed(PiLine.RESET_BUTTON),
              pressed(PiLine.PRESENCE_BUTTON),
              pressed(PiLine.PEDAL),
              pressed(PiLine.START_BUTTON),
              contact(PiLine.HEATER_CONTACT),
              contact(PiLine.SAFETY_CONTACT));
      readable = true;
      return readings;
    } catch (RuntimeException e) {
      if (readable) {
        LOG.error("the lines cannot be read, every input counts as absent: {}", e.getMessage());
      }
      readable = false;
      return LineReadings.ABSENT;
    }
  }

  private boolean level(PiLine function) {
    In in = inputs.get(function);
    return in != null && in.active();
  }

  private boolean pressed(PiLine function) {
    return press(function).take(level(function));
  }

  /** A circuit that is open now, or was since the scan before. */
  private boolean opened(PiLine function) {
    boolean caught = press(function).take(false);
    return caught || !level(function);
  }

  private Contact contact(PiLine function) {
    if (!inputs.containsKey(function)) {
      return Contact.NOT_WIRED;
    }
    return level(function) ? Contact.CLOSED : Contact.OPEN;
  }

  /** The controller's output lines. A write that fails throws. */
  public OutputLines outputLines() {
    return new OutputLines(
        output(PiLine.HEATER_RELAY),
        output(PiLine.SAFETY_RELAY),
        output(PiLine.WATCHDOG_LINE),
        output(PiLine.FAN),
        output(PiLine.BUZZER),
        outputs.containsKey(PiLine.LAMP) ? output(PiLine.LAMP) : unwired -> {});
  }

  private OutputLine output(PiLine function) {
    Out out = outputs.get(function);
    if (out == null) {
      throw new IllegalStateException(function.words() + " is no output");
    }
    return active -> {
      if (closed) { // what a line given back would do is anybody's guess
        throw new IllegalStateException("the lines are given back");
      }
      out.write(active);
    };
  }

  /** Every output inactive but the fan, which stays; then the lines are given back. */
  @Override
  public void close() {
    if (closed) {
      return;
    }
    closed = true;
    outputs.forEach(
        (function, out) -> {
          if (function != PiLine.FAN) {
            quietly(() -> out.write(false));
          }
        });
    quietly(context::shutdown);
  }

  private static void quietly(Runnable step) {
    try {
      step.run();
    } catch (RuntimeException e) {
      LOG.error("while the lines are given back: {}", e.getMessage());
    }
  }
}
