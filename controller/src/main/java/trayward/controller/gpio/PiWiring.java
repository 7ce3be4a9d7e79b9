package trayward.controller.gpio;

import java.util.Collections;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Which function stands on which line. Immutable.
 *
 * @param wires each function that is wired; all but read-back, lamp and start button must be
 * @param pulsesPerRevolution pulses of the tachometer for one turn, 1 to {@value #MOST_PULSES}
 * @param silenceMs the fan counts as standing after this long without a pulse, ms, {@value
 *     #LEAST_SILENCE_MS} to {@value #MOST_SILENCE_MS}
 */
public record PiWiring(Map<PiLine, Wire> wires, int pulsesPerRevolution, int silenceMs) {

  /** Common practice of small fans. */
  public static final int STANDARD_PULSES = 2;

  /** More than any fan's own sensor gives. */
  public static final int MOST_PULSES = 12;

  /** Half of what SR-05 allows; a fan of two pulses still shows 60 revolutions a minute. */
  public static final int STANDARD_SILENCE_MS = 500;

  /** Shorter than two scans a slow pulse would read as standing. */
  public static final int LEAST_SILENCE_MS = 200;

  /** SR-05: heat is off within a second. */
  public static final int MOST_SILENCE_MS = 1000;

  /** Checks that every needed function is wired, each to a line of its own. */
  public PiWiring {
    wires = Collections.unmodifiableMap(new EnumMap<>(wires));
    if (pulsesPerRevolution < 1 || pulsesPerRevolution > MOST_PULSES) {
      throw new IllegalArgumentException("pulses per revolution: " + pulsesPerRevolution);
    }
    if (silenceMs < LEAST_SILENCE_MS || silenceMs > MOST_SILENCE_MS) {
      throw new IllegalArgumentException("silence of the tachometer, ms: " + silenceMs);
    }
    Map<Integer, PiLine> taken = new HashMap<>();
    for (PiLine function : PiLine.values()) {
      Wire wire = wires.get(function);
      if (wire == null && !function.optional()) {
        throw new IllegalArgumentException(function.words() + " has no line");
      }
      PiLine other = wire == null ? null : taken.put(wire.line(), function);
      if (other != null) {
        throw new IllegalArgumentException(other.words() + " and " + function.words());
      }
    }
  }

  /** The default lines, without read-back, lamp and start button. */
  public static PiWiring standard() {
    Map<PiLine, Wire> wires = new EnumMap<>(PiLine.class);
    for (PiLine function : PiLine.values()) {
      if (!function.optional()) {
        wires.put(function, function.standard());
      }
    }
    return new PiWiring(wires, STANDARD_PULSES, STANDARD_SILENCE_MS);
  }

  /** How a function is wired; empty where it is left out. */
  public Optional<Wire> wire(PiLine function) {
    return Optional.ofNullable(wires.get(function));
  }
}
