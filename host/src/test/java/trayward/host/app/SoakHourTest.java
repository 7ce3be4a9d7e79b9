package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import trayward.host.Verifies;
import trayward.host.Verifies.Side;

/**
 * An hour of real time at the bench rig: both halves as packaged, a bath held with sheets and
 * pours, everybody at the page. Looked at from outside once a minute, kept as {@code
 * target/soak/hour.csv} and {@code hour.svg}; at the end memory, threads and descriptors are flat.
 */
@Tag("full")
class SoakHourTest {

  private static final int MINUTES = Integer.getInteger("trayward.soak.minutes", 60);

  /** Compilers and caches of a Java machine come to rest, and pictures and copies came once. */
  private static final int WARM_UP = Math.min(15, MINUTES / 3);

  /** What a board of 512 MB has for each, MiB. */
  private static final Map<String, Integer> MOST_MIB = Map.of("controller", 64, "host", 128);

  /**
   * Growth after the warm-up, by a straight line, MiB: what rarely used code adds when it is
   * compiled, and in the host a heap that may breathe between collections. An object lost in every
   * request of the hour's twenty thousand, or in every scan, is more.
   */
  private static final Map<String, Double> GROWTH_MIB = Map.of("controller", 2.0, "host", 8.0);

  /** With READY, where heat is withheld for a moment as the bath is above its set temperature. */
  private static final Set<String> HEATED = Set.of("READY", "HEATING", "HOLDING");

  private static final Path OUT = Path.of("target", "soak");

  @TempDir private Path folder;

  private static List<String> columns() {
    return List.of(
        "minute",
        "bath_c",
        "set_c",
        "heated",
        "scan_late_p999_ms",
        "scan_late_max_ms",
        "load",
        "prints",
        "told",
        "controller_rss_mib",
        "controller_pss_mib",
        "controller_threads",
        "controller_files",
        "controller_cpu_s",
        "host_rss_mib",
        "host_pss_mib",
        "host_threads",
        "host_files",
        "host_cpu_s");
  }

  private static void look(SoakTable table, int minute, PackagedHalves halves, SoakClients clients)
      throws Exception {
    JsonNode status = halves.host().status();
    JsonNode late = halves.host().json("GET", "/healthz", "").path("scan_lateness");
    ProcessFigures c = ProcessFigures.of(halves.controllerPid());
    ProcessFigures h = ProcessFigures.of(halves.host().pid());
    table.add(
        minute,
        status.path("bath_c").asDouble(Double.NaN),
        status.path("set_c").asDouble(Double.NaN),
        HEATED.contains(status.path("state").asText()) ? 1 : 0,
        late.path("p999_ms").asDouble(Double.NaN),
        late.path("max_ms").asDouble(Double.NaN),
        ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage(),
        (double) clients.prints(),
        (double) clients.told(),
        c.residentMib(),
        c.proportionalMib(),
        c.threads(),
        c.files(),
        c.cpuS(),
        h.residentMib(),
        h.proportionalMib(),
        h.threads(),
        h.files(),
        h.cpuS());
  }

  /** Starts heat, again where something ended it; whether it had to. */
  private static boolean start(RunningTrayward host) throws Exception {
    if (HEATED.contains(host.status().path("state").asText())) {
      return false;
    }
    System.out.println("not heated: " + host.status());
    host.send("POST", "/api/commands/acknowledge", "{}");
    host.send("POST", "/api/commands/reset", "{}");
    host.send("POST", "/api/commands/start", "{}");
    return true;
  }

  private static void draw(SoakTable t) throws Exception {
    double[] at = t.column("minute");
    SoakPlot.write(
        OUT.resolve("hour.svg"),
        "An hour on the bench rig with all clients, looked at once a minute; grey: warm-up",
        "minutes",
        at,
        WARM_UP,
        List.of(
            panel("resident memory, MiB", 128, t, "controller_rss_mib", "host_rss_mib"),
            panel("threads", 10, t, "controller_threads", "host_threads"),
            panel("open descriptors", 10, t, "controller_files", "host_files"),
            panel("processor time, s", 10, t, "controller_cpu_s", "host_cpu_s"),
            panel("temperature of the bath, °C", 40, t, "bath_c", "set_c"),
            panel("how late scans come: p99.9, ms", 5, t, "scan_late_p999_ms"),
            panel("load of the computer with two cores", 2, t, "load")));
  }

