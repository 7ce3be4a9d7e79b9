package trayward.controller.app;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import trayward.controller.gpio.PiLine;
import trayward.controller.gpio.PiWiring;
import trayward.controller.gpio.Pull;
import trayward.controller.gpio.Wire;

/**
 * The {@code [lines]} table: one table for each line, with number, polarity, pull and debounce.
 * What is left out is as in {@link PiLine#standard}; read-back and lamp are wired only where their
 * tables are.
 */
final class PiTable {

  private static final List<String> LEVELS = List.of("high", "low");

  private PiTable() {}

  static PiWiring read(Section lines) throws ConfigRefused {
    Map<PiLine, Wire> wires = new EnumMap<>(PiLine.class);
    Map<Integer, PiLine> taken = new HashMap<>();
    int pulses = PiWiring.STANDARD_PULSES;
    int silenceMs = PiWiring.STANDARD_SILENCE_MS;
    for (PiLine function : PiLine.values()) {
      Section table = lines.table(function.key());
      if (function == PiLine.TACHOMETER) {
        pulses = table.whole("pulses_per_revolution", pulses, 1, PiWiring.MOST_PULSES);
        silenceMs =
            table.whole(
                "silence_ms", silenceMs, PiWiring.LEAST_SILENCE_MS, PiWiring.MOST_SILENCE_MS);
      }
      if (function.optional() && !table.present()) {
        continue;
      }
      Wire wire = wire(table, function);
      PiLine other = taken.put(wire.line(), function);
      if (other != null) {
        throw table.refuse(
            "line",
            Integer.toString(wire.line()),
            "a line that lines." + other.key() + " has not taken");
      }
      wires.put(function, wire);
    }
    lines.done();
    return new PiWiring(wires, pulses, silenceMs);
  }

  private static Wire wire(Section table, PiLine function) throws ConfigRefused {
    Wire standard = function.standard();
    int line = table.whole("line", standard.line(), 0, Wire.MOST_LINE);
    String active = table.oneOf("active", standard.activeLow() ? "low" : "high", LEVELS);
    boolean activeLow = active.equals("low");
    Pull pull = function.output() ? Pull.OFF : pull(table, function, activeLow);
    int micros = standard.debounceMicros();
    if (function.debounced()) {
      micros = table.whole("debounce_us", micros, 0, Wire.MOST_DEBOUNCE_MICROS);
    }
    table.done();
    return new Wire(line, activeLow, pull, micros);
  }

  /** The resistor holds an open contact inactive, so that a broken wire never proves anything. */
  private static Pull pull(Section table, PiLine function, boolean activeLow) throws ConfigRefused {
    Pull away = activeLow ? Pull.UP : Pull.DOWN;
    String word = table.oneOf("pull", away.word(), Pull.words());
    Pull pull = Pull.of(word).orElse(away);
    if (pull != away && (pull != Pull.OFF || function.mustPull())) {
      throw table.refuse(
          "pull",
          "'" + word + "'",
          away.word()
              + (function.mustPull() ? "" : " or off")
              + " where active is "
              + (activeLow ? "low" : "high")
              + ": a broken wire must read as an open contact");
    }
    return pull;
  }
}
