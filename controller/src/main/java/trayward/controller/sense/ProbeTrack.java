package trayward.controller.sense;

import trayward.controller.calibrate.Correction;
import trayward.controller.port.RawReading;

/**
 * One probe through time: the newest classified reading and the last good one. A value; {@link
 * #next} returns the following one. Pure.
 *
 * <p>The rate of a reading is judged against the last <em>good</em> one over the time between the
 * two, so that a value which jumped and stayed is believed again only after as long as an honest
 * change would have taken.
 *
 * <p>What a bus or a probe says of its own failure is recognised in the raw reading; every limit
 * sees the corrected one.
 *
 * @param reading the newest reading, classified
 * @param everGood whether a valid reading has been seen
 * @param goodCelsius last valid temperature, °C; NaN before the first
 * @param goodTakenNanos when that was true
 */
public record ProbeTrack(
    Reading reading, boolean everGood, double goodCelsius, long goodTakenNanos) {

  /**
   * The value a 1-Wire probe gives at power-up before its first conversion, by its data sheet. A
   * transmitter has no such value: its 85.0 °C are hot.
   */
  private static final double POWER_ON_C = 85.0;

  /**
   * Shortest time over which a rate is judged, s: below it quantisation alone makes large rates.
   */
  private static final double MIN_RATE_SPAN_S = 0.5;

  /** Before anything was read. */
  public static ProbeTrack start(long nowNanos) {
    return new ProbeTrack(
        new Reading(ReadingKind.ABSENT, Double.NaN, nowNanos), false, Double.NaN, nowNanos);
  }

  /** The track of a probe nobody calibrated. */
  public ProbeTrack next(RawReading raw, long nowNanos, ProbeLimits limits) {
    return next(raw, nowNanos, limits, Correction.NONE);
  }

  /** The track after {@code raw}, judged at {@code nowNanos}. */
  public ProbeTrack next(RawReading raw, long nowNanos, ProbeLimits limits, Correction correction) {
    boolean powerOn = raw.kind() == RawReading.Kind.FRAME && raw.celsius() == POWER_ON_C;
    double celsius = powerOn ? raw.celsius() : correction.apply(raw.celsius());
    ReadingKind kind = powerOn ? ReadingKind.POWER_ON_VALUE : classify(raw, celsius, limits);
    if (kind == ReadingKind.VALID && nowNanos - raw.takenNanos() > limits.staleNanos()) {
      kind = ReadingKind.STALE;
    }
    if (kind == reading.kind()
        && raw.takenNanos() == reading.takenNanos()
        && Double.compare(celsius, reading.celsius()) == 0) {
      return this;
    }
    Reading now = new Reading(kind, celsius, raw.takenNanos());
    return kind == ReadingKind.VALID
        ? new ProbeTrack(now, true, celsius, raw.takenNanos())
        : new ProbeTrack(now, everGood, goodCelsius, goodTakenNanos);
  }

  private ReadingKind classify(RawReading raw, double celsius, ProbeLimits limits) {
    return switch (raw.kind()) {
      case ABSENT -> ReadingKind.ABSENT;
      case CRC_ERROR -> ReadingKind.CRC_ERROR;
      case ALL_ZERO_FRAME -> ReadingKind.ALL_ZERO_FRAME;
      case FRAME, TRANSMITTED -> classifyFrame(celsius, raw.takenNanos(), limits);
    };
  }

  private ReadingKind classifyFrame(double celsius, long takenNanos, ProbeLimits limits) {
    if (!(celsius >= limits.minC() && celsius <= limits.maxC())) {
      return ReadingKind.OUT_OF_RANGE;
    }
    if (everGood) {
      double spanS = Math.max(MIN_RATE_SPAN_S, (takenNanos - goodTakenNanos) / 1e9);
      if (Math.abs(celsius - goodCelsius) > limits.maxRateKPerS() * spanS) {
        return ReadingKind.IMPOSSIBLE_RATE;
      }
    }
    return ReadingKind.VALID;
  }
}
