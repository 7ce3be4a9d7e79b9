package trayward.controller.port;

/** Gives the newest raw reading of each probe without waiting for a conversion. */
@FunctionalInterface
public interface ProbeReader {

  /**
   * The newest reading of a fitted probe. Never blocks on a bus and never throws.
   *
   * @param role which probe
   * @param nowNanos monotonic time of the scan, nanoseconds
   */
  RawReading latest(ProbeRole role, long nowNanos);
}
