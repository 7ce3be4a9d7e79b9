package trayward.controller.onewire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static trayward.controller.onewire.Frames.text;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.port.RawReading;
import trayward.controller.port.RawReading.Kind;

/** The text of the kernel's w1_therm driver, as its source writes it. */
class W1SlaveTest {

  private static final String GOOD = "91 01 4b 46 7f ff 0f 10 25";

  /**
   * DS18B20 data sheet, table of temperature and data. 125, 85, 0, -10.125 and -55 °C were read in
   * a secondary source, the others are from memory. The driver cuts thousandths off towards zero.
   */
  @ParameterizedTest
  @CsvSource({
    "07D0, 125.0",
    "0550, 85.0",
    "0191, 25.062",
    "00A2, 10.125",
    "0008, 0.5",
    "0000, 0.0",
    "FFF8, -0.5",
    "FF5E, -10.125",
    "FE6F, -25.062",
    "FC90, -55.0",
  })
  void theDataSheetsTableComesOutAsTheDriverRoundsIt(String raw, double celsius) {
    String text = Frames.steps((short) Integer.parseInt(raw, 16));
    assertEquals(RawReading.frame(celsius, 7), W1Slave.parse(text, 7));
  }

  @Test
  void everyFrameOfTheProbesRangeIsTakenCutOffOrRounded() {
    for (int steps = -55 * 16; steps <= 125 * 16; steps++) {
      RawReading cut = W1Slave.parse(Frames.steps(steps), 0);
      assertEquals(steps / 16.0, cut.celsius(), 0.001, "step " + steps);
      String rounded = Long.toString(Math.round(steps * 62.5));
      String bytes = Frames.bytes(steps, 0x7f);
      assertEquals(Kind.FRAME, W1Slave.parse(text(bytes, "YES", rounded), 0).kind());
    }
  }

  @Test
  void linesMayEndAsOtherSystemsEndThem() {
    String text = text(GOOD, "YES", "25062");
    assertEquals(RawReading.frame(25.062, 0), W1Slave.parse(text.replace("\n", "\r\n"), 0));
    assertEquals(RawReading.frame(25.062, 0), W1Slave.parse(text.stripTrailing(), 0));
  }

  @Test
  void aFrameTheKernelRefusedIsACrcError() {
    assertEquals(Kind.CRC_ERROR, W1Slave.parse(text(GOOD, "NO", "25062"), 0).kind());
  }

  @Test
  void aFrameWithOneWrongBitIsACrcErrorThoughTheKernelSaysYes() {
    int[] frame = Crc8Test.bytes(GOOD);
    for (int bit = 0; bit < 72; bit++) {
      int[] wrong = frame.clone();
      wrong[bit / 8] ^= 1 << bit % 8;
      StringBuilder bytes = new StringBuilder();
      for (int each : wrong) {
        bytes.append(bytes.length() == 0 ? "" : " ").append("%02x".formatted(each));
      }
      String text = text(bytes.toString(), "YES", "25062");
      assertEquals(Kind.CRC_ERROR, W1Slave.parse(text, 0).kind(), text);
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        // The sum that the driver computed is not the frame's.
        "91 01 4b 46 7f ff 0f 10 25 : crc=24 YES\n91 01 4b 46 7f ff 0f 10 25 t=25062",
        // The second line still has another frame.
        "91 01 4b 46 7f ff 0f 10 25 : crc=25 YES\n50 05 4b 46 7f ff 0c 10 1c t=25062",
        // The second line is missing, torn, or no number.
        "91 01 4b 46 7f ff 0f 10 25 : crc=25 YES",
        "91 01 4b 46 7f ff 0f 10 25 : crc=25 YES\n91 01 4b 46 7f",
        "91 01 4b 46 7f ff 0f 10 25 : crc=25 YES\n91 01 4b 46 7f ff 0f 10 25 t=",
        "91 01 4b 46 7f ff 0f 10 25 : crc=25 YES\n91 01 4b 46 7f ff 0f 10 25 t=250",
        "91 01 4b 46 7f ff 0f 10 25 : crc=25 YES\n91 01 4b 46 7f ff 0f 10 25 t=12x",
        "91 01 4b 46 7f ff 0f 10 25 : crc=25 YES\n91 01 4b 46 7f ff 0f 10 25 t=2506299",
        // Something follows.
        "91 01 4b 46 7f ff 0f 10 25 : crc=25 YES\n91 01 4b 46 7f ff 0f 10 25 t=25062\nmore",
      })
  void aFrameWhoseRestDoesNotAgreeIsACrcError(String text) {
    assertEquals(Kind.CRC_ERROR, W1Slave.parse(text, 0).kind());
  }

