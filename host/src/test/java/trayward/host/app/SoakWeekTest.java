package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.extension.AnnotatedElementContext;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.io.TempDirFactory;
import trayward.controller.app.Rehearsal;
import trayward.controller.app.Scenario;
import trayward.host.Verifies;
import trayward.host.Verifies.Side;
import trayward.host.store.BookModel;
import trayward.host.store.LogCopies;

/**
 * A printer's week in simulated time, every one of its six million scans: faults, power cuts,
 * restarts of the host, and the log on a disk. Looked at after each day, kept as {@code
 * target/soak/week.csv} and {@code week.svg}.
 */
@Tag("full")
class SoakWeekTest {

  private static final long SEED = Long.getLong("trayward.soak.seed", 20);
  private static final Path OUT = Path.of("target", "soak");

  /**
   * Growth of what is alive from the second day to the seventh, MiB: prints that the forecast
   * learns from are a kilobyte each. A byte kept of every scan would be five.
   */
  private static final double GROWTH_MIB = 2;

  @TempDir(factory = InMemory.class)
  private Path folder;

  /**
   * The log forces each second of trace to its disk: two hundred thousand times in a week, which
   * would be most of the time. Where there is a file system in memory, the files lie there.
   */
  static final class InMemory implements TempDirFactory {
    private static final Path MEMORY = Path.of("/dev/shm");

    @Override
    public Path createTempDirectory(AnnotatedElementContext element, ExtensionContext test)
        throws IOException {
      return Files.isWritable(MEMORY)
          ? Files.createTempDirectory(MEMORY, "soak")
          : Files.createTempDirectory("soak");
    }
  }

  private static void draw(SoakTable t) throws IOException {
    SoakPlot.write(
        OUT.resolve("week.svg"),
        "A simulated week with faults and restarts, looked at after each day; grey: warm-up",
        "days",
        t.column("day"),
        2,
        List.of(
            panel("heap after collection, MiB", 10, t, "heap_mib"),
            panel("threads and open descriptors", 10, t, "threads", "files"),
            panel("the log on the disk, MiB", 1, t, "log_mib"),
            panel("hours of heat", 1, t, "heat_h"),
            panel("so far", 10, t, "trips", "power_cuts", "lives_of_the_host"),
            panel("marks kept so far", 10, t, "marks")));
  }

  private static SoakPlot.Panel panel(
      String title, double atLeast, SoakTable table, String... columns) {
    return SoakPlot.panel(title, atLeast, table, c -> c.replace('_', ' '), columns);
  }

  @Test
  @Timeout(value = 60, unit = TimeUnit.MINUTES)
  @Verifies(value = "SR-12", side = Side.WITHHOLDS)
  @Verifies(value = "SR-13", side = Side.WITHHOLDS)
  @Verifies(value = "SR-13", side = Side.ALLOWS)
  void aWeekOfFaultsAndRestartsHeatsNothingByItselfLosesNoMarkAndLeavesNothingBehind()
      throws Exception {
    SoakTable table =
        new SoakTable(
            OUT.resolve("week.csv"),
            List.of(
                "day",
                "heap_mib",
                "threads",
                "files",
                "rss_mib",
                "log_mib",
                "heat_h",
                "trips",
                "power_cuts",
                "lives_of_the_host",
                "marks",
                "speed"));
    SoakWeekPlan plan = new SoakWeekPlan(SEED);
    SoakWeekHost host = new SoakWeekHost(folder);
    SoakWeekWatch watch = new SoakWeekWatch(plan, host, table);
    try (SoakWeekRecord record = new SoakWeekRecord(folder.resolve("controller-keep.txt"))) {
      Scenario week = Scenario.parse("week " + SEED, plan.toml());
      new Rehearsal(week, watch, Rehearsal::regulator, record).run();
    } finally {
      host.close();
    }
    draw(table);
    LogCopies.Checkup log = LogCopies.check(host.folder(), BookModel.STANDARD);
    System.out.println(log.counts());
    System.out.printf(
        "%d trips, %d power cuts, %d of them in lockout, %d lives of the host, heat %.1f h%n",
        watch.trips(), watch.cuts(), watch.cutsInLockout(), host.lives(), watch.heatedH());
    double growth = table.growth("heap_mib", 1);
    System.out.printf("heap grew by %.2f MiB from the second day on%n", growth);
    assertAll(
        () -> assertEquals(List.of(), log.findings()),
        () -> assertEquals(host.marksKept(), log.counts().marks(), "marks answered as kept"),
        () -> assertTrue(watch.trips() >= 20, "trips: " + watch.trips()),
        () -> assertTrue(watch.cutsInLockout() >= 5, "cuts in lockout: " + watch.cutsInLockout()),
        () -> assertTrue(watch.heatedH() >= 7, "an hour of heat a day at the least"),
        () -> assertTrue(growth < GROWTH_MIB, "what is alive grew by MiB " + growth),
        () -> flat(table, "threads"),
        () -> flat(table, "files"));
  }

  /** Never more than after the second day: nothing is drawn at that hour. */
  private static void flat(SoakTable table, String column) {
    double second = table.column(column)[1];
    double most = table.most(column, 2, table.size());
    assertTrue(most <= second, column + " from " + second + " to " + most);
  }
}
