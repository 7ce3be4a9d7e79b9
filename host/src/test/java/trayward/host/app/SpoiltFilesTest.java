package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import trayward.host.Verifies;
import trayward.host.Verifies.Side;

/**
 * The real program on files that turn bad in the middle of heat: a pipe without a writer blocks
 * whoever opens it for ever, a folder in a file's place can be neither read nor replaced.
 */
@Timeout(180)
@Tag("full")
class SpoiltFilesTest {

  private static final String BATH = "28-0000000000b1";

  /** Readings are stale after 4 s and bad 3 s later (SR-08); 2 s for a round and for scans. */
  private static final double STALE_AND_BAD_S = 4 + 3 + 2;

  @TempDir private static Path folder;
  private static RigFleet fleet;

  @BeforeAll
  static void heatAtEveryBench() throws Exception {
    List<String> plain = List.of();
    fleet =
        RigFleet.heating(
            folder,
            Map.of("probe", plain, "input", plain, "output", plain, "air", plain, "record", plain));
  }

  @AfterAll
  static void end() {
    fleet.close();
  }

  @Test
  @Verifies(value = "SR-18", side = Side.ALLOWS)
  void aProbeThatBlocksItsReaderForEverLeavesTheScanAliveAndTheHeatOff() throws Exception {
    RigFleet.Place at = fleet.at("probe");
    at.bench().rigLeaves(BATH);
    pipeInPlaceOf(at.bench().probes().resolve(BATH).resolve("w1_slave"));
    long coldMs = Outside.await(at.bench(), "heater_relay", "0", STALE_AND_BAD_S);
    System.out.println("blocked reader: heater relay open after " + coldMs + " ms");
    Outside.await(at.bench(), "safety_relay", "0", 2);
    Outside.await(at.bench(), "heat_w_seen_by_the_rig", "0", 2); // the rig's own step comes after
    Outside after = Outside.watch(at.bench(), 1);
    after.assertCold("a blocked reader");
    assertTrue(after.edges() >= 5, "the scan goes on: " + after);
    assertEquals("BATH_PROBE_BAD", at.program().status().path("first_out").asText());
  }

  @Test
  @Verifies(value = "SR-18", side = Side.WITHHOLDS)
  void anInputThatBlocksTheScanItselfLeavesNoHeat() throws Exception {
    RigFleet.Place at = fleet.at("input");
    at.bench().rigLeaves("fan_rpm");
    long lost = System.nanoTime();
    pipeInPlaceOf(at.bench().lines().resolve("fan_rpm"));
    Outside.watch(at.bench(), lost, 3).assertLost("a scan that is blocked");
  }

  @Test
  @Verifies(value = "SR-17", side = Side.WITHHOLDS)
  void anOutputThatCannotBeWrittenEndsTheProgramWithHeatOff() throws Exception {
    RigFleet.Place at = fleet.at("output");
    long lost = System.nanoTime();
    folderInPlaceOf(at.bench().lines().resolve("watchdog_line"));
    Outside.watch(at.bench(), lost, 3).assertLost("an output that cannot be written");
    assertEquals("0", at.bench().line("heater_relay"));
    assertEquals("0", at.bench().line("safety_relay"));
    assertEquals(OptionalInt.of(1), at.program().exitCode(9));
  }

  @Test
  @Verifies(value = "SR-17", side = Side.ALLOWS)
  void anInputThatCannotBeReadIsAnAbsentProofAndNoFailureOfTheProgram() throws Exception {
    RigFleet.Place at = fleet.at("air");
    at.bench().rigLeaves("airflow");
    folderInPlaceOf(at.bench().lines().resolve("airflow"));
    long coldMs = Outside.await(at.bench(), "heater_relay", "0", 1);
    System.out.println("unreadable airflow: heater relay open after " + coldMs + " ms");
    Outside.await(at.bench(), "safety_relay", "0", 2);
    Outside.await(at.bench(), "heat_w_seen_by_the_rig", "0", 2); // the rig's own step comes after
    Outside after = Outside.watch(at.bench(), 1);
    after.assertCold("unreadable airflow");
    assertTrue(after.edges() >= 5, "the scan goes on: " + after);
    assertEquals("AIR_LOST", at.program().status().path("first_out").asText());
  }

  @Test
  @Verifies(value = "SR-18", side = Side.ALLOWS)
  void aWriterOfTheRecordThatIsBlockedForEverNeitherStopsScansNorFreesALatch() throws Exception {
    RigFleet.Place at = fleet.at("record"); // its record says that heat is in progress: no bar
    pipeInPlaceOf(at.bench().data().resolve("controller-keep.txt.new"));
    at.bench().rigLeaves("airflow");
    Files.writeString(at.bench().lines().resolve("airflow"), "0\n"); // a trip, to be kept
    Outside.await(at.bench(), "safety_relay", "0", 2);
    Outside.await(at.bench(), "heat_w_seen_by_the_rig", "0", 2); // the rig's own step comes after
    at.program()
        .await(
            s ->
                !s.path("store_writable").asBoolean(true)
                    && s.path("state").asText().equals("LOCKOUT"));
    Outside after = Outside.watch(at.bench(), 1);
    after.assertCold("no record");
    assertTrue(after.edges() >= 5, "the scan goes on: " + after);
  }

  /** A pipe nobody writes to, in one step where a file was. */
  private static void pipeInPlaceOf(Path file) throws Exception {
    Path pipe = file.resolveSibling("pipe");
    assertEquals(0, new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor());
    Files.move(pipe, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
  }

  /** A folder with something in it where a file was: nothing can be renamed over it. */
  private static void folderInPlaceOf(Path file) throws IOException {
    Path beside = file.resolveSibling(file.getFileName() + ".folder");
    Files.createDirectories(beside.resolve("something"));
    boolean placed = false;
    for (int tries = 0; !placed && tries < 50; tries++) {
      Files.deleteIfExists(file);
      try {
        Files.move(beside, file);
        placed = true;
      } catch (FileAlreadyExistsException writtenMeanwhile) {
        // The program was quicker: again.
      }
    }
    assertTrue(placed, file + " was always written anew");
  }
}
