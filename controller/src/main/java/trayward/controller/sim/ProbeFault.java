package trayward.controller.sim;

/** What can be wrong with a simulated probe. */
public enum ProbeFault {
  /** Nothing. */
  NONE,
  /** Reads answer with nothing. */
  ABSENT,
  /** Frames fail their check sum. */
  CRC,
  /** It says 85 °C with a good check sum. */
  POWER_ON_VALUE,
  /** Frames are all zero. */
  ALL_ZERO,
  /** Fresh reads of one old value. */
  FROZEN,
  /** Reads too high by some kelvin. */
  OFFSET,
  /** Hangs in air, or came off the plate. */
  IN_AIR
}
