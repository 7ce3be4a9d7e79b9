package trayward.controller.gpio;

import com.pi4j.Pi4J;
import com.pi4j.boardinfo.util.BoardInfoHelper;
import com.pi4j.context.Context;
import com.pi4j.io.gpio.digital.DigitalInput;
import com.pi4j.io.gpio.digital.DigitalOutput;
import com.pi4j.io.gpio.digital.DigitalState;
import com.pi4j.library.gpiod.internal.GpioDContext;
import com.pi4j.plugin.gpiod.provider.gpio.digital.GpioDDigitalOutputProvider;
import java.util.function.Consumer;

/** Single Pi4J lines with their polarity. Any thread. */
final class Pi4jLines {

  /** An input with its polarity. */
  record In(Wire wire, DigitalInput line) {
    /** Whether it is active now; throws where it cannot be read. */
    boolean active() {
      return Pi4jLines.active(wire, line.state());
    }

    /** Tells each edge, by whether the line became active, on a thread of Pi4J's. */
    void listen(Consumer<Boolean> edge) {
      line.addListener(
          event -> {
            if (event.state() != DigitalState.UNKNOWN) {
              edge.accept(Pi4jLines.active(wire, event.state()));
            }
          });
    }
  }

  /** An output with its polarity. */
  record Out(Wire wire, DigitalOutput line) {
    /** Drives it; throws where it cannot. */
    void write(boolean active) {
      line.state(level(wire, active));
    }
  }

  private Pi4jLines() {}

  /**
   * Pi4J over this computer's chip, with nothing found by searching the class path.
   *
   * @throws LineUnavailable where this is no Pi, or it has no such chip
   */
  static Context context() {
    if (!BoardInfoHelper.runningOnRaspberryPi()) {
      throw LineUnavailable.noPi();
    }
    try {
      // Asked first and by itself: Pi4J's own start would only log what is wrong with the chip.
      GpioDContext.getInstance().initialize();
      return Pi4J.newContextBuilder()
          .add(GpioDDigitalOutputProvider.newInstance())
          .add(new SureInputs())
          .build();
    } catch (RuntimeException | LinkageError e) {
      throw LineUnavailable.chip(e);
    }
  }

  /**
   * An output, inactive at once.
   *
   * @throws LineUnavailable where the line is held by another program or does not exist
   */
  static Out output(Context context, PiLine function, Wire wire) {
    try {
      DigitalOutput line =
          context.create(
              DigitalOutput.newConfigBuilder(context)
                  .id(function.key())
                  .address(wire.line())
                  .initial(level(wire, false))
                  .build());
      return new Out(wire, line);
    } catch (RuntimeException | LinkageError e) {
      throw LineUnavailable.line(function.words(), wire.line(), e);
    }
  }

  /**
   * An input.
   *
   * @throws LineUnavailable where the line is held by another program or does not exist
   */
  static In input(Context context, PiLine function, Wire wire) {
    try {
      // Debounce is always said: what Pi4J takes by itself loses nearly every pulse of a fan.
      DigitalInput line =
          context.create(
              DigitalInput.newConfigBuilder(context)
                  .id(function.key())
                  .address(wire.line())
                  .pull(wire.pull().resistance())
                  .debounce((long) wire.debounceMicros())
                  .build());
      return new In(wire, line);
    } catch (RuntimeException | LinkageError e) {
      throw LineUnavailable.line(function.words(), wire.line(), e);
    }
  }

  /** The level that means active, or not. */
  static DigitalState level(Wire wire, boolean active) {
    return active == wire.activeLow() ? DigitalState.LOW : DigitalState.HIGH;
  }

  /**
   * What a level means.
   *
   * @throws IllegalStateException where it is neither high nor low
   */
  static boolean active(Wire wire, DigitalState state) {
    return switch (state) {
      case HIGH -> !wire.activeLow();
      case LOW -> wire.activeLow();
      case UNKNOWN -> throw new IllegalStateException("line " + wire.line() + " has no level");
    };
  }
}
