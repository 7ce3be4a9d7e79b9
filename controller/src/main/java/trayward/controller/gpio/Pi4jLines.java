package trayward.controller.gpio;

import com.pi4j.context.Context;
import com.pi4j.exception.Pi4JException;
import com.pi4j.io.gpio.digital.DigitalInput;
import com.pi4j.io.gpio.digital.DigitalOutput;
import com.pi4j.io.gpio.digital.DigitalState;
import com.pi4j.io.gpio.digital.PullResistance;
import java.util.function.BooleanSupplier;
import trayward.controller.port.OutputLine;

/**
 * Single Pi4J lines behind the ports, with their polarity. The adapter that gathers them into a
 * whole set of inputs and outputs comes with the hardware.
 */
public final class Pi4jLines {

  private Pi4jLines() {}

  /**
   * An output, inactive at once.
   *
   * @param context a started Pi4J context
   * @param line number of the line on its chip
   * @param name what it drives, for messages
   * @param activeLow whether the line is low when active
   * @throws LineUnavailable where the line is held by another program or does not exist
   */
  public static OutputLine output(Context context, int line, String name, boolean activeLow) {
    DigitalState rest = activeLow ? DigitalState.HIGH : DigitalState.LOW;
    try {
      DigitalOutput output =
          context.create(
              DigitalOutput.newConfigBuilder(context)
                  .id(name)
                  .address(line)
                  .initial(rest)
                  .shutdown(rest)
                  .build());
      return active -> output.state(active == activeLow ? DigitalState.LOW : DigitalState.HIGH);
    } catch (Pi4JException e) {
      throw new LineUnavailable(name, line, e);
    }
  }

  /**
   * An input, read when asked.
   *
   * @param context a started Pi4J context
   * @param line number of the line on its chip
   * @param name what it senses, for messages
   * @param pull resistor of the line
   * @param activeLow whether the line is low when active
   * @param debounceMicros filter time, µs; 0 for a tachometer
   * @throws LineUnavailable where the line is held by another program or does not exist
   */
  public static BooleanSupplier input(
      Context context,
      int line,
      String name,
      PullResistance pull,
      boolean activeLow,
      long debounceMicros) {
    try {
      DigitalInput input =
          context.create(
              DigitalInput.newConfigBuilder(context)
                  .id(name)
                  .address(line)
                  .pull(pull)
                  .debounce(debounceMicros)
                  .build());
      return () -> input.state().isHigh() != activeLow;
    } catch (Pi4JException e) {
      throw new LineUnavailable(name, line, e);
    }
  }
}
