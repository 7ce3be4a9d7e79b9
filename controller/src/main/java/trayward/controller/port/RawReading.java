package trayward.controller.port;

/**
 * What a probe adapter last got, before anyone judges it. A failed read is a value too.
 *
 * @param kind what came back
 * @param celsius temperature, °C; NaN unless {@code kind} is {@link Kind#FRAME} or {@link
 *     Kind#TRANSMITTED}
 * @param takenNanos monotonic time at which the temperature was true, nanoseconds
 */
public record RawReading(Kind kind, double celsius, long takenNanos) {

  /** What a read can bring back. */
  public enum Kind {
    /** A 1-Wire frame with a good check sum and some bit set. */
    FRAME,
    /** A transmitter's answer with a good check sum: any number is a measured one. */
    TRANSMITTED,
    /** All nine bytes zero, which passes the CRC: a bus shorted low. */
    ALL_ZERO_FRAME,
    /** A frame that fails its check sum. */
    CRC_ERROR,
    /** No frame: no such probe, an empty file, a read error. */
    ABSENT
  }

  /** A good frame. */
  public static RawReading frame(double celsius, long takenNanos) {
    return new RawReading(Kind.FRAME, celsius, takenNanos);
  }

  /** What a transmitter measures; NaN where it cannot be a temperature. */
  public static RawReading transmitted(double celsius, long takenNanos) {
    return new RawReading(Kind.TRANSMITTED, celsius, takenNanos);
  }

  /** A read that brought no temperature, at {@code takenNanos}. */
  public static RawReading failed(Kind kind, long takenNanos) {
    return new RawReading(kind, Double.NaN, takenNanos);
  }
}
