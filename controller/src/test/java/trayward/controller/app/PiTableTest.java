package trayward.controller.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.gpio.PiLine;
import trayward.controller.gpio.PiWiring;
import trayward.controller.gpio.Pull;
import trayward.controller.gpio.Wire;

/** SR-19 for the lines of a Pi. */
class PiTableTest {

  @TempDir Path folder;

  private Settings read(String lines) throws ConfigRefused, IOException {
    String io = "[io]\nkind = 'pi'\nonewire_root = '%s'\n".formatted(folder);
    String probes = "[probes]\nbath = '28-0123456789ab'\n";
    String log = "[log]\nfolder = '%s'\n".formatted(folder);
    return Settings.read(Files.writeString(folder.resolve("tray.toml"), io + probes + log + lines));
  }

  private PiWiring wiring(String lines) throws ConfigRefused, IOException {
    return assertInstanceOf(Settings.Io.Pi.class, read(lines).io()).wiring();
  }

  private String refused(String lines) {
    return Refused.line(() -> read(lines));
  }

  @Test
  @Verifies(value = "SR-19", side = Side.ALLOWS)
  void withoutATableOfLinesThePiHasTheDefaultOnes() throws Exception {
    Settings settings = read("");
    assertEquals(new Settings.Io.Pi(folder, PiWiring.standard()), settings.io());
    assertTrue(settings.io().outside());
    assertFalse(settings.plateFitted(), "the plate probe is fitted where it is named");
    assertEquals(settings.probes().names(), settings.fittedProbes());
  }

  @Test
  @Verifies(value = "SR-19", side = Side.ALLOWS)
  void everyLineMayStandElsewhere() throws Exception {
    StringBuilder lines = new StringBuilder();
    Map<PiLine, Wire> expected = new EnumMap<>(PiLine.class);
    int line = 30;
    for (PiLine function : PiLine.values()) {
      line++;
      lines.append("[lines.").append(function.key()).append("]\nline = ").append(line).append('\n');
      boolean low = function.output();
      lines.append("active = '").append(low ? "low" : "high").append("'\n");
      if (!function.output()) {
        lines.append("pull = 'down'\n");
      }
      if (function.debounced()) {
        lines.append("debounce_us = 2500\n");
      }
      if (function == PiLine.TACHOMETER) {
        lines.append("pulses_per_revolution = 4\nsilence_ms = 800\n");
      }
      Pull pull = function.output() ? Pull.OFF : Pull.DOWN;
      expected.put(function, new Wire(line, low, pull, function.debounced() ? 2500 : 0));
    }
    assertEquals(new PiWiring(expected, 4, 800), wiring(lines.toString()));
  }

  @Test
  @Verifies(value = "SR-19", side = Side.ALLOWS)
  void aTableMayStandInOneLineAndReadBackIsThereWhereItsTableIs() throws Exception {
    PiWiring wiring = wiring("[lines]\nfan = { line = 12 }\nheater_contact = {}\n");
    assertEquals(new Wire(12, false, Pull.OFF, 0), wiring.wire(PiLine.FAN).orElseThrow());
    assertEquals(
        PiLine.HEATER_CONTACT.standard(), wiring.wire(PiLine.HEATER_CONTACT).orElseThrow());
    assertTrue(wiring.wire(PiLine.SAFETY_CONTACT).isEmpty());
  }

  @Test
  @Verifies(value = "SR-19", side = Side.WITHHOLDS)
  void twoFunctionsOnOneLineAreRefusedAndBothAreNamed() {
    Refused.names(
        refused("[lines]\nfan = { line = 17 }\n"),
        "tray.toml: lines.fan.line: found 17",
        "lines.heater_relay");
    Refused.names(
        refused("[lines]\nheater_relay = { line = 5 }\n"),
        "lines.airflow.line: found 5",
        "lines.heater_relay");
  }

