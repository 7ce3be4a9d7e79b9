package trayward.controller.modbus;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Worked examples of the "MODBUS Application Protocol Specification" V1.1b3, section by section, as
 * frames of unit 1 on a serial line. Their check sums are computed by the rule of "MODBUS over
 * Serial Line" V1.02, 6.2.2.
 */
class FramesOfTheStandardTest {

  private static final DeviceIdentity IDENTITY =
      new DeviceIdentity(List.of("vendor", "code", "1.0"));

  private static byte[] hex(String text) {
    return HexFormat.ofDelimiter(" ").parseHex(text);
  }

  private static byte[] answer(Registers registers, String request) {
    byte[] frame = hex(request);
    RtuFrame.Parsed.Whole whole =
        assertInstanceOf(RtuFrame.Parsed.Whole.class, RtuFrame.parse(frame, frame.length));
    return RtuFrame.encode(whole.unit(), new Responder(registers, IDENTITY).answer(whole.pdu()));
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "6.1 read coils, 01 01 00 13 00 13 8C 02, 01 01 03 CD 6B 05 42 82",
    "6.3 read holding registers, 01 03 00 6B 00 03 74 17, 01 03 06 02 2B 00 00 00 64 05 7A",
    "6.4 read input registers, 01 04 00 08 00 01 B0 08, 01 04 02 00 0A 39 37",
    "6.6 write single register, 01 06 00 01 00 03 98 0B, 01 06 00 01 00 03 98 0B",
    "6.12 write registers, 01 10 00 01 00 02 04 00 0A 01 02 92 30, 01 10 00 01 00 02 10 08",
    "7 exception, 01 01 04 A1 00 01 AD 18, 01 81 02 C1 91"
  })
  void aRequestOfTheStandardGetsItsAnswer(String section, String request, String answer) {
    assertArrayEquals(hex(answer), answer(ExampleRegisters.ofTheStandard(), request), section);
  }

  @Test
  void theCheckSumIsThatOfThePublishedCheckString() {
    // CRC-16/MODBUS of "123456789": 0x4B37, the catalogue value of parametrised CRC algorithms.
    byte[] check = "123456789".getBytes(StandardCharsets.US_ASCII);
    assertEquals(0x4B37, Crc16.of(check, check.length));
  }

  @Test
  void writesReachTheRegistersTheyName() {
    ExampleRegisters registers = ExampleRegisters.ofTheStandard();
    answer(registers, "01 10 00 01 00 02 04 00 0A 01 02 92 30");
    assertEquals(0x000A, registers.holding[1]);
    assertEquals(0x0102, registers.holding[2]);
  }

  /** Section 6.5: output 173 (address 0xAC) on. Section 6.11: ten coils from 0x13. */
  @Test
  void coilsAreWrittenOneAndMany() {
    ExampleRegisters registers = ExampleRegisters.ofTheStandard();
    registers.coils[0xAC] = 0;
    Responder responder = new Responder(registers, IDENTITY);
    assertEquals(new Pdu(hex("05 00 AC FF 00")), responder.answer(new Pdu(hex("05 00 AC FF 00"))));
    assertEquals(1, registers.coils[0xAC]);
    assertEquals(
        new Pdu(hex("0F 00 13 00 0A")), responder.answer(new Pdu(hex("0F 00 13 00 0A 02 CD 01"))));
    int[] expected = {1, 0, 1, 1, 0, 0, 1, 1, 1, 0};
    for (int i = 0; i < expected.length; i++) {
      assertEquals(expected[i], registers.coils[0x13 + i]);
    }
  }

  /** Section 6.21, its example read for the basic category: 2B 0E 01 00. */
  @Test
  void theDeviceTellsWhatItIs() {
    Responder responder = new Responder(new ExampleRegisters(), IDENTITY);
    assertEquals(
        new Pdu(
            hex("2B 0E 01 81 00 00 03 00 06 76 65 6E 64 6F 72 01 04 63 6F 64 65 02 03 31 2E 30")),
        responder.answer(new Pdu(hex("2B 0E 01 00"))));
    assertEquals(
        new Pdu(hex("2B 0E 04 81 00 00 01 02 03 31 2E 30")),
        responder.answer(new Pdu(hex("2B 0E 04 02"))));
    assertEquals(new Pdu(hex("AB 02")), responder.answer(new Pdu(hex("2B 0E 04 07"))));
    assertEquals(new Pdu(hex("AB 01")), responder.answer(new Pdu(hex("2B 0D 00 00"))));
    assertEquals(new Pdu(hex("AB 03")), responder.answer(new Pdu(hex("2B 0E 05 00"))));
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "a function that is not there, 07, 87 01",
    "no register at all, 03 00 6B 00 00, 83 03",
    "one register too many, 03 00 00 00 7E, 83 03",
    "a read that is cut short, 04 00 08 00, 84 03",
    "a read with a tail, 04 00 08 00 01 00, 84 03",
    "a read beyond the map, 03 00 6D 00 02, 83 02",
    "a coil that is neither on nor off, 05 00 13 12 34, 85 03",
    "a coil beyond the map, 05 00 F0 FF 00, 85 02",
    "more bits than may be read, 02 00 00 07 D1, 82 03",
    "a byte count that is not the quantity's, 10 00 01 00 02 03 00 0A 01, 90 03",
    "a byte count without its bytes, 10 00 01 00 02 04 00 0A, 90 03",
    "too many registers written, 10 00 01 00 7C 04 00 0A 01 02, 90 03",
    "a write beyond the map, 06 00 F0 00 01, 86 02",
    "coils whose bytes are missing, 0F 00 13 00 0A 01 CD, 8F 03",
    "a single write with a tail, 06 00 01 00 03 00, 86 03"
  })
  void whatCannotBeIsRefusedByTheStandardsCodeAndChangesNothing(
      String what, String request, String answer) {
    ExampleRegisters registers = ExampleRegisters.ofTheStandard();
    String before = registers.written();
    assertEquals(
        new Pdu(hex(answer)), new Responder(registers, IDENTITY).answer(new Pdu(hex(request))));
    assertEquals(before, registers.written(), what);
  }

  @Test
  void aServerThatBreaksInsideSaysSo() {
    ExampleRegisters registers = ExampleRegisters.ofTheStandard();
    registers.broken = true;
    Pdu answer = new Responder(registers, IDENTITY).answer(new Pdu(hex("04 00 08 00 01")));
    assertEquals(new Pdu(hex("84 04")), answer);
  }
}
