package trayward.controller.keep;

import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.zip.CRC32C;

/** The CRC-32C that closes a record, as eight hexadecimal digits. Pure. */
final class CheckSum {

  private CheckSum() {}

  static String of(String body) {
    CRC32C crc = new CRC32C();
    crc.update(body.getBytes(StandardCharsets.UTF_8));
    return HexFormat.of().toHexDigits((int) crc.getValue());
  }
}
