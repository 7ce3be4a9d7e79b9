package trayward.host.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import trayward.controller.app.ConfigRefused;
import trayward.controller.app.Scenario;
import trayward.controller.app.Settings;
import trayward.controller.onewire.W1Slave;
import trayward.controller.port.RawReading;
import trayward.controller.safety.Limit;

/**
 * Files that a person or a chip may have spoilt: each is taken whole and within every bound, or
 * refused in one line; never a crash, never a hang, never a number that is not there.
 */
@Timeout(600)
class FuzzedFilesTest {

  /** Documents tried of each kind; {@code -Dtrayward.fuzz=N} makes it N times as many. */
  private static final int TRIED = 1500 * Integer.getInteger("trayward.fuzz", 1);

  private static final String SETTINGS =
      """
      [tray]
      liquid_l = 1.0
      heater_w = 250
      name = "window"
      [control]
      set_c = 40
      regulator = "auto"
      cycle_s = 5
      [limits]
      bath_hard_c = 52
      purge_s = 90
      break_s = 0.4
      [probes]
      bath = "28-0000000000b1"
      [transmitter]
      serial_port = "/dev/ttyUSB9"
      [lines]
      fan = { line = 12, active = "low" }
      [book]
      [server]
      port = 8467
      """;

  /** What a simulated tray takes as it stands. */
  private static final String SHORT = SETTINGS.substring(0, SETTINGS.indexOf("[probes]"));

  private static final String SCENARIO =
      """
      name = "a"
      seed = 3
      duration_s = 3600
      [tray]
      liquid_l = 1.5
      covered = false
      [room]
      relative_humidity = 0.5
      [[at]]
      t_s = 0
      do = "start"
      [[at]]
      t_s = 1800
      do = "pour"
      litres = 0.3
      temp_c = 20
      [[fault]]
      t_s = 900
      kind = "fan-slows"
      rpm = 400
      duration_s = 60
      """;

  /** The data sheet's own example of 25.0625 °C, with its CRC. */
  private static final String W1 =
      "91 01 4b 46 7f ff 0f 10 25 : crc=25 YES\n91 01 4b 46 7f ff 0f 10 25 t=25062\n";

  @TempDir private Path folder;

  private static void assertOneLine(ConfigRefused refused) {
    assertEquals(1, refused.line().lines().count(), refused.line());
    assertTrue(refused.line().length() <= 600, "a line for a person: " + refused.line().length());
  }

  @Test
  void settingsAreWithinEveryLimitOrRefusedInOneLine() throws Exception {
    Mutations mutations = new Mutations(1);
    int taken = 0;
    for (int i = 0; i < TRIED; i++) {
      String text = mutations.text(i % 2 == 0 ? SETTINGS : SHORT);
      Path file = Files.writeString(folder.resolve("tray.toml"), text);
      try {
        Settings settings = Settings.read(file);
        taken++;
        for (Limit limit : Limit.values()) {
          assertTrue(limit.range().contains(settings.limits().get(limit)), limit + "\n" + text);
        }
        assertTrue(
            settings.limits().setRange().contains(settings.control().setC()), "set\n" + text);
      } catch (ConfigRefused refused) {
        assertOneLine(refused);
      }
    }
    System.out.println(taken + " of " + TRIED + " spoilt settings taken");
    assertTrue(taken > 0 && taken < TRIED, taken + " taken");
  }

  @Test
  void scenariosAreTakenOrRefusedInOneLine() {
    Mutations mutations = new Mutations(2);
    int taken = 0;
    for (int i = 0; i < TRIED; i++) {
      String text = mutations.text(SCENARIO);
      try {
        Scenario scenario = Scenario.parse("a.toml", text);
        taken++;
        assertTrue(scenario.durationS() > 0 && scenario.durationS() <= 7 * 86_400, text);
      } catch (ConfigRefused refused) {
        assertOneLine(refused);
      }
    }
    System.out.println(taken + " of " + TRIED + " spoilt scenarios taken");
    assertTrue(taken > 0 && taken < TRIED, taken + " taken");
  }

  private static final Pattern FRAME = Pattern.compile("((?:[0-9a-fA-F]{2} ){9})t=(-?\\d+)");

  /** Bit by bit, x^8 + x^5 + x^4 + 1, as the chip's data sheet draws it. */
  private static int crc8(int[] bytes) {
    int crc = 0;
    for (int i = 0; i < 8; i++) {
      crc ^= bytes[i];
      for (int bit = 0; bit < 8; bit++) {
        crc = (crc & 1) == 0 ? crc >> 1 : crc >> 1 ^ 0x8C;
      }
    }
    return crc;
  }

  /** What a sound frame says, by its own arithmetic: sixteen bits of 1/16 K. */
  private static double saidC(String text) {
    Matcher frame = FRAME.matcher(text);
    assertTrue(frame.find(), text);
    int[] bytes = new int[9];
    String[] hex = frame.group(1).trim().split(" ", -1);
    for (int i = 0; i < 9; i++) {
      bytes[i] = Integer.parseInt(hex[i], 16);
    }
    assertEquals(bytes[8], crc8(bytes), text);
    return (short) (bytes[1] << 8 | bytes[0]) / 16.0;
  }

  @Test
  void aProbeFileGivesTheTemperatureItsCheckSumVouchesForOrNone() {
    Mutations mutations = new Mutations(3);
    int sound = 0;
    for (int i = 0; i < 40 * TRIED; i++) {
      String text = i % 4 == 0 ? W1.replace("25062", "25063") : mutations.text(W1);
      RawReading reading = W1Slave.parse(text, i);
      if (reading.kind() == RawReading.Kind.FRAME) {
        sound++;
        assertEquals(saidC(text), reading.celsius(), 0.0625 + 0.001, text);
      } else {
        assertTrue(Double.isNaN(reading.celsius()), text);
      }
    }
    assertTrue(sound > 0, "some are only spoilt where it does not matter");
  }

  @Test
  void aFileOfRawBytesIsNoReading() {
    Mutations mutations = new Mutations(4);
    for (int i = 0; i < TRIED; i++) {
      byte[] noise = new byte[mutations.random().nextInt(200)];
      mutations.random().nextBytes(noise);
      String text = new String(noise, StandardCharsets.ISO_8859_1);
      assertEquals(RawReading.Kind.ABSENT, W1Slave.parse(text, i).kind());
      for (String file : List.of(text, "[tray]\n" + text)) {
        try {
          Scenario.parse("noise", file);
        } catch (ConfigRefused refused) {
          assertOneLine(refused);
        }
      }
    }
  }
}
