package trayward.controller.keep;

import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.Optional;
import java.util.zip.CRC32C;

/**
 * The CRC-32C that closes a record, as eight hexadecimal digits: what is torn or altered is
 * noticed. Pure.
 */
final class CheckSum {

  private static final String KEY = "crc=";

  private CheckSum() {}

  static String of(String body) {
    CRC32C crc = new CRC32C();
    crc.update(body.getBytes(StandardCharsets.UTF_8));
    return HexFormat.of().toHexDigits((int) crc.getValue());
  }

  /** {@code body}, whole lines of it, with a last line that closes it. */
  static String close(String body) {
    return body + lastLine(body);
  }

  /** What {@link #close} closed; empty where it is not that any more. */
  static Optional<String> open(String text) {
    int at = text.lastIndexOf(KEY);
    return at >= 0 && text.substring(at).equals(lastLine(text.substring(0, at)))
        ? Optional.of(text.substring(0, at))
        : Optional.empty();
  }

  private static String lastLine(String body) {
    return KEY + of(body) + "\n";
  }
}
