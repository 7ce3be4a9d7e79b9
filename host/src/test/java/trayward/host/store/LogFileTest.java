package trayward.host.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static trayward.host.store.LogScenes.closedLog;
import static trayward.host.store.LogScenes.otherProgramDoes;
import static trayward.host.store.LogScenes.refusal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LogFileTest {

  @TempDir Path folder;

  @Test
  void folder_and_file_are_made_where_there_are_none() throws LogRefused {
    Path deep = folder.resolve("a").resolve("trayward-data");
    try (TrayLog log = LogFile.open(deep)) {
      assertTrue(Files.isRegularFile(deep.resolve(LogFile.NAME)));
      assertEquals(0, log.counts().sessions());
    }
  }

  @Test
  void a_folder_whose_name_has_odd_characters_is_taken_as_it_is() throws LogRefused {
    Path odd = folder.resolve("what? 100 % dark #2 ü");
    closedLog(odd);
    assertTrue(Files.isRegularFile(odd.resolve(LogFile.NAME)));
    try (LogReader reader = LogFile.openToRead(odd)) {
      assertEquals(1, reader.counts().prints());
    }
  }

  @Test
  void a_closed_log_is_one_file_and_opens_again_with_what_was_in_it() throws LogRefused {
    Path file = closedLog(folder);
    assertFalse(Files.exists(folder.resolve(LogFile.NAME + "-wal")));
    try (TrayLog log = LogFile.open(folder)) {
      assertEquals(file, log.file());
      assertEquals(1, log.counts().prints());
      assertEquals(4000, log.counts().traceSamples());
    }
  }

  @Test
  void every_answered_write_is_forced_to_the_disk() throws LogRefused {
    try (TrayLog log = LogFile.open(folder)) {
      assertEquals("wal", pragma(log, "journal_mode"));
      assertEquals("2", pragma(log, "synchronous")); // FULL
      assertEquals("1", pragma(log, "foreign_keys"));
      assertEquals("500", pragma(log, "busy_timeout"));
    }
  }

  @Test
  void reading_changes_no_byte_of_a_closed_log() throws LogRefused, IOException {
    Path file = closedLog(folder);
    byte[] before = Files.readAllBytes(file);
    try (LogReader reader = LogFile.openToRead(folder)) {
      assertEquals(1, reader.prints(10, 0).size());
    }
    assertArrayEquals(before, Files.readAllBytes(file));
    LogFile.open(folder).close();
  }

  @Test
  void reading_where_there_is_no_log_is_refused_and_makes_none() throws IOException {
    LogRefused refused = assertThrows(LogRefused.class, () -> LogFile.openToRead(folder).close());
    assertEquals(LogRefused.Reason.MISSING, refused.reason());
    assertEquals(
        "There is no log: " + folder.resolve(LogFile.NAME) + " is missing.", refused.getMessage());
    try (var files = Files.list(folder)) {
      assertEquals(0, files.count());
    }
  }

  @Test
  void a_newer_log_is_refused_and_left_as_it_is() throws Exception {
    Path file = closedLog(folder);
    otherProgramDoes(file, "PRAGMA user_version = 3");
    byte[] before = Files.readAllBytes(file);
    LogRefused refused = refusal(folder);
    assertEquals(LogRefused.Reason.NEWER, refused.reason());
    assertEquals(
        file + " is of log version 3 and this program reads version 2; use a newer program.",
        refused.getMessage());
    assertThrows(LogRefused.class, () -> LogFile.openToRead(folder).close());
    assertArrayEquals(before, Files.readAllBytes(file));
  }

  @Test
  void a_file_of_another_program_is_refused_and_left_as_it_is() throws Exception {
    Path file = folder.resolve(LogFile.NAME);
    otherProgramDoes(file, "CREATE TABLE sessions (id INTEGER)");
    byte[] before = Files.readAllBytes(file);
    assertEquals(LogRefused.Reason.FOREIGN, refusal(folder).reason());
    assertArrayEquals(before, Files.readAllBytes(file));
  }

  @Test
  void a_wal_file_without_its_log_is_refused() throws IOException, SQLException {
    Files.write(folder.resolve(LogFile.NAME + "-wal"), new byte[] {1, 2, 3});
    assertEquals(LogRefused.Reason.DAMAGED, refusal(folder).reason());
    assertFalse(Files.exists(folder.resolve(LogFile.NAME)));
  }

  @Test
  void a_half_made_new_log_is_made_again() throws IOException, LogRefused {
    Files.write(folder.resolve(LogFile.NAME + ".new"), new byte[] {1, 2, 3});
    LogFile.open(folder).close();
    assertFalse(Files.exists(folder.resolve(LogFile.NAME + ".new")));
  }

  @Test
  void a_folder_that_cannot_be_made_is_refused() throws IOException {
    Path file = Files.createFile(folder.resolve("file"));
    assertEquals(LogRefused.Reason.UNREACHABLE, refusal(file).reason());
    assertEquals(LogRefused.Reason.UNREACHABLE, refusal(file.resolve("below")).reason());
  }

  @Test
  void a_closed_log_says_so_and_may_be_closed_again() throws LogRefused {
    TrayLog log = LogFile.open(folder);
    log.close();
    log.close();
    LogFailed failed = assertThrows(LogFailed.class, log::openSession);
    assertEquals(log.file() + " is closed.", failed.getMessage());
  }

  private static String pragma(TrayLog log, String name) {
    return log.connection()
        .raw(handle -> handle.createQuery("PRAGMA " + name).mapTo(String.class).one());
  }
}
