package trayward.controller.port;

/**
 * What a probe adapter last got, before anyone judges it. A failed read is a value too.
 *
 * @param kind what came back
 * @param celsius temperature, °C; NaN unless {@code kind} is {@link Kind#FRAME}
 * @param takenNanos monotonic time at which the temperature was true, nanoseconds
 */
public record RawReading(Kind kind, double celsius, long takenNanos) {

  /** What a read can bring back. */
  public enum Kind {
    /** A frame with a good check sum and some bit set. */
    FRAME,
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

  /** A read that brought no temperature, at {@code takenNanos}. */
  public static RawReading failed(Kind kind, long takenNanos) {
    return new RawReading(kind, Double.NaN, takenNanos);
  }
}
