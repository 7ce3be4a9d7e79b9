package trayward.host.report.plan;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;

/** How numbers are written. Pure. */
final class Numbers {

  /** Digits for machines: more than any of these estimates has. */
  private static final MathContext SIX = new MathContext(6);

  private Numbers() {}

  /** Whole numbers without a point, others as they are. */
  static String plain(double number) {
    return number == Math.rint(number) && Math.abs(number) < 1e12
        ? Long.toString((long) number)
        : new BigDecimal(Double.toString(number)).toPlainString();
  }

  /** To six digits; others than finite ones as they are. */
  static double rounded(double number) {
    return Double.isFinite(number) ? new BigDecimal(number).round(SIX).doubleValue() : number;
  }

  /** For people: three digits or so, whole numbers from 1000 on. */
  static String shown(double number) {
    double size = Math.abs(number);
    if (size != 0 && size < 0.001) {
      return String.format(Locale.ROOT, "%.2g", number);
    }
    int decimals = size >= 1000 ? 0 : size >= 10 ? 1 : size >= 1 ? 2 : size >= 0.1 ? 3 : 4;
    String text = String.format(Locale.ROOT, "%." + decimals + "f", number);
    return text.contains(".") ? text.replaceAll("0+$", "").replaceAll("\\.$", "") : text;
  }
}
