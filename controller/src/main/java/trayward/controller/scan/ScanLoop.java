package trayward.controller.scan;

import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import trayward.controller.port.MonotonicClock;
import trayward.controller.safety.Interlock;

/**
 * Runs a scan ten times a second on a thread of its own and publishes each snapshot. The only
 * reader of the clock for control. Whatever escapes a scan ends the loop with outputs off (SR-17).
 */
public final class ScanLoop implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(ScanLoop.class);
  private static final long PERIOD_NANOS = Interlock.PERIOD_MS * 1_000_000L;

  private final Scan scan;
  private final MonotonicClock clock;
  private final Consumer<Throwable> onFailure;
  private final ScanTiming timing = new ScanTiming();
  private final AtomicReference<@Nullable Snapshot> latest = new AtomicReference<>();
  private final Runnable afterFirst;
  private final Thread thread;
  private volatile boolean stopping;
  private volatile boolean idle = true;

  /**
   * A loop that has not started.
   *
   * @param scan what to run
   * @param clock where time comes from
   * @param onFailure told once, on the loop's thread, after outputs are off
   * @param afterFirst told once, on the loop's thread, after the first scan
   */
  public ScanLoop(
      Scan scan, MonotonicClock clock, Consumer<Throwable> onFailure, Runnable afterFirst) {
    this.scan = scan;
    this.clock = clock;
    this.onFailure = onFailure;
    this.afterFirst = afterFirst;
    this.thread = new Thread(this::loop, "scan");
  }

  /** Starts the loop. */
  public void start() {
    idle = false;
    thread.start();
  }

  /** The newest snapshot; null before the first scan. */
  public @Nullable Snapshot latest() {
    return latest.get();
  }

  /** Whether no scan runs and heat is off: never started, or ended as asked. */
  public boolean idle() {
    return idle;
  }

  /** How late scans come. */
  public ScanTiming timing() {
    return timing;
  }

  private void loop() {
    try {
      boolean first = true;
      long due = clock.nanos();
      while (!stopping) {
        long now = clock.nanos();
        if (now < due) {
          LockSupport.parkNanos(due - now);
          continue;
        }
        timing.record(now - due);
        latest.set(scan.run(now));
        if (first) {
          afterFirst.run();
          first = false;
        }
        // A scan that came late is not made up for: the next is due a whole period after it.
        due = now - due > PERIOD_NANOS ? now + PERIOD_NANOS : due + PERIOD_NANOS;
      }
      scan.shutDown();
      idle = true;
    } catch (Throwable escaped) { // SR-17: also errors, whatever they are
      try {
        scan.shutDown();
      } finally {
        try {
          onFailure.accept(escaped); // before the log, which may fail too, or block
        } finally {
          LOG.error("a scan failed; heat is off", escaped);
        }
      }
    }
  }

  /** Ends the loop with heat off and waits for it, at most two seconds. */
  @Override
  public void close() {
    stopping = true;
    LockSupport.unpark(thread);
    try {
      thread.join(TimeUnit.SECONDS.toMillis(2));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
