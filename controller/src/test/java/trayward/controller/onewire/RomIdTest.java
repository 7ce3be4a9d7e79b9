package trayward.controller.onewire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.onewire.RomId.Typed;

/** ROM numbers as the kernel, a data sheet and a person write them. */
class RomIdTest {

  /** The ROM of the 1-Wire CRC application note 27: 02 1C B8 01 00 00 00, check sum A2. */
  private static final RomId NOTE_27 = new RomId(0x02, 0x00000001b81cL);

  @Test
  void theNotesExampleHasTheNotesCheckSumAndTheKernelsName() {
    assertEquals(0xA2, NOTE_27.crc());
    assertEquals("021cb801000000a2", NOTE_27.whole());
    assertEquals("02-00000001b81c", NOTE_27.folder());
    assertEquals(Optional.of(NOTE_27), RomId.ofFolder("02-00000001b81c"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"021cb801000000a2", "021CB801000000A2", "A200000001B81C02"})
  void sixteenDigitsAreTakenInEitherOrderWhereTheirCheckSumIsRight(String text) {
    assertEquals(new Typed.Rom(NOTE_27), RomId.typed(text));
  }

  @Test
  void aThermometersNumberComesBackFromAllItsWritings() {
    RomId id = new RomId(RomId.THERMOMETER, 0x0316a10264ffL);
    assertEquals("28-0316a10264ff", id.folder());
    assertEquals(new Typed.Rom(id), RomId.typed(id.folder()));
    assertEquals(new Typed.Rom(id), RomId.typed("28-0316A10264FF"));
    assertEquals(new Typed.Rom(id), RomId.typed(id.whole()));
  }

  @Test
  void anySlipInOneDigitIsAWrongCheckSumAndTellsTheRightOne() {
    String right = new RomId(RomId.THERMOMETER, 0x0316a10264ffL).whole();
    for (int at = 2; at < 16; at++) {
      char other = right.charAt(at) == '7' ? '6' : '7';
      String slip = right.substring(0, at) + other + right.substring(at + 1);
      assertInstanceOf(Typed.WrongCheckSum.class, RomId.typed(slip), slip);
    }
    String wrongSum = right.substring(0, 14) + (right.endsWith("00") ? "01" : "00");
    Typed typed = RomId.typed(wrongSum);
    assertEquals(
        Integer.parseInt(right.substring(14), 16),
        assertInstanceOf(Typed.WrongCheckSum.class, typed).computed());
  }

  @Test
  void theRightCheckSumIsToldInTheOrderThatWasMeant() {
    String number = "00" + "0316a10264ff" + "28"; // as one number, family last
    assertEquals(
        new Typed.WrongCheckSum(0, new RomId(RomId.THERMOMETER, 0x0316a10264ffL).crc()),
        RomId.typed(number));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "28",
        "28-",
        "28-0316a10264f",
        "28-0316a10264fff",
        "28 0316a10264ff",
        "2g-0316a10264ff",
        "021cb801000000a",
        "021cb801000000a22",
        "-21cb801000000a2",
        "w1_bus_master1",
        "28-+316a10264ff"
      })
  void whatIsNoRomIsSaidToBeNone(String text) {
    assertEquals(new Typed.NoRom(), RomId.typed(text));
    assertEquals(Optional.empty(), RomId.ofFolder(text));
  }

  @Test
  void noRomHoldsMoreThanTheChip() {
    assertThrows(IllegalArgumentException.class, () -> new RomId(0x100, 0));
    assertThrows(IllegalArgumentException.class, () -> new RomId(-1, 0));
    assertThrows(IllegalArgumentException.class, () -> new RomId(0x28, 1L << 48));
    assertThrows(IllegalArgumentException.class, () -> new RomId(0x28, -1));
    assertEquals("28-ffffffffffff", new RomId(0x28, (1L << 48) - 1).folder());
  }
}