  private static SoakPlot.Panel panel(
      String title, double atLeast, SoakTable table, String... columns) {
    return SoakPlot.panel(title, atLeast, table, SoakHourTest::name, columns);
  }

  private static String name(String column) {
    int end = column.indexOf('_');
    return column.startsWith("host") || column.startsWith("controller")
        ? column.substring(0, end)
        : column.replace("_c", "").replace("scan_late_p999_ms", "scans");
  }

  @Test
  @Timeout(value = 100, unit = TimeUnit.MINUTES)
  @Verifies(value = "SR-15", side = Side.ALLOWS)
  @Verifies(value = "SR-17", side = Side.ALLOWS)
  void anHourWithEverybodyAtThePageLeavesMemoryThreadsAndDescriptorsAsTheyWere() throws Exception {
    assumeTrue(PackagedHalves.packaged(), "mvn package has not been run");
    SoakTable table = new SoakTable(OUT.resolve("hour.csv"), columns());
    int restarts = 0;
    Path log;
    Map<String, String> wrong;
    try (PackagedHalves halves = new PackagedHalves(folder, 38);
        SoakClients clients = new SoakClients(halves, folder);
        SoakBrowsers browsers = new SoakBrowsers(halves.host(), folder)) {
      log = halves.bench().data();
      RunningTrayward host = halves.host();
      host.await(s -> s.path("bath_c").isNumber());
      assertTrue(start(host));
      host.awaitState("HOLDING");
      clients.start();
      browsers.open();
      long began = System.nanoTime();
      for (int minute = 0; minute <= MINUTES; minute++) {
        long due = began + TimeUnit.MINUTES.toNanos(minute);
        for (long now = System.nanoTime(); now < due; now = System.nanoTime()) {
          LockSupport.parkNanos(due - now);
        }
        restarts += start(host) ? 1 : 0;
        look(table, minute, halves, clients);
        if (minute > 0) {
          draw(table);
        }
      }
      browsers.stillThere();
      clients.end();
      System.out.println("restarts " + restarts + ", answers " + clients.answers());
      wrong = Map.copyOf(clients.wrong());
      halves.endPolitely();
    }
    assertEquals(
        0, RunningTrayward.process("check-log", "--log", log.toString()).waitFor(), "the log");
    assertEquals(Map.of(), wrong);
    assertEquals(0, restarts, "heat ended by itself");
    flat(table, "controller");
    flat(table, "host");
  }

  /** Held to the bounds; all of them are told. */
  private static void flat(SoakTable table, String half) {
    int third = (MINUTES - WARM_UP) / 3;
    int end = table.size();
    double growth = table.growth(half + "_rss_mib", WARM_UP);
    double most = table.most(half + "_rss_mib", 0, end);
    System.out.printf("%s: %.1f MiB at most, grew by %.2f MiB%n", half, most, growth);
    assertAll(
        () -> assertTrue(most < MOST_MIB.getOrDefault(half, 0), half + " took MiB " + most),
        () -> assertTrue(growth < GROWTH_MIB.getOrDefault(half, 0.0), half + " grew MiB " + growth),
        () -> noMore(table, half + "_threads", third),
        () -> noMore(table, half + "_files", third));
  }

  /**
   * At the end no more than after the warm-up: pools of threads and connections are bounded and
   * full by then. Two more are two requests that are answered just when somebody looks.
   */
  private static void noMore(SoakTable table, String column, int third) {
    int end = table.size();
    double first = table.most(column, WARM_UP, WARM_UP + third);
    double last = table.most(column, end - third, end);
    System.out.printf("%s: %.0f, at the end %.0f%n", column, first, last);
    assertTrue(last <= first + 2, column + " from " + first + " to " + last);
  }
}
