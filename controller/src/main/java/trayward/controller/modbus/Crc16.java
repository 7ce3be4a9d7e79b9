package trayward.controller.modbus;

/**
 * CRC-16 of the serial line. Pure.
 *
 * <p>"MODBUS over Serial Line, Specification and Implementation Guide V1.02", 6.2.2: polynomial
 * 0xA001 reflected, register preset to 0xFFFF, low byte sent first.
 */
final class Crc16 {

  private static final int POLYNOMIAL = 0xA001;

  private Crc16() {}

  /** The CRC of the first {@code length} bytes. */
  static int of(byte[] bytes, int length) {
    int crc = 0xFFFF;
    for (int i = 0; i < length; i++) {
      crc ^= bytes[i] & 0xFF;
      for (int bit = 0; bit < 8; bit++) {
        crc = (crc & 1) == 0 ? crc >> 1 : (crc >> 1) ^ POLYNOMIAL;
      }
    }
    return crc;
  }
}
