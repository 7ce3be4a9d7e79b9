package trayward.host.app;

import java.util.Locale;

/** Texts of probe files as the kernel's driver writes them. */
final class ProbeFiles {

  private ProbeFiles() {}

  /** A sound twelve-bit frame of so many sixteenths of a degree. */
  static String text(int steps) {
    int[] frame = {steps & 0xff, (steps >> 8) & 0xff, 0x4b, 0x46, 0x7f, 0xff, 0x0c, 0x10, 0};
    frame[8] = crc8(frame);
    StringBuilder bytes = new StringBuilder();
    for (int each : frame) {
      bytes.append(String.format(Locale.ROOT, "%02x ", each));
    }
    int millidegrees = steps * 1000 / 16;
    return "%1$s: crc=%2$02x YES\n%1$st=%3$d\n".formatted(bytes, frame[8], millidegrees);
  }

  /** CRC-8 of the 1-Wire bus (x⁸ + x⁵ + x⁴ + 1, reflected), over the first eight bytes. */
  static int crc8(int[] frame) {
    int crc = 0;
    for (int i = 0; i < 8; i++) {
      crc ^= frame[i];
      for (int bit = 0; bit < 8; bit++) {
        crc = (crc & 1) != 0 ? crc >> 1 ^ 0x8c : crc >> 1;
      }
    }
    return crc;
  }
}
