package trayward.host.cli;

/**
 * What a person says of a tray and its room. Immutable.
 *
 * @param litres liquid at the beginning, L
 * @param watts heater, W
 * @param airC room temperature, °C
 * @param humidity relative humidity, 0 to 1
 * @param draughtMPerS air speed over the surface, m/s
 */
public record Declared(
    double litres, double watts, double airC, double humidity, double draughtMPerS) {

  /**
   * The first option out of its range, in one line; empty where all are within. The ranges are
   * those of a configuration.
   */
  public String wrong() {
    String[] all = {
      off("--litres", litres, 0.05, 20, "L"),
      off("--watts", watts, 10, 2000, "W"),
      off("--air", airC, -10, 45, "°C"),
      off("--humidity", humidity, 0, 1, ""),
      off("--draught", draughtMPerS, 0, 5, "m/s")
    };
    for (String one : all) {
      if (!one.isEmpty()) {
        return one;
      }
    }
    return "";
  }

  private static String off(String option, double value, double min, double max, String unit) {
    return value >= min && value <= max
        ? ""
        : (option
                + ": found "
                + plain(value)
                + ", accepted is "
                + plain(min)
                + " to "
                + plain(max)
                + " "
                + unit)
            .trim();
  }

  private static String plain(double value) {
    return value == Math.rint(value) && Math.abs(value) < 1e9
        ? Long.toString((long) value)
        : Double.toString(value);
  }
}
