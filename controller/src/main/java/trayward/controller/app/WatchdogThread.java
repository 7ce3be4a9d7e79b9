package trayward.controller.app;

import java.io.IOException;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import trayward.controller.port.OutsideWatchdog;
import trayward.controller.scan.Snapshot;

/**
 * Tells a watchdog outside of the program of complete scans (SR-18), on a thread of its own: the
 * scan neither waits for it nor knows of it. It vouches for nothing itself: where no new scan has
 * come since it last looked, it says nothing.
 */
final class WatchdogThread {

  private static final Logger LOG = LoggerFactory.getLogger(WatchdogThread.class);

  private final OutsideWatchdog watchdog;
  private final Supplier<@Nullable Snapshot> latest;
  private final Beat beat;
  private long toldOfScan;
  private boolean deaf;

  /** A thread that has not begun. */
  WatchdogThread(OutsideWatchdog watchdog, Supplier<@Nullable Snapshot> latest) {
    this.watchdog = watchdog;
    this.latest = latest;
    this.beat = new Beat("watchdog " + watchdog.name(), watchdog.periodMs(), this::look);
  }

  void start() {
    beat.start();
  }

  /** Tells of the newest scan, unless it has been told of. */
  void look() {
    Snapshot now = latest.get();
    if (now == null || now.scan() == toldOfScan) {
      return;
    }
    toldOfScan = now.scan(); // told once, also where it is not heard: the next scan is as good
    try {
      watchdog.feed(words(now));
      deaf = false;
    } catch (IOException e) {
      if (!deaf) { // once, not at every beat of a watchdog that stays away
        LOG.error("the watchdog {} cannot be told of a scan: {}", watchdog.name(), e.getMessage());
      }
      deaf = true;
    }
  }

  private static String words(Snapshot now) {
    return now.state() + now.firstOut().map(cause -> ": " + cause).orElse("");
  }

  /**
   * Ends it. A feed that hangs is left alone, and the watchdog to bite.
   *
   * @param orderly the last scan ended as asked and heat is off
   */
  void end(boolean orderly) {
    if (!beat.ended()) {
      return;
    }
    try {
      watchdog.end(orderly);
    } catch (IOException e) {
      LOG.error("the watchdog {} cannot be told of the end: {}", watchdog.name(), e.getMessage());
    }
  }
}
