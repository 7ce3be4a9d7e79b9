package trayward.host.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static trayward.host.store.LogScenes.EVENING;
import static trayward.host.store.LogScenes.marked;
import static trayward.host.store.LogScenes.refusal;
import static trayward.host.store.LogScenes.samples;

import java.io.BufferedReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import trayward.host.session.MarkKind;
import trayward.host.session.Print;
import trayward.host.session.Session;

class KilledProgramTest {

  @TempDir Path folder;

  @Test
  void a_killed_program_loses_no_mark_and_its_session_is_interrupted() throws Exception {
    Process program =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                KilledProgram.class.getName(),
                folder.toString())
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    try (BufferedReader says = program.inputReader(StandardCharsets.UTF_8)) {
      String line = says.readLine();
      while (line != null && !line.equals("print begun")) {
        line = says.readLine();
      }
      assertEquals("print begun", line);
      assertEquals(LogRefused.Reason.IN_USE, refusal(folder).reason());
      try (LogReader reader = LogFile.openToRead(folder)) {
        assertTrue(reader.currentPrint().orElseThrow().inProgress());
      }
    } finally {
      program.destroyForcibly().waitFor();
    }
    assertInterrupted(folder);
  }

  @Test
  void files_copied_from_under_a_running_program_open_as_after_a_power_cut() throws Exception {
    Path copy = Files.createDirectory(folder.resolve("copy"));
    Path live = folder.resolve("live");
    try (TrayLog log = LogFile.open(live)) {
      Session session = log.startSession(EVENING, true);
      marked(log, MarkKind.IN, session, 10);
      log.addTrace(session.id(), samples(0, 100));
      for (String name : List.of(LogFile.NAME, LogFile.NAME + "-wal")) {
        Files.copy(live.resolve(name), copy.resolve(name));
      }
    }
    assertTrue(Files.size(copy.resolve(LogFile.NAME + "-wal")) > 0, "not gathered yet");
    assertInterrupted(copy);
  }

  private static void assertInterrupted(Path folder) throws LogRefused {
    try (TrayLog log = LogFile.open(folder)) {
      assertEquals(Optional.empty(), log.openSession());
      Session session = log.sessions(1, 0).get(0);
      assertEquals("interrupted", session.ending());
      assertEquals(Optional.of(EVENING.plusMillis(99_003)), session.endedWall());
      Print print = log.print(1).orElseThrow();
      assertFalse(print.inProgress());
      assertEquals(OptionalDouble.of(99.003), print.closedS());
      assertEquals(100, log.counts().traceSamples());
      assertEquals(List.of(print), log.prints(10, 0));
    }
  }
}
