package trayward.controller.gpio;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import trayward.controller.PrintedNote;

/** The table of lines in code, and where they come out on the header, are those in the notes. */
class LinesNoteTest {

  private static final Path NOTE = Path.of("..", "hardware-notes", "lines.md");

  /** What comes out at pins 1 to 40: a line's number, or a word. From memory of the header. */
  private static final List<String> HEADER =
      List.of(
          "3.3 V", "5 V", "2", "5 V", "3", "ground", "4", "14", "ground", "15", //
          "17", "18", "27", "ground", "22", "23", "3.3 V", "24", "10", "ground", //
          "9", "25", "11", "8", "ground", "7", "0", "1", "5", "ground", //
          "6", "12", "13", "ground", "19", "16", "26", "20", "ground", "21");

  private static Optional<PiLine> at(String pin) {
    return Arrays.stream(PiLine.values())
        .filter(f -> pin.equals(Integer.toString(f.standard().line())))
        .findFirst();
  }

  private static String name(String pin) {
    String line = Character.isDigit(pin.charAt(0)) && !pin.endsWith("V") ? "line " + pin : pin;
    String use =
        at(pin)
            .map(f -> f.words() + (f.optional() ? " *" : ""))
            .orElse(pin.equals("4") ? "probes (1-Wire)" : "");
    return use.isEmpty() ? line : line + "  " + use;
  }

  private static String header() {
    StringBuilder out = new StringBuilder();
    for (int pin = 1; pin <= 40; pin += 2) {
      String left = name(HEADER.get(pin - 1));
      int gap = left.indexOf("  ");
      String mirrored = gap < 0 ? left : left.substring(gap + 2) + "  " + left.substring(0, gap);
      String row =
          String.format(
              Locale.ROOT, "%34s | %2d  %-2d | %s", mirrored, pin, pin + 1, name(HEADER.get(pin)));
      out.append("    ").append(row.stripTrailing()).append('\n');
    }
    return out.toString();
  }

  private static String level(Wire wire) {
    return wire.activeLow() ? "low" : "high";
  }

  private static String printed() {
    StringBuilder out = new StringBuilder();
    out.append("# Lines\n\n");
    out.append("Printed from the table in code (`trayward.controller.gpio.PiLine`): the lines");
    out.append(" of `kind = \"pi\"` where the\nconfiguration says nothing else. Each is a table");
    out.append(" of `[lines]`, with `line`, `active`, and for an input `pull`.\n");
    out.append("**Everything here is low voltage, 3.3 V; no line may ever see more.** A line");
    out.append(" drives the input of a relay module or of\na transistor, never a coil. Whatever");
    out.append(" the relays switch belongs to a licensed person under local codes.\n\n");
    out.append("| key | line | pin | direction | active | pull | debounce | what |\n");
    out.append("|---|---|---|---|---|---|---|---|\n");
    for (PiLine function : PiLine.values()) {
      Wire wire = function.standard();
      int pin = HEADER.indexOf(Integer.toString(wire.line())) + 1;
      out.append("| `").append(function.key()).append("` | ").append(wire.line());
      out.append(" | ").append(pin).append(" | ").append(function.output() ? "output" : "input");
      out.append(" | ").append(level(wire)).append(" | ");
      out.append(function.output() ? "" : wire.pull().word()).append(" | ");
      out.append(function.debounced() ? wire.debounceMicros() + " µs" : "");
      out.append(" | ").append(function.meaning()).append(" |\n");
    }
    out.append("\nThe header, seen from above with pin 1 at the top left. * only where the");
    out.append(" configuration has its table.\n\n");
    out.append(header());
    out.append("\nLines 2, 3 (I2C), 7 to 11 (SPI), 14, 15 (serial port), 0 and 1 (identification)");
    out.append(" are left free, and line 4 to\nthe probes.\n\n");
    out.append(WORDS);
    return out.toString();
  }

  private static final String WORDS =
      """
      ## Why so

      - **Relays are active high** and stand on lines that the chip holds low from power-up until a
        program takes them. Put a resistor of 10 kΩ to ground at each relay input all the same, so
        that a wire that falls off opens the relay. A relay module that is active low closes at
        power-up on these lines: use it only with a resistor to its supply.
      - **A killed program may leave a relay closed.** Nobody promises what the chip does with the
        level of a line when its program is killed; many kernels keep it. The hardware behind
        `watchdog_line` must drop the safety relay within 2 s of the last change (SR-18), and
        nothing else protects there.
      - **Contacts close to ground** and the chip's resistor pulls the open line up. A broken wire
        reads as an open contact: no air, stop pressed, nobody at a button. A wire pinched to ground
        reads as a closed contact: for air, the look at power-up finds it (SR-03); for stop, press
        it once before each session and see *stop* on the page. The hard-wired stop does not depend
        on this line.
      - **The tachometer** of most fans is an open collector, two pulses a turn. `pulses_per_revolution`
        (1 to 12) and `silence_ms` (200 to 1000, no pulse for this long: it stands) are keys of its
        table. It has no debounce, because that loses pulses.
      - `debounce_us` (0 to 50000) is how long a button must stand still before its press counts. Stop
        acts at once when a scan sees it open; the debounce concerns only a press between two scans.
      - **A start button** is read only where it has its table, `start_button = {}` at the least. Where no
        page stands at the tray (`host_at_tray = false`) it is the only start. Wire it where nobody
        leans on it, within sight of the tray, and away from the reset button.
      - The fan line is left as it was when the program ends in order. Only hardware can promise that
        the fan then runs on.
      """;

  @Test
  void theNotesSayWhatTheCodeSays() throws IOException {
    PrintedNote.assertSays(printed(), NOTE);
  }

  @Test
  void everyDefaultLineComesOutOnTheHeader() {
    Set<Integer> lines = new HashSet<>();
    for (String pin : HEADER) {
      if (pin.chars().allMatch(Character::isDigit)) {
        assertTrue(lines.add(Integer.parseInt(pin)), pin);
      }
    }
    assertEquals(40, HEADER.size());
    assertEquals(28, lines.size(), "0 to 27");
    for (PiLine function : PiLine.values()) {
      assertTrue(lines.contains(function.standard().line()), function.key());
    }
  }
}
