package trayward.host.report;

import java.nio.charset.StandardCharsets;

/** Fixed decimals without a locale, written fast: the same digits on every machine. Stateless. */
final class Decimals {

  /** Most bytes of one number: a sign, the nineteen digits of a {@code long}, a point. */
  static final int MOST = 21;

  private static final long[] POWERS = {1, 10, 100, 1_000, 10_000, 100_000, 1_000_000};

  private Decimals() {}

  /**
   * Appends {@code value} with {@code places} decimals, half up; nothing for NaN.
   *
   * @param places 0 to 6
   */
  static void append(StringBuilder out, double value, int places) {
    byte[] digits = new byte[MOST];
    int length = put(digits, 0, value, places);
    out.append(new String(digits, 0, length, StandardCharsets.US_ASCII));
  }

  /**
   * Writes the same into {@code out} from {@code at} on, where {@link #MOST} bytes must be free.
   *
   * @return where the next byte goes
   */
  static int put(byte[] out, int at, double value, int places) {
    if (Double.isNaN(value)) {
      return at;
    }
    long scaled = Math.max(-Long.MAX_VALUE, Math.round(value * POWERS[places]));
    int from = at;
    if (scaled < 0) {
      out[from++] = '-';
      scaled = -scaled;
    }
    int end = from + length(scaled, places);
    int point = places > 0 ? end - places - 1 : -1;
    for (int i = end - 1; i >= from; i--) {
      if (i == point) {
        out[i] = '.';
      } else {
        out[i] = (byte) ('0' + scaled % 10);
        scaled /= 10;
      }
    }
    return end;
  }

  /** Digits of {@code scaled}, at least one before the point, and the point. */
  private static int length(long scaled, int places) {
    int digits = places + 1;
    for (long rest = scaled / POWERS[places]; rest >= 10; rest /= 10) {
      digits++;
    }
    return places > 0 ? digits + 1 : digits;
  }
}
