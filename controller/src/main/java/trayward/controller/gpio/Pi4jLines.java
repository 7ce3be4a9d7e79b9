package trayward.controller.gpio;

import com.pi4j.context.Context;
import com.pi4j.io.gpio.digital.DigitalInput;
import com.pi4j.io.gpio.digital.DigitalOutput;
import com.pi4j.io.gpio.digital.DigitalState;

/** Single Pi4J lines with their polarity. Any thread. */
final class Pi4jLines {

  private Pi4jLines() {}

  /**
   * An output, inactive at once.
   *
   * @throws LineUnavailable where the line is held by another program or does not exist
   */
  static DigitalOutput output(Context context, PiLine function, Wire wire) {
    try {
      return context.create(
          DigitalOutput.newConfigBuilder(context)
              .id(function.key())
              .address(wire.line())
              .initial(level(wire, false))
              .build());
    } catch (RuntimeException | LinkageError e) {
      throw LineUnavailable.line(function.words(), wire.line(), e);
    }
  }

  /**
   * An input.
   *
   * @throws LineUnavailable where the line is held by another program or does not exist
   */
  static DigitalInput input(Context context, PiLine function, Wire wire) {
    try {
      // Debounce is always said: what Pi4J takes by itself loses nearly every pulse of a fan.
      return context.create(
          DigitalInput.newConfigBuilder(context)
              .id(function.key())
              .address(wire.line())
              .pull(wire.pull().resistance())
              .debounce((long) wire.debounceMicros())
              .build());
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
