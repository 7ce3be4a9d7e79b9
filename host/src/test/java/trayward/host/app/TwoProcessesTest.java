package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Controller and host as two processes at the ends of a serial cable, which is pulled out and put
 * back. What a person sees is asked of the host's page.
 */
@Timeout(value = 180, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class TwoProcessesTest {

  /** SR-16 with its shortest limit, s. */
  private static final int HOST_LOST_S = 5;

  /** Both must be back this soon after the cable is, s. */
  private static final double RECOVERED_S = 3;

  @TempDir private Path folder;
  private Cable cable;
  private Process controller;
  private RunningTrayward host;

  @BeforeEach
  void start() throws Exception {
    cable = new Cable(folder);
    Path tray =
        Files.writeString(
            folder.resolve("tray.toml"),
            """
            [link]
            serial_port = "%s"
            [log]
            folder = "%s/tray-data"
            [control]
            host_required = true
            set_c = 30
            [fan]
            spin_up_s = 0.5
            spin_down_s = 0.5
            [limits]
            host_lost_s = %d
            purge_s = 10
            contact_test_s = 15
            """
                .formatted(cable.tray(), folder, HOST_LOST_S));
    Path desk =
        Files.writeString(
            folder.resolve("desk.toml"),
            """
            [link]
            serial_port = "%s"
            [log]
            folder = "%s/desk-data"
            [server]
            port = 0
            host_at_tray = true
            """
                .formatted(cable.desk(), folder));
    controller = RunningTrayward.process("controller", "--config", tray.toString());
    awaitLine(controller, "The controller answers on");
    host = RunningTrayward.host(desk);
  }

  @AfterEach
  void end() throws Exception {
    host.close();
    controller.destroy();
    controller.waitFor();
    cable.close();
  }

  private static void awaitLine(Process process, String begins) throws IOException {
    BufferedReader output =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    List<String> said = new ArrayList<>();
    for (String line = output.readLine(); line != null; line = output.readLine()) {
      said.add(line);
      if (line.startsWith(begins)) {
        return;
      }
    }
    throw new IOException("the program ended and said: " + said);
  }

  /** Whether the page has a controller behind it now. */
  private boolean up() throws Exception {
    return host.send("GET", "/api/status", "").statusCode() == 200;
  }

  private double secondsUntil(boolean up) throws Exception {
    long from = System.nanoTime();
    while (up() != up) {
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(20));
    }
    return (System.nanoTime() - from) / 1e9;
  }

  private static long openFiles(long pid) throws IOException {
    try (Stream<Path> files = Files.list(Path.of("/proc", Long.toString(pid), "fd"))) {
      return files.count();
    }
  }

  private static long threads(long pid) throws IOException {
    try (Stream<Path> tasks = Files.list(Path.of("/proc", Long.toString(pid), "task"))) {
      return tasks.count();
    }
  }

  @Test
  void aSessionGoesOnOverACableThatIsPulledTwice() throws Exception {
    secondsUntil(true);
    assertEquals(200, host.send("POST", "/api/commands/start", "{}").statusCode());
    host.await(s -> s.path("state").asText().equals("HEATING"));
    JsonNode print = host.json("POST", "/api/marks", "{\"kind\":\"in\"}");
    long id = print.path("id").asLong();
    assertTrue(id > 0, print.toString());
    anotherRow(id);
    long[] before = {openFiles(controller.pid()), threads(controller.pid()), openFiles(host.pid())};
    pulled();
    // SR-16 withheld heat meanwhile, and SR-13: a link that is back starts none again.
    JsonNode back = host.await(s -> s.path("state").asText().equals("AFTER_RUN"));
    assertTrue(back.path("alarms").toString().contains("HOST_LOST"), back.toString());
    assertEquals(201, host.send("POST", "/api/marks", "{\"kind\":\"emergence\"}").statusCode());
    anotherRow(id);
    pulled();
    anotherRow(id);
    assertEquals(201, host.send("POST", "/api/marks", "{\"kind\":\"pull\"}").statusCode());
    gapIsAGap(id);
    assertEquals(before[0], openFiles(controller.pid()), "open files of the controller");
    assertEquals(before[1], threads(controller.pid()), "threads of the controller");
    assertTrue(openFiles(host.pid()) <= before[2] + 2, "open files of the host"); // page sockets
  }

  /** Pulls the cable until SR-16 has acted, and puts it back. */
  private void pulled() throws Exception {
    cable.pull();
    double noticedS = secondsUntil(false);
    assertTrue(noticedS < 3.5, "noticed after " + noticedS + " s");
    String why = host.send("POST", "/api/commands/stop", "{}").body();
    assertTrue(why.contains("serial port"), why); // a stop that is not delivered says so (SR-14)
    assertEquals(409, host.send("POST", "/api/marks", "{\"kind\":\"emergence\"}").statusCode());
    LockSupport.parkNanos(TimeUnit.SECONDS.toNanos(HOST_LOST_S + 1));
    cable.plug();
    double backS = secondsUntil(true);
    System.out.printf("noticed after %.2f s, back after %.2f s%n", noticedS, backS);
    assertTrue(backS < RECOVERED_S, "back after " + backS + " s");
  }

  private List<String> rows(long id) throws Exception {
    return host.send("GET", "/api/prints/" + id + "/trace.csv", "").body().lines().skip(1).toList();
  }

  /** Waits until the trace has a row more, so that a gap has one on either side. */
  private void anotherRow(long id) throws Exception {
    int before = rows(id).size();
    while (rows(id).size() <= before) {
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(20));
    }
  }

  /** While the cable was out nothing was recorded: no row is within, none is there twice. */
  private void gapIsAGap(long id) throws Exception {
    List<Double> at = rows(id).stream().map(r -> Double.parseDouble(r.split(",", -1)[0])).toList();
    int gaps = 0;
    for (int i = 1; i < at.size(); i++) {
      double stepS = at.get(i) - at.get(i - 1);
      assertTrue(stepS > 0, "row " + i + " is there twice");
      gaps += stepS > HOST_LOST_S - 3 ? 1 : 0;
    }
    assertEquals(2, gaps, at.toString());
  }
}
