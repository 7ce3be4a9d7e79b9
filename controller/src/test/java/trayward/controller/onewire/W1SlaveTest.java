package trayward.controller.onewire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import trayward.controller.port.ProbeRole;
import trayward.controller.port.RawReading;
import trayward.controller.port.RawReading.Kind;

/** The text of the kernel's w1_therm driver, as its documentation gives it. */
class W1SlaveTest {

  private static String text(String bytes, String verdict, String t) {
    return bytes
        + " : crc="
        + bytes.substring(24)
        + " "
        + verdict
        + "\n"
        + bytes
        + " t="
        + t
        + "\n";
  }

  @ParameterizedTest
  @CsvSource({
    // DS18B20 data sheet, temperature/data table: 0x0191 is 25.0625, 0xFF5E is -10.125 °C.
    "91 01 4b 46 7f ff 0f 10 25, 25062, 25.062",
    "5e ff 4b 46 7f ff 02 10 9c, -10125, -10.125",
    "00 00 4b 46 7f ff 10 10 00, 0, 0.0",
  })
  void aGoodFrameGivesTheKernelsTemperature(String bytes, String t, double celsius) {
    RawReading reading = W1Slave.parse(text(bytes, "YES", t), 7);
    assertEquals(RawReading.frame(celsius, 7), reading);
  }

  @Test
  void aFrameTheKernelRefusedIsACrcError() {
    String text = text("91 01 4b 46 7f ff 0f 10 25", "NO", "25062");
    assertEquals(Kind.CRC_ERROR, W1Slave.parse(text, 0).kind());
  }

  @Test
  void anAllZeroFrameIsNoTemperatureAlthoughItsCrcIsGood() {
    String text = text("00 00 00 00 00 00 00 00 00", "YES", "0");
    assertEquals(Kind.ALL_ZERO_FRAME, W1Slave.parse(text, 0).kind());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {"''", "'\n'", "'28-000\nxyz'", "'t=20000\n'", "'91 01 : crc=25 YES\n91 01 t=1'"})
  void anythingElseIsAnAbsentProbe(String text) {
    assertEquals(Kind.ABSENT, W1Slave.parse(text, 0).kind());
  }

  @Test
  void aTemperatureThatIsNoNumberIsACrcError() {
    String text = text("91 01 4b 46 7f ff 0f 10 25", "YES", "12x");
    assertEquals(Kind.CRC_ERROR, W1Slave.parse(text, 0).kind());
  }

  @Test
  void probesAreReadFromTheirFoldersAndAVanishedOneIsAbsent(@TempDir Path root) throws Exception {
    Path file = Files.createDirectories(root.resolve("28-000000000001")).resolve("w1_slave");
    Files.writeString(file, text("91 01 4b 46 7f ff 0f 10 25", "YES", "25062"));
    try (OneWireProbes probes =
        new OneWireProbes(
            root,
            Map.of(ProbeRole.BATH, "28-000000000001", ProbeRole.PLATE, "28-000000000002"),
            () -> 42)) {
      assertEquals(Kind.ABSENT, probes.latest(ProbeRole.BATH, 0).kind());
      probes.readAll();
      assertEquals(RawReading.frame(25.062, 42), probes.latest(ProbeRole.BATH, 0));
      assertEquals(Kind.ABSENT, probes.latest(ProbeRole.PLATE, 0).kind());
      assertEquals(Kind.ABSENT, probes.latest(ProbeRole.SECOND_BATH, 9).kind());
      Files.delete(file);
      probes.readAll();
      assertEquals(Kind.ABSENT, probes.latest(ProbeRole.BATH, 0).kind());
      Files.writeString(file, "");
      probes.readAll();
      assertTrue(Double.isNaN(probes.latest(ProbeRole.BATH, 0).celsius()));
    }
  }
}