  @ParameterizedTest(name = "{0} m°C")
  @CsvSource({
    "25061, CRC_ERROR",
    "25062, FRAME",
    "25063, FRAME",
    "25064, CRC_ERROR",
    "-25062, CRC_ERROR",
    "40000, CRC_ERROR",
    "85000, CRC_ERROR",
    "0, CRC_ERROR"
  })
  void aTemperatureThatDidNotComeOfItsBytesIsACrcError(String t, Kind kind) {
    assertEquals(kind, W1Slave.parse(text(GOOD, "YES", t), 0).kind());
  }

  @ParameterizedTest(name = "{0} m°C")
  @CsvSource({"24998, CRC_ERROR", "24999, FRAME", "25001, FRAME", "25002, CRC_ERROR"})
  void aThousandthMayBeRoundedEitherWayAndNoMore(String t, Kind kind) {
    assertEquals(kind, W1Slave.parse(text(Frames.bytes(400, 0x7f), "YES", t), 0).kind());
  }

  /**
   * Resolutions of the data sheet by configuration byte: 0x7F twelve bits, 0x5F eleven, 0x3F ten,
   * 0x1F nine. The bits below are undefined there: kept or cleared, both are taken, and no more.
   */
  @ParameterizedTest(name = "{0}: down to {1} m°C")
  @CsvSource({"7f, 24937", "5f, 24875", "3f, 24750", "1f, 24500"})
  void bitsBelowTheResolutionMayBeKeptOrCleared(String configuration, int cleared) {
    int steps = 25 * 16 - 1; // 24.9375 °C: every low bit is set
    String bytes = Frames.bytes(steps, Integer.parseInt(configuration, 16));
    assertEquals(Kind.FRAME, W1Slave.parse(text(bytes, "YES", "24937"), 0).kind());
    String low = Integer.toString(cleared);
    assertEquals(Kind.FRAME, W1Slave.parse(text(bytes, "YES", low), 0).kind());
    String lower = Integer.toString(cleared - 2);
    assertEquals(Kind.CRC_ERROR, W1Slave.parse(text(bytes, "YES", lower), 0).kind());
    String higher = Integer.toString(24939);
    assertEquals(Kind.CRC_ERROR, W1Slave.parse(text(bytes, "YES", higher), 0).kind());
  }

  /** The driver adds two bits that some chips keep in the configuration byte: steps of 1/64 K. */
  @Test
  void finerStepsOfAChipThatHasThemAreTaken() {
    String bytes = Frames.bytes(400, 0xff); // 25 °C and 3/64 K in the configuration's lowest bits
    assertEquals(Kind.FRAME, W1Slave.parse(text(bytes, "YES", "25046"), 0).kind());
    assertEquals(Kind.CRC_ERROR, W1Slave.parse(text(bytes, "YES", "25064"), 0).kind());
  }

  @Test
  void anAllZeroFrameIsNoTemperatureAlthoughItsCrcIsGood() {
    String text = text("00 00 00 00 00 00 00 00 00", "YES", "0");
    assertEquals(Kind.ALL_ZERO_FRAME, W1Slave.parse(text, 0).kind());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "''",
        "'\n'",
        "'28-000\nxyz'",
        "'t=20000\n'",
        "'91 01 : crc=25 YES\n91 01 t=1'",
        "'91 01 4b 46 7f ff 0f 10 25 : crc=25 YE'",
        "'91 01 4b 46 7f ff 0f 10 25 : crc=25 MAYBE\n91 01 4b 46 7f ff 0f 10 25 t=25062'",
      })
  void whatHoldsNoFrameIsAnAbsentProbe(String text) {
    assertEquals(Kind.ABSENT, W1Slave.parse(text, 0).kind());
  }

  @Test
  void noTextAtAllMakesATemperatureOfABrokenFrame() {
    Random random = new Random(8);
    String good = text(GOOD, "YES", "25062");
    for (int i = 0; i < 20_000; i++) {
      StringBuilder torn = new StringBuilder(good);
      for (int n = random.nextInt(4); n >= 0; n--) {
        torn.setCharAt(random.nextInt(torn.length()), (char) (' ' + random.nextInt(95)));
      }
      torn.setLength(random.nextInt(10) == 0 ? random.nextInt(torn.length()) : torn.length());
      RawReading reading = W1Slave.parse(torn.toString(), 0);
      if (reading.kind() == Kind.FRAME) {
        assertEquals(25.0625, reading.celsius(), 0.002, torn.toString());
      }
    }
  }
}
