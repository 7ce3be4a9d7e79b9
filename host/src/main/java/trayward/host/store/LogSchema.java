package trayward.host.store;

import java.util.List;
import org.jdbi.v3.core.Handle;

/**
 * The tables of the log. Temperatures are whole hundredths of a degree Celsius, times on a
 * session's own line and of the wall clock (since 1970) whole milliseconds, duty per mille.
 */
final class LogSchema {

  /** Schema version, kept in the file as {@code user_version}: how many {@link #STEPS} it has. */
  static final int VERSION = 2;

  /** Marks the file as this program's own, kept as {@code application_id}: "TRWD". */
  static final int APPLICATION_ID = 0x54525744;

  /** Tables that came with each step. */
  private static final List<List<String>> TABLES =
      List.of(
          List.of("sessions", "prints", "marks", "baths", "additions", "events", "states", "trace"),
          List.of(
              "in_tray",
              "accounted",
              "shelf",
              "corrections",
              "print_fields",
              "print_steps",
              "pictures",
              "print_baths",
              "print_summaries",
              "print_paces",
              "print_words"));

  /** The first version: sessions, prints with their marks, baths by name, events, the trace. */
  private static final List<String> FIRST =
      List.of(
          """
          CREATE TABLE sessions (
            id INTEGER PRIMARY KEY AUTOINCREMENT,
            started_wall_ms INTEGER NOT NULL,
            ended_wall_ms INTEGER,
            ending TEXT NOT NULL DEFAULT '',
            simulated INTEGER NOT NULL,
            CHECK ((ended_wall_ms IS NULL) = (ending = ''))
          ) STRICT
          """,
          """
          CREATE UNIQUE INDEX one_open_session ON sessions (ended_wall_ms IS NULL)
            WHERE ended_wall_ms IS NULL
          """,
          // closed_ms is session time; closed_by the print whose going in left this one unpulled.
          """
          CREATE TABLE prints (
            number INTEGER PRIMARY KEY AUTOINCREMENT,
            session_id INTEGER NOT NULL REFERENCES sessions (id),
            started_wall_ms INTEGER NOT NULL,
            title TEXT NOT NULL DEFAULT '',
            notes TEXT NOT NULL DEFAULT '',
            closed_ms INTEGER,
            closed_by INTEGER REFERENCES prints (number)
          ) STRICT
          """,
          "CREATE INDEX prints_of_session ON prints (session_id, number)",
          // A mark taken back stays, with the time it was taken back.
          """
          CREATE TABLE marks (
            id INTEGER PRIMARY KEY AUTOINCREMENT,
            print INTEGER NOT NULL REFERENCES prints (number),
            kind TEXT NOT NULL CHECK (kind IN ('in', 'emergence', 'pull')),
            session_ms INTEGER NOT NULL,
            wall_ms INTEGER NOT NULL,
            made_by TEXT NOT NULL,
            bath_centi_c INTEGER,
            undone INTEGER NOT NULL DEFAULT 0,
            undone_wall_ms INTEGER,
            CHECK ((undone_wall_ms IS NULL) = (undone = 0))
          ) STRICT
          """,
          "CREATE UNIQUE INDEX one_live_mark_of_a_kind ON marks (print, kind) WHERE undone = 0",
          """
          CREATE TABLE baths (
            id INTEGER PRIMARY KEY AUTOINCREMENT,
            made_wall_ms INTEGER NOT NULL,
            name TEXT NOT NULL,
            litres REAL NOT NULL,
            note TEXT NOT NULL
          ) STRICT
          """,
          """
          CREATE TABLE additions (
            id INTEGER PRIMARY KEY AUTOINCREMENT,
            bath_id INTEGER NOT NULL REFERENCES baths (id),
            wall_ms INTEGER NOT NULL,
            session_ms INTEGER,
            what TEXT NOT NULL,
            millilitres REAL NOT NULL
          ) STRICT
          """,
          "CREATE INDEX additions_of_bath ON additions (bath_id, id)",
          """
          CREATE TABLE events (
            id INTEGER PRIMARY KEY AUTOINCREMENT,
            session_id INTEGER REFERENCES sessions (id),
            wall_ms INTEGER NOT NULL,
            uptime_ms INTEGER NOT NULL,
            kind TEXT NOT NULL,
            subject TEXT NOT NULL,
            detail TEXT NOT NULL
          ) STRICT
          """,
          "CREATE INDEX events_of_session ON events (session_id, id)",
          "CREATE TABLE states (code INTEGER PRIMARY KEY, word TEXT NOT NULL UNIQUE) STRICT",
          """
          CREATE TABLE trace (
            session_id INTEGER NOT NULL REFERENCES sessions (id),
            t_ms INTEGER NOT NULL,
            bath_centi_c INTEGER,
            plate_centi_c INTEGER,
            set_centi_c INTEGER,
            duty_permille INTEGER NOT NULL,
            state INTEGER REFERENCES states (code),
            fan_proven INTEGER NOT NULL,
            PRIMARY KEY (session_id, t_ms)
          ) STRICT, WITHOUT ROWID
          """,
          "PRAGMA application_id = " + APPLICATION_ID,
          "PRAGMA user_version = 1");

  /**
   * What makes a log of each version out of the one before; the first makes an empty file a log. A
   * new log goes all the way too, so that the chain is tried every time. A step that was released
   * is never changed.
   */
  static final List<List<String>> STEPS = List.of(FIRST, LogSchemaBook.STATEMENTS);

  private LogSchema() {}

  /** Every table a log of this version has. */
  static List<String> tables(int version) {
    return TABLES.stream().limit(version).flatMap(List::stream).toList();
  }

  /** Brings a log of some version, 0 for an empty file, to {@link #VERSION}. */
  static boolean upgrade(Handle handle, int from) {
    STEPS.stream().skip(from).flatMap(List::stream).forEach(handle::execute);
    return from < VERSION;
  }
}
