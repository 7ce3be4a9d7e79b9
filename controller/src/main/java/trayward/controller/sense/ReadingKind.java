package trayward.controller.sense;

/** The classes of SR-08. Only {@link #VALID} may be acted on. */
public enum ReadingKind {
  /** Believable and fresh. */
  VALID,
  /** Older than the stale limit. */
  STALE,
  /** No frame came. */
  ABSENT,
  /** A frame that fails its check sum. */
  CRC_ERROR,
  /** 85 °C with a good check sum: the probe lost power and has not converted. */
  POWER_ON_VALUE,
  /** All bytes zero: the bus is shorted low. */
  ALL_ZERO_FRAME,
  /** Outside what the place it hangs in can have. */
  OUT_OF_RANGE,
  /** Faster than liquid or plate can change. */
  IMPOSSIBLE_RATE
}
