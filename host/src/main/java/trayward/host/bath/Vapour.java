package trayward.host.bath;

import java.util.function.DoubleUnaryOperator;

/**
 * How much water an open bath gives off. Immutable.
 *
 * @param millilitresPerHour of a bath temperature, °C
 * @param share standard uncertainty of it, a share of itself
 */
public record Vapour(DoubleUnaryOperator millilitresPerHour, double share) {

  /**
   * Undisturbed pools gave off 74 % of what the correlation says (ASHRAE Transactions 1998, vol.
   * 104), and a tray that is rocked more: a quarter either way.
   */
  public static final double SHARE = 0.25;

  /** From here on a bath is hot, °C: it needs proven air, and it ages. */
  public static final double HOT_C = 30;

  /** What stands for so many seconds at a temperature gives off, mL. */
  public double millilitres(double bathC, double seconds) {
    return millilitresPerHour.applyAsDouble(bathC) * seconds / 3600;
  }

  /** With its doubt. */
  public Amount doubted(double millilitres) {
    return Amount.within(millilitres, share);
  }
}
