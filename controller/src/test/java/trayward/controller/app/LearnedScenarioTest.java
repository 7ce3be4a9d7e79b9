package trayward.controller.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import trayward.controller.event.EventKind;
import trayward.controller.keep.LearnedTray;
import trayward.controller.keep.LearnedTray.Figure;
import trayward.controller.scan.Snapshot;
import trayward.controller.scan.TrayView;

/** Rehearsals that begin with what an earlier one learned, and trays a heater is too small for. */
class LearnedScenarioTest {

  private static final LearnedTray LEARNED =
      new LearnedTray(
          "tray",
          0,
          250,
          false,
          new Figure(250, 0.08),
          new Figure(812.5, 0.05),
          new Figure(24, 0.08),
          new Figure(3, 0.1),
          new Figure(1.25, 0.1),
          new Figure(6, 0.1),
          new Figure(2.5, 0.1),
          new Figure(100, 0.5),
          0.03);

  @TempDir private Path folder;

  private Path scenario(String text) throws Exception {
    return Files.writeString(folder.resolve("next.toml"), text);
  }

  private void learned(String text) throws Exception {
    Files.createDirectories(folder.resolve("first"));
    Files.writeString(folder.resolve("first").resolve(LearnedToml.FILE), text);
  }

  @Test
  void theFolderIsSeenFromTheScenario() throws Exception {
    learned(LearnedToml.write(LEARNED));
    Scenario scenario = Scenario.read(scenario("[learned]\nfrom = \"first\"\n"));
    assertEquals(LEARNED, scenario.learned().orElseThrow());
  }

  @Test
  void anotherTrayAMissingFileAndAnUnknownKeyAreRefusedInOneLine() throws Exception {
    Path next = scenario("[learned]\nfrom = \"first\"\n");
    String missing = assertThrows(ConfigRefused.class, () -> Scenario.read(next)).line();
    assertTrue(missing.contains("learned.toml"), missing);
    learned(LearnedToml.write(LEARNED));
    Path other = scenario("[tray]\nname = \"wide\"\n[learned]\nfrom = \"first\"\n");
    String wrong = assertThrows(ConfigRefused.class, () -> Scenario.read(other)).line();
    assertTrue(wrong.contains("found 'tray', accepted is 'wide'"), wrong);
    Path unknown = scenario("[learned]\nfrom = \"first\"\nx = 1\n");
    assertThrows(ConfigRefused.class, () -> Scenario.read(unknown));
    learned(LearnedToml.write(LEARNED).replace("812.500000", "8.0"));
    Path next2 = scenario("[learned]\nfrom = \"first\"\n");
    String plate = assertThrows(ConfigRefused.class, () -> Scenario.read(next2)).line();
    assertTrue(plate.contains("plate: found 8"), plate);
  }

  @Test
  void aNameThatIsNoNameIsRefused() {
    String toml = "[tray]\nname = \"a\\tb\"\n";
    ConfigRefused refused = assertThrows(ConfigRefused.class, () -> Scenario.parse("s.toml", toml));
    assertTrue(refused.line().contains("tray.name"), refused.line());
  }

  @Test
  void whatARehearsalLearnedIsToldAndAnEventAndOffered() throws Exception {
    Played played = new Played();
    Rehearsal rehearsal =
        new Rehearsal(
            Scenario.parse(
                "s.toml",
                Warmed.scenario(3, "duration_s = 1300\n").replace("duration_s = 3600\n", "")),
            played);
    rehearsal.run();
    LearnedTray learned = rehearsal.learned().orElseThrow();
    assertEquals(1100, learned.plate().value(), 55);
    assertEquals(List.of("LEARNED"), played.told(EventKind.TRAY));
  }

  private static TrayView tray(RehearsalRow row) {
    Snapshot snapshot = row.snapshot();
    if (snapshot == null) {
      throw new AssertionError("no scan yet");
    }
    return snapshot.tray();
  }

  private static Played small(String more) throws ConfigRefused {
    return Played.of(
        """
        duration_s = 120
        [tray]
        heater_w = 113
        [control]
        set_c = %s
        [[at]]
        t_s = 10
        do = "start"
        """
            .formatted(more));
  }

  /** 113 W hold 40 °C at 95 % of their power: see HoldReachTest. */
  @Test
  void aHeaterTooSmallIsToldBeforeAnybodyWaitsAndAtTheStart() throws Exception {
    Played over = small("41");
    assertEquals(List.of("HEATER_TOO_SMALL", "HEATER_TOO_SMALL"), over.told(EventKind.TRAY));
    assertTrue(tray(over.rows.get(0)).outOfReach());
    assertEquals(40, tray(over.rows.get(0)).highestHoldC(), 0.2);
    Played within = small("39");
    assertEquals(List.of(), within.told(EventKind.TRAY));
    assertTrue(!tray(within.rows.get(0)).outOfReach());
  }

  @Test
  void aSetTemperatureOutOfReachIsToldWhenItIsChosenAndTakenBackByAnother() throws Exception {
    Played played =
        small(
            "39\n[[at]]\nt_s = 60\ndo = \"set-temperature\"\ncelsius = 45\n[[at]]\nt_s = 90\ndo"
                + " = \"set-temperature\"\ncelsius = 39");
    assertEquals(List.of("HEATER_TOO_SMALL"), played.told(EventKind.TRAY));
    assertEquals(60, played.first(0, r -> tray(r).outOfReach()), 0.3);
    assertEquals(90, played.first(61, r -> !tray(r).outOfReach()), 0.3);
  }
}
