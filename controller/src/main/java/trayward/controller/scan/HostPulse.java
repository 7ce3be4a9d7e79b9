package trayward.controller.scan;

import java.util.concurrent.atomic.AtomicLong;

/**
 * The host's sign of life: a number that must change (SR-16). Any thread beats; the scan thread
 * judges. A number that stays the same is silence, however often it is written.
 */
public final class HostPulse {

  private final AtomicLong value = new AtomicLong();
  // Scan thread only.
  private long seen = Long.MIN_VALUE;
  private long changedNanos;

  /** The host says a number. */
  public void beat(long number) {
    value.set(number);
  }

  /** Scan thread: time since the number last changed, ms. */
  int silentMs(long nowNanos) {
    long now = value.get();
    if (now != seen) {
      seen = now;
      changedNanos = nowNanos;
    }
    return (int) Math.min(Integer.MAX_VALUE, (nowNanos - changedNanos) / 1_000_000L);
  }
}
