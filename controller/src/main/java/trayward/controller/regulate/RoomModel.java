package trayward.controller.regulate;

/**
 * The room around the tray, as far as its losses depend on it.
 *
 * @param airC air temperature, °C
 * @param relativeHumidity 0 to 1
 * @param draughtMPerS air speed over the surface, m/s
 */
public record RoomModel(double airC, double relativeHumidity, double draughtMPerS) {

  /** A room of 20 °C at half humidity with a gentle draught from the extraction. */
  public static final RoomModel REFERENCE = new RoomModel(20, 0.5, 0.15);
}
