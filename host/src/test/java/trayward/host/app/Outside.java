package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/**
 * What somebody with a lamp on each line would see of a program: nothing but the files of the rig.
 * Times are of the rig's process and this one; neither could be told the time instead.
 *
 * @param edges edges of the watchdog line seen
 * @param lastEdgeMs the last of them, ms after the beginning; 0 where there was none
 * @param lastHeatMs when heat was last seen on, ms after the beginning; 0 where it never was
 * @param longestBlindMs longest that heat was on after the last timely edge, ms: an edge is timely
 *     where it comes no later than two periods late
 */
record Outside(int edges, long lastEdgeMs, long lastHeatMs, long longestBlindMs) {

  /** SR-18: the line is silent this soon after the program is lost, ms. */
  static final long SILENT_MS = 500;

  /** SR-18: heat is gone this soon after the program is lost, ms. */
  static final long COLD_MS = 2000;

  /** One period and the two that a scan may be late, ms. */
  private static final long TIMELY_MS = 300;

  /** Watches for so long, beginning with {@code fromNanos}. */
  static Outside watch(RigBench bench, long fromNanos, double seconds) {
    long until = fromNanos + (long) (seconds * 1e9);
    String level = read(bench, "watchdog_line");
    int edges = 0;
    long lastEdge = 0;
    long timely = 0;
    long lastHeat = 0;
    long blind = 0;
    for (long now = System.nanoTime(); now < until; now = System.nanoTime()) {
      long ms = TimeUnit.NANOSECONDS.toMillis(now - fromNanos);
      String newLevel = read(bench, "watchdog_line");
      if (!newLevel.equals(level)) {
        level = newLevel;
        edges++;
        timely = ms - lastEdge <= TIMELY_MS ? ms : timely;
        lastEdge = ms;
      }
      if (!read(bench, "heat_w_seen_by_the_rig").equals("0")) {
        lastHeat = ms;
        blind = Math.max(blind, ms - timely);
      }
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(5));
    }
    return new Outside(edges, lastEdge, lastHeat, blind);
  }

  /** Watches for so long from now. */
  static Outside watch(RigBench bench, double seconds) {
    return watch(bench, System.nanoTime(), seconds);
  }

  private static String read(RigBench bench, String line) {
    try {
      return bench.line(line);
    } catch (IOException e) {
      return "unreadable";
    }
  }

  /** Watches until a line says something; fails after so many seconds; how long it took, ms. */
  static long await(RigBench bench, String line, String wanted, double seconds) {
    long from = System.nanoTime();
    while (!read(bench, line).equals(wanted)) {
      long ms = TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - from);
      assertTrue(ms < seconds * 1000, line + " is not " + wanted + " after " + ms + " ms");
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(5));
    }
    return TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - from);
  }

  /** Whether heat is on to the end of the time watched, and scans come. */
  boolean heats(double seconds) {
    return edges >= seconds * 5 && lastHeatMs > seconds * 1000 - 300;
  }

  /** All is well: heat is on to the end of the time watched, and scans come. */
  void assertHeats(double seconds) {
    assertTrue(edges >= seconds * 5, this + ": hardly a scan came");
    assertTrue(lastHeatMs > seconds * 1000 - 300, this + ": heat is off");
  }

  /** The program is lost: no edge and no heat any more, in time. */
  void assertLost(String how) {
    // A line in the report of the build: the numbers are what the notes quote.
    System.out.println("lost: " + how + ": last edge " + lastEdgeMs + " ms, heat " + lastHeatMs);
    assertTrue(lastEdgeMs <= SILENT_MS, how + ": the watchdog line still moves: " + this);
    assertTrue(lastHeatMs <= COLD_MS, how + ": heat stays: " + this);
  }

  /** Never was heat on longer than two seconds after the last timely scan. */
  void assertNeverBlind(String how) {
    System.out.println("starved: " + how + ": " + this);
    assertTrue(longestBlindMs <= COLD_MS, how + ": heat without control: " + this);
  }

  /** No heat at all in the time watched. */
  void assertCold(String how) {
    assertEquals(0, lastHeatMs, how + ": heat came back: " + this);
  }
}
