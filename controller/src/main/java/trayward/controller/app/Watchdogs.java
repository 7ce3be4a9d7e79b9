package trayward.controller.app;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import trayward.controller.port.OutsideWatchdog;
import trayward.controller.scan.Snapshot;

/**
 * What watches the program from outside, from arming to the end. May be ended while it is being
 * armed: then it is armed and ended, or not at all. Any thread.
 */
final class Watchdogs {

  private final WatchdogTable table;
  private final Supplier<@Nullable Snapshot> latest;
  private final List<WatchdogThread> threads = new ArrayList<>();
  private boolean ended;

  /** Nothing armed yet. */
  Watchdogs(WatchdogTable table, Supplier<@Nullable Snapshot> latest) {
    this.table = table;
    this.latest = latest;
  }

  /**
   * Arms them and begins to tell them of scans.
   *
   * @param environment as it was handed to the program
   * @throws ConfigRefused where one cannot be armed
   */
  synchronized void arm(Map<String, String> environment) throws ConfigRefused {
    if (ended) {
      return;
    }
    for (OutsideWatchdog watchdog : table.open(environment)) {
      WatchdogThread thread = new WatchdogThread(watchdog, latest);
      threads.add(thread);
      thread.start();
    }
  }

  /**
   * Ends them.
   *
   * @param orderly the last scan ended as asked and heat is off
   */
  synchronized void end(boolean orderly) {
    ended = true;
    threads.forEach(thread -> thread.end(orderly));
    threads.clear();
  }
}
