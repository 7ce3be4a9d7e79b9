package trayward.host.store;

import trayward.host.bath.PrintUse;
import trayward.host.bath.Vapour;
import trayward.host.heat.PoolEvaporation;

/**
 * What a bath book reckons with. Immutable.
 *
 * @param use what printing does to a bath
 * @param vapour what the open tray gives off
 */
public record BookModel(PrintUse use, Vapour vapour) {

  /** The reference tray in a room of 20 °C and 50 %: what holds where nothing is set. */
  public static final BookModel STANDARD =
      new BookModel(PrintUse.STANDARD, vapour(new PoolEvaporation(0.072, 0.15, 20, 0.5, 1)));

  /** What a tray of this surface in this room gives off, with its usual doubt. */
  public static Vapour vapour(PoolEvaporation tray) {
    return new Vapour(tray::millilitresPerHourAt, Vapour.SHARE);
  }
}
