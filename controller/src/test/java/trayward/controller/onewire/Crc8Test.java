package trayward.controller.onewire;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The bus's check sum against published values. */
class Crc8Test {

  static int[] bytes(String hex) {
    return Arrays.stream(hex.split(" ", -1)).mapToInt(each -> Integer.parseInt(each, 16)).toArray();
  }

  @ParameterizedTest
  @CsvSource({
    // 1-Wire CRC application note 27, its worked example (read in a secondary source).
    "02 1C B8 01 00 00 00, A2",
    "02 1C B8 01 00 00 00 A2, 00",
    // The data sheet's power-on scratchpad, +85 °C; check sum by our own arithmetic.
    "50 05 4B 46 7F FF 0C 10, 1C",
    // 25.0625 °C of the data sheet's table; check sum by our own arithmetic.
    "91 01 4B 46 7F FF 0F 10, 25",
    // A bus shorted low passes, one that nobody pulls down does not; our own arithmetic.
    "00 00 00 00 00 00 00 00, 00",
    "FF FF FF FF FF FF FF FF, C9",
  })
  void theSumIsAsPublished(String bytes, String sum) {
    int[] all = bytes(bytes);
    assertEquals(Integer.parseInt(sum, 16), Crc8.of(all, all.length));
  }

  /** Check value of the catalogue of parametrised CRC algorithms, CRC-8 of this polynomial. */
  @Test
  void theCatalogueTextHasItsCheckValue() {
    byte[] text = "123456789".getBytes(StandardCharsets.US_ASCII);
    int[] bytes = new int[text.length];
    Arrays.setAll(bytes, i -> text[i]);
    assertEquals(0xA1, Crc8.of(bytes, bytes.length));
  }

  @Test
  void everySingleWrongBitIsNoticed() {
    int[] frame = bytes("91 01 4B 46 7F FF 0F 10 25");
    for (int bit = 0; bit < 72; bit++) {
      int[] wrong = frame.clone();
      wrong[bit / 8] ^= 1 << bit % 8;
      assertEquals(false, Crc8.of(wrong, 8) == wrong[8], "bit " + bit);
    }
  }
}
