package trayward.controller.regulate;

/** How warm a heater can hold a tray. Pure. */
public final class HoldReach {

  /**
   * Duty counted on, of 1: what is left brings a bath back after a sheet, and mains that sag by 2 %
   * take 4 % of a heater's power.
   */
  public static final double DUTY = 0.95;

  /** No bath is held above this, °C: looked no further. */
  private static final double MOST_C = 99;

  /** To a hundredth of a kelvin: 99 K halved so often. */
  private static final int HALVINGS = 14;

  private HoldReach() {}

  /**
   * Highest bath temperature, °C, that {@link #DUTY} holds; that of the room for a heater of
   * nothing, and 99 where nothing limits it.
   */
  public static double highestC(TrayModel model, RoomModel room) {
    if (model.holdDuty(MOST_C, room) <= DUTY) {
      return MOST_C;
    }
    double low = Math.min(room.airC(), MOST_C);
    double high = MOST_C;
    for (int i = 0; i < HALVINGS; i++) {
      double mid = (low + high) / 2;
      if (model.holdDuty(mid, room) <= DUTY) {
        low = mid;
      } else {
        high = mid;
      }
    }
    return low;
  }

  /** For a person, rounded down: a promise is kept. */
  public static String words(double highestC) {
    return String.format(
        java.util.Locale.ROOT, "the heater holds at most %.0f °C", Math.floor(highestC));
  }
}
