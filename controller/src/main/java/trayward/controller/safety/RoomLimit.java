package trayward.controller.safety;

/** The warmest that a room makes a reading. Data; stateless. */
final class RoomLimit {

  /**
   * Rooms go to 30 °C, and probes read half a kelvin high; the rest is margin, °C. A reading from
   * here up is of something that was heated.
   */
  static final double MAX_READ_C = 32;

  private RoomLimit() {}
}
