package trayward.host.report;

/** Fixed decimals without a locale, appended fast: the same digits on every machine. Stateless. */
final class Decimals {

  private static final long[] POWERS = {1, 10, 100, 1_000, 10_000, 100_000, 1_000_000};

  private Decimals() {}

  /**
   * Appends {@code value} with {@code places} decimals, half up; nothing for NaN.
   *
   * @param places 0 to 6
   */
  static void append(StringBuilder out, double value, int places) {
    if (Double.isNaN(value)) {
      return;
    }
    long power = POWERS[places];
    long scaled = Math.round(value * power);
    if (scaled < 0) {
      out.append('-');
      scaled = -scaled;
    }
    out.append(scaled / power);
    if (places > 0) {
      out.append('.');
      long rest = scaled % power;
      for (long p = power / 10; p > 1 && rest < p; p /= 10) {
        out.append('0');
      }
      out.append(rest);
    }
  }
}
