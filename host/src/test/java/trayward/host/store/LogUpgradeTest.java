package trayward.host.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static trayward.host.store.LogScenes.otherProgramDoes;
import static trayward.host.store.LogScenes.refusal;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import trayward.host.session.Print;

/** A log that an earlier version wrote is brought up to date whole, or left as it was. */
class LogUpgradeTest {

  @TempDir Path folder;

  /** A log of the first version with a session, a print, a bath and what was added to it. */
  private Path first() throws Exception {
    Path file = folder.resolve(LogFile.NAME);
    try (Connection made = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement does = made.createStatement()) {
      for (String sql : LogSchema.STEPS.get(0)) {
        does.execute(sql);
      }
      for (String sql :
          List.of(
              "INSERT INTO sessions VALUES (1, 0, 9000000, 'off', 1)",
              "INSERT INTO prints VALUES (1, 1, 100000, 'Reeds', 'at dusk', NULL, NULL)",
              "INSERT INTO marks VALUES (1, 1, 'in', 100000, 100000, 'pedal', 4006, 0, NULL)",
              "INSERT INTO marks VALUES (2, 1, 'pull', 400000, 400000, 'page', 4003, 0, NULL)",
              "INSERT INTO baths VALUES (1, 50000, 'first', 1.5, 'made of what was left')",
              "INSERT INTO additions VALUES (1, 1, 60000, 10000, 'stock A', 40)",
              "INSERT INTO additions VALUES (2, 1, 70000, NULL, 'Stock A', 20)",
              "INSERT INTO additions VALUES (3, 1, 80000, NULL, 'water', 100)",
              "INSERT INTO states VALUES (1, 'HOLDING')",
              "INSERT INTO trace VALUES (1, 100000, 4006, 4600, 4000, 431, 1, 1)")) {
        does.execute(sql);
      }
    }
    return file;
  }

  @Test
  void a_log_of_the_first_version_keeps_all_that_is_in_it() throws Exception {
    first();
    try (TrayLog log = LogFile.open(folder)) {
      Print print = log.print(1).orElseThrow();
      assertEquals("Reeds", print.title());
      assertEquals(300, print.pullAt().orElseThrow().sessionS() - 100, 1e-9);
      assertEquals(1, log.traceOf(print).size());
      assertEquals(1.5, log.bath(1).orElseThrow().litres());
      assertEquals(3, log.counts().additions());
    }
    try (LogReader reader = LogFile.openToRead(folder)) {
      assertEquals(1, reader.counts().prints());
    }
  }

  @Test
  void one_who_only_reads_changes_nothing_and_says_what_does() throws Exception {
    Path file = first();
    byte[] before = Files.readAllBytes(file);
    LogRefused refused = assertThrows(LogRefused.class, () -> LogFile.openToRead(folder).close());
    assertEquals(LogRefused.Reason.OLDER, refused.reason());
    assertTrue(refused.getMessage().contains("brings it up to date"), refused.getMessage());
    assertArrayEquals(before, Files.readAllBytes(file));
  }

  @Test
  void a_step_that_fails_leaves_the_first_version_as_it_was() throws Exception {
    Path file = first();
    otherProgramDoes(file, "CREATE TABLE shelf (mine TEXT)");
    assertEquals(LogRefused.Reason.UNREACHABLE, refusal(folder).reason());
    try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement does = other.createStatement();
        var version = does.executeQuery("PRAGMA user_version")) {
      assertEquals(1, version.getInt(1));
    }
    try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement does = other.createStatement();
        var columns = does.executeQuery("SELECT count(*) FROM pragma_table_info('additions')")) {
      assertEquals(6, columns.getInt(1));
    }
  }
}
