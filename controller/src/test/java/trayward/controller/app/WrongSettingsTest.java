package trayward.controller.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;

/** SR-19: each wrong key, type and value makes one line with file, key, found and accepted. */
class WrongSettingsTest {

  @TempDir Path folder;

  private String config(String toml) {
    return Refused.line(() -> Settings.read(file(toml)));
  }

  private String scenario(String toml) {
    return Refused.line(() -> Scenario.read(file(toml)));
  }

  private Path file(String toml) throws IOException {
    return Files.writeString(folder.resolve("f.toml"), toml);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "io",
        "probes",
        "tray",
        "room",
        "fan",
        "model",
        "bath_probe",
        "second_bath_probe",
        "plate_probe",
        "control",
        "limits",
        "server",
        "log",
        "link",
        "watchdog"
      })
  @Verifies(value = "SR-19", side = Side.WITHHOLDS)
  void anUnknownKeyInAnyTableOfAConfigurationIsRefused(String table) {
    String line = config("[" + table + "]\nheater_power = 300\n");
    Refused.names(line, "f.toml", "unknown key " + table + ".heater_power", "300", "accepted is");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "tray",
        "room",
        "fan",
        "model",
        "bath_probe",
        "second_bath_probe",
        "plate_probe",
        "control",
        "limits"
      })
  @Verifies(value = "SR-19", side = Side.WITHHOLDS)
  void anUnknownKeyInAnyTableOfAScenarioIsRefused(String table) {
    String line = scenario("[" + table + "]\nheater_power = 300\n");
    Refused.names(line, "f.toml", "unknown key " + table + ".heater_power", "300", "accepted is");
  }

  @Test
  @Verifies(value = "SR-19", side = Side.WITHHOLDS)
  void anUnknownTableOrKeyAtTheTopIsRefused() {
    Refused.names(config("[heater]\nwatts=300\n"), "unknown key heater", "tray");
    Refused.names(config("name='x'\n"), "unknown key name", "'x'");
    Refused.names(scenario("[server]\nport=1\n"), "unknown key server");
    Refused.names(scenario("[[at]]\nt_s=1\ndo='start'\nlitres=3\n"), "at number 1.litres", "3");
    Refused.names(
        scenario("[[at]]\nt_s=1\ndo='start'\n[[at]]\nt_s=1\ndo='pour'\nlitres=1\ntemp=3\n"),
        "unknown key at number 2.temp");
    Refused.names(
        scenario("[[fault]]\nt_s=1\nkind='fan-stops'\nrpm=3\n"), "unknown key fault number 1.rpm");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "[tray]~heater_w='250'        | tray.heater_w          | '250'   | 10 to 2000 W",
        "[tray]~heater_w=9.9          | tray.heater_w          | 9.9     | 10 to 2000 W",
        "[tray]~heater_w=nan          | tray.heater_w          | NaN\"    | 10 to 2000 W",
        "[tray]~heater_w=inf          | tray.heater_w          | Infinity\" | 10 to 2000 W",
        "[tray]~heater_w=1e999        | tray.heater_w          | 1E+999  | 10 to 2000 W",
        "[tray]~heater_w=true         | tray.heater_w          | true    | 10 to 2000 W",
        "[tray]~heater_w=[250]        | tray.heater_w          | [250]   | 10 to 2000 W",
        "[tray]~covered='no'          | tray.covered           | 'no'    | true or false",
        "[tray]~covered=0             | tray.covered           | 0       | true or false",
        "tray=3                       | tray                   | 3       | a table",
        "[control]~set_c=50.1         | control.set_c          | 50.1    | 15 to 50 °C",
        "[control]~set_c=14           | control.set_c          | 14      | 15 to 50 °C",
        "[control]~cycle_s=0          | control.cycle_s        | 0       | 1 to 60 s",
        "[control]~min_pulse_s=3      | control.min_pulse_s    | 3       | at most half of cycle_s",
        "[control]~regulator='bang'   | control.regulator      | 'bang'  | auto",
        "[control]~regulator=1        | control.regulator      | 1       | a text",
        "[fan]~rpm=0                  | fan.rpm                | 0       | 100 to 20000 1/min",
        "[fan]~spin_down_s=20         | fan.spin_down_s        | 20      | 0.1 to 13 s",
        "[room]~relative_humidity=50  | room.relative_humidity | 50      | 0 to 1",
        "[bath_probe]~lag_s=-1        | bath_probe.lag_s       | -1      | 0 to 120 s",
        "[plate_probe]~present='yes'  | plate_probe.present    | 'yes'   | true or false",
        "[limits]~purge_s=5           | limits.purge_s         | 5       | 10 to 3600 s"
      })
  @Verifies(value = "SR-19", side = Side.WITHHOLDS)
  void aWrongTypeOrValueIsRefusedInConfigurationAndScenarioAlike(
      String toml, String key, String found, String accepted) {
    for (String line :
        new String[] {config(toml.replace('~', '\n')), scenario(toml.replace('~', '\n'))}) {
      Refused.names(line, "f.toml: " + key + ": found ", found + ",", accepted);
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "[io]~kind='usb'         | io.kind            | 'usb'   | sim",
        "[io]~seed=-1            | io.seed            | -1      | a whole number",
        "[io]~seed=1.5           | io.seed            | 1.5     | a whole number",
        "[server]~port=65536     | server.port        | 65536   | 0 to 65535",
        "[server]~port='8467'    | server.port        | '8467'  | 0 to 65535",
        "[server]~host_at_tray=1 | server.host_at_tray | 1      | true or false",
        "[log]~folder=7          | log.folder         | 7       | a text"
      })
  @Verifies(value = "SR-19", side = Side.WITHHOLDS)
  void aWrongValueInTheTablesOfAConfigurationIsRefused(
      String toml, String key, String found, String accepted) {
    Refused.names(config(toml.replace('~', '\n')), key + ": found " + found, accepted);
  }

  @Test
  @Verifies(value = "SR-19", side = Side.WITHHOLDS)
  void whatIsNotTomlIsRefusedWithTheLine() {
    Refused.names(config("[tray]\nheater_w = 250\ncovered = maybe\n"), "f.toml: line 3: ");
    Refused.names(config("[tray\n"), "f.toml: line 1: ");
    Refused.names(scenario("seed = 1\nseed = 2\n"), "f.toml: line ", "Duplicate key");
  }

  @Test
  @Verifies(value = "SR-19", side = Side.WITHHOLDS)
  void aLongTextOrOneOfManyLinesStillMakesOneLine() {
    assertTrue(config("[io]\nkind = \"\"\"a\nb\r\nc\u2028d\"\"\"\n").contains("io.kind"));
    assertTrue(config("\"a\\nb\" = 1\n").contains("unknown key"));
    assertTrue(config("[server]\naddress = \"x\\r\\ny\"\n").contains("server.address"));
    String line = config("[log]\nfolder = '" + "x".repeat(2000) + "'\n");
    Refused.names(line, "log.folder", "1024");
    assertTrue(line.length() < 300, line);
    assertEquals(1, config("[io]\nkind='" + "y".repeat(1000) + "'\n").lines().count());
  }
}
