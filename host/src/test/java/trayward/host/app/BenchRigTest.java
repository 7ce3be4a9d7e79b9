package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The main job on the bench rig: the tray is another process, and all between is small files. */
class BenchRigTest {

  @TempDir private Path folder;

  @Test
  @Timeout(240)
  void aWholeSessionFromColdBathToFinishedPrintOnFilesOfAnotherProcess() throws Exception {
    RigBench bench = new RigBench(folder);
    Path config = bench.config(30);
    Process rig = bench.rig();
    try (RunningTrayward trayward = RunningTrayward.start(config)) {
      trayward.await(s -> s.path("bath_c").isNumber());
      assertEquals(200, trayward.send("POST", "/api/commands/start", "").statusCode());
      trayward.awaitState("PURGING");
      assertEquals("1", bench.line("fan"));
      assertEquals("0", bench.line("heater_relay"));
      trayward.awaitState("HEATING");
      trayward.await(s -> Math.abs(s.path("bath_c").asDouble() - 30) < 0.5);
      assertEquals("1", bench.line("safety_relay"));
      JsonNode print = trayward.json("POST", "/api/marks", "{\"kind\":\"in\"}");
      assertEquals(1, print.path("id").asInt());
      trayward.await(s -> s.path("current_print").path("elapsed_s").asDouble() > 4);
      trayward.json("POST", "/api/marks", "{\"kind\":\"emergence\"}");
      trayward.await(s -> s.path("current_print").path("elapsed_s").asDouble() > 8);
      JsonNode done = trayward.json("POST", "/api/prints/1/marks", "{\"kind\":\"pull\"}");
      JsonNode summary = done.path("summary");
      assertEquals(30, summary.path("mean_c").asDouble(), 1.0, done.toString());
      assertTrue(summary.path("samples").asInt() >= 7, done.toString());
      assertTrue(summary.path("emergence_s").asDouble() > 3.9, done.toString());
      List<String> trace =
          trayward.send("GET", "/api/prints/1/trace.csv", "").body().lines().toList();
      assertTrue(trace.size() >= 8, trace.toString());
      // The rig dies: its tick stands still, and every input counts as absent.
      rig.destroyForcibly().waitFor();
      JsonNode after =
          trayward.await(
              s ->
                  !s.path("heater_on").asBoolean(true)
                      && s.path("state").asText().equals("AFTER_RUN"));
      assertEquals("0", bench.line("heater_relay"), after.toString());
      assertEquals("0", bench.line("safety_relay"));
      String said = trayward.endPolitely();
      assertTrue(said.contains("Heat is off"), said);
      assertTrue(said.contains("The log is closed"), said);
      Path wal = folder.resolve("data").resolve("trayward-log.db-wal");
      assertTrue(Files.notExists(wal), "a closed log is one file");
    } finally {
      rig.destroyForcibly();
    }
    assertPrintIsListed();
  }

  private void assertPrintIsListed() throws Exception {
    Process prints =
        RunningTrayward.process("print", "1", "--log", folder.resolve("data").toString());
    String text =
        new String(prints.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
    assertEquals(0, prints.waitFor(), text);
    assertTrue(text.contains("emergence"), text);
    assertTrue(text.contains("°C"), text);
  }
}
