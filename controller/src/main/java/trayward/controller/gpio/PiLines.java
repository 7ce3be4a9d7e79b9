package trayward.controller.gpio;

import com.pi4j.Pi4J;
import com.pi4j.boardinfo.util.BoardInfoHelper;
import com.pi4j.context.Context;
import com.pi4j.io.gpio.digital.DigitalInput;
import com.pi4j.io.gpio.digital.DigitalOutput;
import com.pi4j.io.gpio.digital.DigitalState;
import com.pi4j.library.gpiod.internal.GpioDContext;
import com.pi4j.plugin.gpiod.provider.gpio.digital.GpioDDigitalOutputProvider;
import java.util.EnumMap;
import java.util.Map;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
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

  private record In(Wire wire, DigitalInput line) {
    boolean active() {
      return Pi4jLines.active(wire, line.state());
    }
  }

  private record Out(Wire wire, DigitalOutput line) {
    void write(boolean active) {
      line.state(Pi4jLines.level(wire, active));
    }
  }

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
    if (!BoardInfoHelper.runningOnRaspberryPi()) {
      throw LineUnavailable.noPi();
    }
    Context context;
    try {
      // Asked first and by itself: Pi4J's own start would only log what is wrong with the chip.
      GpioDContext.getInstance().initialize();
      context =
          Pi4J.newContextBuilder()
              .add(GpioDDigitalOutputProvider.newInstance())
              .add(new SureInputs())
              .build();
    } catch (RuntimeException | LinkageError e) {
      throw LineUnavailable.chip(e);
    }
    return new PiLines(context, wiring, clock);
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
      outputs.put(function, new Out(wire, Pi4jLines.output(context, function, wire)));
      return;
    }
    DigitalInput line = Pi4jLines.input(context, function, wire);
    inputs.put(function, new In(wire, line));
    switch (function.kind()) {
      case EDGES -> listen(line, wire, this::turned);
      case PRESS -> listen(line, wire, press(function)::edge);
      case CAUGHT -> listen(line, wire, closed -> press(function).edge(!closed));
      case OUTPUT, LEVEL, READ_BACK -> {}
    }
  }

  private static void listen(DigitalInput line, Wire wire, Consumer<Boolean> edge) {
    line.addListener(
        event -> {
          if (event.state() != DigitalState.UNKNOWN) {
            edge.accept(Pi4jLines.active(wire, event.state()));
          }
        });
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
        output(PiLine.BUZZER));
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
