package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A program killed or frozen in the middle of heat, seen from outside: the watchdog line stops, and
 * a safety relay that needs its pulses takes the heat away (SR-18). The rig models that relay.
 */
class LostProgramTest {

  @TempDir private Path folder;

  @Test
  @Timeout(180)
  void aKilledProgramLeavesNoHeatWithinTwoSeconds() throws Exception {
    loses("-KILL");
  }

  @Test
  @Timeout(180)
  void aFrozenProgramLeavesNoHeatWithinTwoSeconds() throws Exception {
    loses("-STOP");
  }

  private void loses(String signal) throws Exception {
    RigBench bench = new RigBench(folder);
    Path config = bench.config();
    Process rig = bench.rig();
    try (RunningTrayward trayward = RunningTrayward.start(config)) {
      trayward.await(s -> s.path("bath_c").isNumber());
      trayward.send("POST", "/api/commands/start", "");
      trayward.await(
          s -> s.path("state").asText().equals("HEATING") && s.path("heater_on").asBoolean());
      awaitLine(bench, "heat_w_seen_by_the_rig", "200", 2.0);
      new ProcessBuilder("kill", signal, Long.toString(trayward.pid())).start().waitFor();
      long lostNanos = System.nanoTime();
      // Within half a second no edge may come any more.
      observeFor(0.5);
      String level = bench.line("watchdog_line");
      observeFor(0.4);
      assertEquals(level, bench.line("watchdog_line"), "the watchdog line still moves");
      awaitLine(bench, "heat_w_seen_by_the_rig", "0", 2.0 - (System.nanoTime() - lostNanos) / 1e9);
      assertEquals("1", bench.line("heater_relay"), "the killed program's own line stays on");
    } finally {
      rig.destroyForcibly();
    }
  }

  /**
   * Watches a line of another process until it says {@code wanted}; fails after {@code seconds}.
   */
  private static void awaitLine(RigBench bench, String name, String wanted, double seconds)
      throws Exception {
    long until = System.nanoTime() + (long) (seconds * 1e9);
    while (!bench.line(name).equals(wanted)) {
      assertTrue(System.nanoTime() < until, name + " is not " + wanted + " in time");
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(5));
    }
  }

  /** Lets real time pass in two other processes: nothing here could be told the time instead. */
  private static void observeFor(double seconds) {
    long until = System.nanoTime() + (long) (seconds * 1e9);
    for (long now = System.nanoTime(); now < until; now = System.nanoTime()) {
      LockSupport.parkNanos(until - now);
    }
  }
}
