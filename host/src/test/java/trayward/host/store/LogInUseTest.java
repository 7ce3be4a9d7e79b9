package trayward.host.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static trayward.host.store.LogScenes.EVENING;
import static trayward.host.store.LogScenes.closedLog;
import static trayward.host.store.LogScenes.mark;
import static trayward.host.store.LogScenes.marked;
import static trayward.host.store.LogScenes.otherProgram;
import static trayward.host.store.LogScenes.otherProgramDoes;
import static trayward.host.store.LogScenes.refusal;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.Statement;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import trayward.host.session.MarkKind;
import trayward.host.session.Print;
import trayward.host.session.Session;

class LogInUseTest {

  @TempDir Path folder;

  @Test
  void a_reader_sees_what_a_running_program_has_committed() throws LogRefused {
    try (TrayLog log = LogFile.open(folder);
        LogReader reader = LogFile.openToRead(folder)) {
      assertEquals(Optional.empty(), reader.currentPrint());
      Session session = log.startSession(EVENING, true);
      Print print = marked(log, MarkKind.IN, session, 10);
      assertEquals(Optional.of(print), reader.currentPrint());
      Print pulled = marked(log, MarkKind.PULL, session, 70);
      assertEquals(Optional.of(pulled), reader.print(print.number()));
    }
  }

  @Test
  void a_reader_leaves_the_running_program_its_log() throws LogRefused {
    try (TrayLog log = LogFile.open(folder)) {
      Session session = log.startSession(EVENING, true);
      LogFile.openToRead(folder).close();
      marked(log, MarkKind.IN, session, 10);
      try (LogReader reader = LogFile.openToRead(folder)) {
        assertEquals(1, reader.counts().prints());
      }
    }
  }

  @Test
  void a_second_running_program_is_refused_and_the_first_goes_on() throws LogRefused {
    try (TrayLog log = LogFile.open(folder)) {
      LogRefused refused = refusal(folder);
      assertEquals(LogRefused.Reason.IN_USE, refused.reason());
      assertEquals(
          folder.resolve(LogFile.NAME) + " is in use by another running Trayward.",
          refused.getMessage());
      Session session = log.startSession(EVENING, true);
      marked(log, MarkKind.IN, session, 1);
    }
    LogFile.open(folder).close();
  }

  @Test
  void a_file_another_program_holds_is_refused_until_it_lets_go() throws Exception {
    Path file = closedLog(folder);
    try (Connection other = otherProgram(file);
        Statement statement = other.createStatement()) {
      statement.execute("BEGIN EXCLUSIVE");
      LogRefused refused = refusal(folder);
      assertEquals(LogRefused.Reason.IN_USE, refused.reason());
      assertEquals(file + " is in use by another program.", refused.getMessage());
      statement.execute("ROLLBACK");
    }
    LogFile.open(folder).close();
  }

  @Test
  void a_file_another_program_holds_in_the_older_journal_mode_is_refused() throws Exception {
    Path file = closedLog(folder);
    otherProgramDoes(file, "PRAGMA journal_mode = DELETE");
    try (Connection other = otherProgram(file);
        Statement statement = other.createStatement()) {
      statement.execute("BEGIN EXCLUSIVE");
      assertEquals(LogRefused.Reason.IN_USE, refusal(folder).reason());
      LogRefused toRead = assertThrows(LogRefused.class, () -> LogFile.openToRead(folder).close());
      assertEquals(LogRefused.Reason.IN_USE, toRead.reason());
    }
    LogFile.open(folder).close();
  }

  @Test
  void another_program_that_holds_the_file_later_makes_a_write_fail_and_nothing_else()
      throws Exception {
    try (TrayLog log = LogFile.open(folder)) {
      Session session = log.startSession(EVENING, true);
      try (Connection other = otherProgram(log.file());
          Statement statement = other.createStatement()) {
        statement.execute("BEGIN IMMEDIATE");
        LogFailed failed = assertThrows(LogFailed.class, () -> mark(log, MarkKind.IN, session, 5));
        assertEquals(
            log.file() + " could not be written: another program holds it.", failed.getMessage());
        assertEquals(Optional.empty(), log.currentPrint());
        statement.execute("ROLLBACK");
      }
      assertInstanceOf(MarkResult.Marked.class, mark(log, MarkKind.IN, session, 5));
    }
  }
}
