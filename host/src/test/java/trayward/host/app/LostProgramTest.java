package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import trayward.host.Verifies;
import trayward.host.Verifies.Side;

/**
 * The real program killed, frozen, starved and broken in the middle of heat, seen from outside: the
 * watchdog line stops, a safety relay that needs its pulses takes the heat away, and a program that
 * failed ends and says so by its exit code (SR-17, SR-18).
 */
@Timeout(180)
@Tag("full")
class LostProgramTest {

  /** A failed program ends within its last words, five seconds, and a little. */
  private static final double END_S = 9;

  @TempDir private static Path folder;
  private static RigFleet fleet;

  @BeforeAll
  static void heatAtEveryBench() throws Exception {
    List<String> plain = List.of();
    List<String> tamed = List.of(RunningTrayward.TAMED);
    fleet =
        RigFleet.heating(
            folder,
            Map.of(
                "killed", plain,
                "frozen", plain,
                "thrown", tamed,
                "stuck", tamed,
                "starved", tamed,
                "full", List.of(RunningTrayward.TAMED, "-Xmx48m")));
  }

  @AfterAll
  static void end() {
    fleet.close();
  }

  @Test
  @Verifies(value = "SR-18", side = Side.WITHHOLDS)
  void aKilledProgramLeavesNoHeatWithinTwoSeconds() throws Exception {
    RigFleet.Place at = fleet.at("killed");
    long lost = System.nanoTime();
    at.program().signal("KILL");
    Outside.watch(at.bench(), lost, 3).assertLost("killed");
    assertEquals("1", at.bench().line("heater_relay"), "the killed program's own line stays on");
  }

  @Test
  @Verifies(value = "SR-18", side = Side.WITHHOLDS)
  @Verifies(value = "SR-17", side = Side.WITHHOLDS)
  void aFrozenProgramLeavesNoHeatWithinTwoSecondsAndLocksOutWhenItComesBack() throws Exception {
    RigFleet.Place at = fleet.at("frozen");
    long lost = System.nanoTime();
    at.program().signal("STOP");
    Outside.watch(at.bench(), lost, 3).assertLost("frozen");
    at.program().signal("CONT");
    Outside.await(at.bench(), "heater_relay", "0", 1);
    Outside after = Outside.watch(at.bench(), 1);
    after.assertCold("after the frost");
    assertTrue(after.edges() >= 5, "SR-18: healthy scans pulse in lockout too");
    assertEquals("SCAN_LATE", at.program().status().path("first_out").asText());
  }

  @Test
  @Verifies(value = "SR-17", side = Side.WITHHOLDS)
  void anErrorInTheInterlockEndsTheProgramWithHeatOff() throws Exception {
    RigFleet.Place at = fleet.at("thrown");
    try (Tamed tamed = Tamed.attach(at.program())) {
      long lost =
          tamed.throwAt(
              "trayward.controller.safety.Interlock.step",
              Optional.empty(),
              "java.lang.NullPointerException");
      Outside.watch(at.bench(), lost, 3).assertLost("an error in the interlock");
      assertEquals("0", at.bench().line("heater_relay"));
      assertEquals("0", at.bench().line("safety_relay"));
      assertEquals(OptionalInt.of(1), at.program().exitCode(END_S));
    }
  }

  @Test
  @Verifies(value = "SR-17", side = Side.WITHHOLDS)
  @Verifies(value = "SR-18", side = Side.WITHHOLDS)
  void outputsThatCanNoLongerBeWrittenLeaveTheHeatToTheSilentWatchdog() throws Exception {
    RigFleet.Place at = fleet.at("stuck");
    try (Tamed tamed = Tamed.attach(at.program())) {
      long lost =
          tamed.throwAt(
              "trayward.controller.rig.RigFolder$1.write",
              Optional.empty(),
              "java.lang.OutOfMemoryError");
      Outside.watch(at.bench(), lost, 3).assertLost("no output can be written");
      assertEquals("1", at.bench().line("heater_relay"), "nothing could open it");
      assertEquals(OptionalInt.of(1), at.program().exitCode(END_S));
    }
  }

  @Test
  @Verifies(value = "SR-17", side = Side.WITHHOLDS)
  @Verifies(value = "SR-18", side = Side.WITHHOLDS)
  void aFullHeapLeavesNoHeatWithoutTimelyScans() throws Exception {
    RigFleet.Place at = fleet.at("full");
    try (Tamed tamed = Tamed.attach(at.program())) {
      CompletableFuture<Long> filling = CompletableFuture.supplyAsync(tamed::fillHeap);
      Outside first = Outside.watch(at.bench(), 12); // the heap fills up in this time
      first.assertNeverBlind("full heap");
      long filled = filling.get(60, TimeUnit.SECONDS);
      assertTrue(filled > 10_000_000, "the heap took " + filled);
      // Nothing is said of an exit: from outside, a scan that failed and one that waits for the
      // collector of a full heap look alike. Heat may be on only where scans come in time.
      Outside.watch(at.bench(), 3).assertNeverBlind("full heap, later");
    }
  }

  @Test
  @Verifies(value = "SR-17", side = Side.ALLOWS)
  @Verifies(value = "SR-18", side = Side.ALLOWS)
  @Verifies(value = "SR-17", side = Side.WITHHOLDS)
  void otherThreadsMayHangButScansInBurstsLeaveNoHeatWithoutControl() throws Exception {
    RigFleet.Place at = fleet.at("starved");
    try (Tamed tamed = Tamed.attach(at.program())) {
      int frozen = tamed.freezeAllBut(Set.of("scan", "probes", "Reference Handler"));
      assertTrue(frozen > 5, "page, recorder, writer and more: " + frozen);
      Outside.watch(at.bench(), 3).assertHeats(3);
      tamed.thaw();
    }
    Thread bursts = Bursts.of(at.program(), 300, 100, 12);
    Outside.watch(at.bench(), 5).assertNeverBlind("stopped 300 ms, run 100 ms");
    bursts.join();
  }
}