  @ParameterizedTest
  @ValueSource(strings = {"-1", "58", "17.5", "'GPIO17'"})
  @Verifies(value = "SR-19", side = Side.WITHHOLDS)
  void aLineIsAWholeNumberFromNoughtToFiftySeven(String line) {
    Refused.names(
        refused("[lines.fan]\nline = " + line + "\n"),
        "lines.fan.line",
        "a whole number from 0 to 57");
  }

  @ParameterizedTest
  @ValueSource(strings = {"stop_button", "airflow"})
  @Verifies(value = "SR-19", side = Side.WITHHOLDS)
  void whereABrokenWireMustReadOpenNoOtherPullIsTaken(String key) {
    for (String pull : new String[] {"down", "off"}) {
      Refused.names(
          refused("[lines." + key + "]\npull = '" + pull + "'\n"),
          "lines." + key + ".pull",
          "'" + pull + "'",
          "accepted is up where active is low",
          "a broken wire");
    }
    Refused.names(
        refused("[lines." + key + "]\nactive = 'high'\npull = 'up'\n"),
        "accepted is down where active is high");
  }

  @Test
  @Verifies(value = "SR-19", side = Side.WITHHOLDS)
  void aButtonMayHaveAResistorOutsideAndNeverOneThatPressesIt() throws Exception {
    assertEquals(
        Pull.OFF, wiring("[lines.pedal]\npull = 'off'\n").wire(PiLine.PEDAL).orElseThrow().pull());
    Refused.names(
        refused("[lines.pedal]\npull = 'down'\n"), "accepted is up or off where active is low");
  }

  @Test
  @Verifies(value = "SR-19", side = Side.WITHHOLDS)
  void whatALineDoesNotHaveIsAnUnknownKey() {
    for (String line :
        new String[] {
          "[lines.tachometer]\ndebounce_us = 0\n",
          "[lines.airflow]\ndebounce_us = 0\n",
          "[lines.fan]\npull = 'up'\n",
          "[lines.pedal]\npulses_per_revolution = 2\n",
          "[lines.kettle]\nline = 12\n"
        }) {
      Refused.names(refused(line), "unknown key lines.");
    }
    Refused.names(refused("[lines.pedal]\ndebounce_us = 50001\n"), "lines.pedal.debounce_us");
    Refused.names(
        refused("[lines.tachometer]\nsilence_ms = 1001\n"), "lines.tachometer.silence_ms");
    Refused.names(
        refused("[lines.tachometer]\npulses_per_revolution = 0\n"),
        "lines.tachometer.pulses_per_revolution");
    Refused.names(refused("[lines.pedal]\nactive = 'on'\n"), "lines.pedal.active", "high or low");
  }

  @Test
  @Verifies(value = "SR-19", side = Side.WITHHOLDS)
  void aPiNeedsABathProbeAndTheFolderOfItsBus() throws Exception {
    String noProbe = "[io]\nkind = 'pi'\nonewire_root = '%s'\n".formatted(folder);
    Path file = Files.writeString(folder.resolve("bare.toml"), noProbe);
    Refused.names(Refused.line(() -> Settings.read(file)), "probes.bath", "found nothing");
    assumeFalse(Files.isDirectory(Path.of("/sys/bus/w1/devices")));
    Path bare = Files.writeString(folder.resolve("bare.toml"), "[io]\nkind = 'pi'\n");
    Refused.names(
        Refused.line(() -> Settings.read(bare)),
        "io.onewire_root",
        "/sys/bus/w1/devices",
        "exists");
  }

  @Test
  @Verifies(value = "SR-19", side = Side.WITHHOLDS)
  void onAComputerThatIsNoPiTheControllerIsRefusedInOneLine() throws Exception {
    assumeFalse(Files.readString(Path.of("/proc/cpuinfo")).contains("Revision"));
    Settings settings = read("");
    String line =
        Refused.line(
            () -> new ControllerRuntime(settings, () -> 0, () -> 0, failure -> {}).close());
    assertEquals(
        "io.kind = \"pi\": this computer is not known as a Pi, so it has no such lines", line);
  }
}
