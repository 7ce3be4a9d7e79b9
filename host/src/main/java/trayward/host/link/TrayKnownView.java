package trayward.host.link;

import org.jspecify.annotations.Nullable;

/**
 * What the controller knows of its tray.
 *
 * @param words what the last warm-up showed, in words; empty before one
 * @param litres liquid it showed, L; NaN before one
 * @param uncertaintyL expanded uncertainty of that, k = 2, L
 * @param learned the tray on record; null where none is
 * @param highestHoldC highest temperature the heater can hold, °C
 * @param outOfReach why the set temperature cannot be held, in words; empty where it can
 */
public record TrayKnownView(
    String words,
    double litres,
    double uncertaintyL,
    @Nullable Learned learned,
    double highestHoldC,
    String outOfReach) {

  /**
   * A tray on record.
   *
   * @param name its name
   * @param date date of the warm-up
   * @param litreMeasured whether its heater was measured with a litre
   */
  public record Learned(String name, String date, boolean litreMeasured) {}
}
