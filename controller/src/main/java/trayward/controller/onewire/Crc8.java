package trayward.controller.onewire;

/**
 * The check sum of the 1-Wire bus: x⁸ + x⁵ + x⁴ + 1, bits reflected, starting from 0 (the
 * manufacturer's application note 27). Pure.
 */
final class Crc8 {

  /** The polynomial 0x31 with its bits turned round, as the bus sends the lowest bit first. */
  private static final int POLYNOMIAL = 0x8c;

  private Crc8() {}

  /** The check sum of the first {@code count} bytes; only their lowest eight bits count. */
  static int of(int[] bytes, int count) {
    int crc = 0;
    for (int i = 0; i < count; i++) {
      crc ^= bytes[i] & 0xff;
      for (int bit = 0; bit < 8; bit++) {
        crc = (crc & 1) == 0 ? crc >> 1 : crc >> 1 ^ POLYNOMIAL;
      }
    }
    return crc;
  }
}
