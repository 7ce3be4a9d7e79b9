package trayward.host.app.goals;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import trayward.controller.app.Rehearsal;
import trayward.controller.app.Scenario;

/** The real regulator against the simulated tray. */
class GoalsTest {

  @TempDir private Path folder;

  @Test
  void aCoveredTrayIsMeasuredBesideItsBoundAndDoesNotTrip() {
    GoalCase in = GoalCase.COVERED;
    GoalScenario drawn = GoalScenario.of(TrayDraw.of(1, true), in);
    Figures got = GoalRun.of(drawn, in, Rehearsal.regulator(drawn.scenario()));
    assertEquals(0, got.get(Measure.TRIPS));
    double boundK = got.get(Measure.COVERED_BOUND);
    assertTrue(boundK > 0, "a wet bath rises once its evaporation ends");
    assertTrue(got.get(Measure.COVERED) >= boundK - 1e-3, "nobody beats the bound");
  }

  @Test
  @Tag("full")
  void fourTraysDoNotTripAndMakeAReport() throws Exception {
    PrintStream nowhere =
        new PrintStream(OutputStream.nullOutputStream(), true, StandardCharsets.UTF_8);
    Path old = Files.writeString(folder.resolve("worst-of-yesterday.toml"), "");
    Goals.Result result = new Goals(nowhere, 2).run(1, 4, folder);
    for (GoalCase in : GoalCase.values()) {
      String tripped = "trays: " + in.words() + ", " + Measure.TRIPS.words();
      assertFalse(result.summary().contains(tripped), result.summary());
    }
    assertTrue(result.summary().contains(" of 31 goals met."), result.summary());
    assertFalse(Files.exists(old));
    assertTrue(Files.readString(folder.resolve("goals.md")).contains("4 trays from seed 1"));
    assertTrue(Files.readString(folder.resolve("goals.svg")).endsWith("</svg>\n"));
    assertTrue(Files.readString(folder.resolve("goals.json")).contains("\"from_seed\" : 1"));
    try (Stream<Path> files = Files.list(folder)) {
      Set<Path> scenarios =
          files
              .filter(f -> f.getFileName().toString().endsWith(".toml"))
              .collect(Collectors.toSet());
      assertTrue(scenarios.size() >= GoalCase.values().length, scenarios.toString());
      for (Path scenario : scenarios) {
        assertEquals(40, Scenario.read(scenario).control().setC());
      }
    }
  }
}
