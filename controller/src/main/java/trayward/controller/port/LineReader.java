package trayward.controller.port;

/** Reads all digital inputs at once. */
@FunctionalInterface
public interface LineReader {

  /**
   * The inputs now. Never throws: what cannot be read is {@link LineReadings#ABSENT}.
   *
   * @param nowNanos monotonic time of the scan, nanoseconds
   */
  LineReadings read(long nowNanos);
}
