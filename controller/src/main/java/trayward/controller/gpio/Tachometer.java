package trayward.controller.gpio;

/**
 * Speed of a fan from the times of its pulses. It is fed by the thread that hears the edges and
 * asked by the scan: one lock.
 *
 * <p>The speed is that of the pulses of the last {@code silenceMs}. Once a pulse is overdue the
 * speed falls with the time that has gone by, so that a fan that stops is not believed in until the
 * silence is complete.
 */
final class Tachometer {

  /** 20,000 revolutions a minute with 6 pulses each are 2000 in the longest window, one second. */
  static final int MOST_PULSES = 2048;

  /**
   * An edge may be told this much late, ns: the thread that hears it waits as long as a scan does
   * when the computer is busy, and a busy computer is no slower fan.
   */
  static final long LATE_NANOS = 100_000_000L;

  private static final double NANOS_PER_MINUTE = 60e9;

  private final int pulsesPerRevolution;
  private final long silenceNanos;
  private final long[] atNanos = new long[MOST_PULSES];
  private int newest = -1;
  private int held;
  private long pulses;

  /**
   * A fan that stands.
   *
   * @param pulsesPerRevolution pulses of one turn
   * @param silenceMs no pulse for this long: it stands, ms
   */
  Tachometer(int pulsesPerRevolution, int silenceMs) {
    this.pulsesPerRevolution = pulsesPerRevolution;
    this.silenceNanos = silenceMs * 1_000_000L;
  }

  /** A pulse, at a monotonic time in nanoseconds. */
  synchronized void pulse(long nowNanos) {
    newest = (newest + 1) % MOST_PULSES;
    atNanos[newest] = nowNanos;
    held = Math.min(held + 1, MOST_PULSES);
    pulses++;
  }

  /** Pulses since the beginning. */
  synchronized long pulses() {
    return pulses;
  }

  /** Revolutions per minute at a monotonic time in nanoseconds; 0 where it is silent. */
  synchronized double rpm(long nowNanos) {
    int within = within(nowNanos);
    if (within < 2) {
      return 0;
    }
    long last = atNanos[newest];
    long span = last - back(within - 1);
    if (span <= 0) {
      return 0;
    }
    double meanGap = (double) span / (within - 1);
    double overdue = nowNanos - last - LATE_NANOS;
    return NANOS_PER_MINUTE / (Math.max(meanGap, overdue) * pulsesPerRevolution);
  }

  /** How many of the newest pulses are no older than the silence. */
  private int within(long nowNanos) {
    int count = 0;
    while (count < held && nowNanos - back(count) < silenceNanos) {
      count++;
    }
    return count;
  }

  private long back(int pulsesAgo) {
    return atNanos[Math.floorMod(newest - pulsesAgo, MOST_PULSES)];
  }
}
