package trayward.host.store;

import java.util.List;

/**
 * The step to version 2: what is in a bath and when it was in the tray, the person's shelf, what is
 * said of a print, corrections, and what is worked out once (summaries, bath at the print).
 */
final class LogSchemaBook {

  /**
   * A line of the bath book keeps its place by {@code wall_ms} and id. {@code other} is the bath
   * something came from or went to, or the number of a print. Values that are worked out ({@code
   * print_baths}, {@code print_summaries}, {@code print_words}) can be made anew from the rest.
   */
  static final List<String> STATEMENTS =
      List.of(
          "ALTER TABLE sessions ADD COLUMN symptoms TEXT NOT NULL DEFAULT ''",
          "ALTER TABLE additions ADD COLUMN kind TEXT NOT NULL DEFAULT 'poured'",
          "ALTER TABLE additions ADD COLUMN dilution TEXT NOT NULL DEFAULT ''",
          "ALTER TABLE additions ADD COLUMN other INTEGER",
          "ALTER TABLE additions ADD COLUMN temperature_centi_c INTEGER",
          "ALTER TABLE additions ADD COLUMN doubt_ml REAL NOT NULL DEFAULT 0",
          "ALTER TABLE additions ADD COLUMN hot_ms INTEGER NOT NULL DEFAULT 0",
          "ALTER TABLE additions ADD COLUMN session_id INTEGER REFERENCES sessions (id)",
          "ALTER TABLE additions ADD COLUMN taken_back_wall_ms INTEGER",
          // What a carried-over part brought, as JSON: worked out from the book it came from.
          "ALTER TABLE additions ADD COLUMN contents TEXT",
          "CREATE INDEX additions_by_other ON additions (kind, other)",
          // The newest line says what is in the tray now; no bath for an empty tray.
          """
          CREATE TABLE in_tray (
            id INTEGER PRIMARY KEY AUTOINCREMENT,
            bath_id INTEGER REFERENCES baths (id),
            wall_ms INTEGER NOT NULL
          ) STRICT
          """,
          "INSERT INTO in_tray (bath_id, wall_ms)"
              + " SELECT id, made_wall_ms FROM baths ORDER BY id DESC LIMIT 1",
          // Up to where the trace has been counted for vapour and hours.
          """
          CREATE TABLE accounted (
            one INTEGER PRIMARY KEY CHECK (one = 1),
            session_id INTEGER NOT NULL REFERENCES sessions (id),
            up_to_ms INTEGER NOT NULL
          ) STRICT
          """,
          // What a person has and uses again; body is JSON with the fields of its kind.
          """
          CREATE TABLE shelf (
            id INTEGER PRIMARY KEY AUTOINCREMENT,
            kind TEXT NOT NULL,
            name TEXT NOT NULL,
            body TEXT NOT NULL,
            wall_ms INTEGER NOT NULL,
            gone_wall_ms INTEGER
          ) STRICT
          """,
          """
          CREATE UNIQUE INDEX one_of_a_name ON shelf (kind, name COLLATE NOCASE)
            WHERE gone_wall_ms IS NULL
          """,
          // Whatever went into a bath by a free name is on the shelf, its contents not told.
          "INSERT INTO shelf (kind, name, body, wall_ms)"
              + " SELECT 'concentrate', min(what), '{}', min(wall_ms) FROM additions"
              + " WHERE lower(what) NOT IN ('water', 'top-up') GROUP BY lower(what)",
          """
          CREATE TABLE corrections (
            id INTEGER PRIMARY KEY AUTOINCREMENT,
            wall_ms INTEGER NOT NULL,
            thing TEXT NOT NULL,
            thing_id INTEGER NOT NULL,
            field TEXT NOT NULL,
            was TEXT NOT NULL,
            became TEXT NOT NULL
          ) STRICT
          """,
          "CREATE INDEX corrections_of_a_thing ON corrections (thing, thing_id, id)",
          """
          CREATE TABLE print_fields (
            print INTEGER NOT NULL REFERENCES prints (number),
            field TEXT NOT NULL,
            value TEXT NOT NULL,
            PRIMARY KEY (print, field)
          ) STRICT, WITHOUT ROWID
          """,
          "CREATE INDEX print_fields_by_value ON print_fields (field, value)",
          """
          CREATE TABLE print_steps (
            id INTEGER PRIMARY KEY AUTOINCREMENT,
            print INTEGER NOT NULL REFERENCES prints (number),
            kind TEXT NOT NULL,
            seconds REAL,
            dilution TEXT NOT NULL DEFAULT '',
            what TEXT NOT NULL DEFAULT '',
            wall_ms INTEGER NOT NULL,
            taken_back_wall_ms INTEGER
          ) STRICT
          """,
          "CREATE INDEX print_steps_of_a_print ON print_steps (print, id)",
          """
          CREATE TABLE pictures (
            id INTEGER PRIMARY KEY AUTOINCREMENT,
            print INTEGER NOT NULL REFERENCES prints (number),
            file TEXT NOT NULL,
            type TEXT NOT NULL,
            width INTEGER NOT NULL,
            height INTEGER NOT NULL,
            bytes INTEGER NOT NULL,
            wall_ms INTEGER NOT NULL,
            taken_back_wall_ms INTEGER
          ) STRICT
          """,
          "CREATE INDEX pictures_of_a_print ON pictures (print, id)",
          """
          CREATE TABLE print_baths (
            print INTEGER PRIMARY KEY REFERENCES prints (number),
            bath_id INTEGER NOT NULL REFERENCES baths (id),
            litres REAL NOT NULL,
            strength REAL NOT NULL,
            bromide_g_per_l REAL NOT NULL,
            bromide_doubt REAL NOT NULL,
            sulfite_g_per_l REAL NOT NULL,
            sulfite_doubt REAL NOT NULL,
            area_m2 REAL NOT NULL,
            hot_s REAL NOT NULL
          ) STRICT
          """,
          """
          CREATE TABLE print_summaries (
            print INTEGER PRIMARY KEY REFERENCES prints (number),
            in_centi_c INTEGER,
            emergence_centi_c INTEGER,
            pull_centi_c INTEGER,
            mean_c REAL,
            min_centi_c INTEGER,
            max_centi_c INTEGER,
            deviation_k REAL,
            samples INTEGER NOT NULL,
            emergence_ms INTEGER,
            pull_ms INTEGER
          ) STRICT
          """,
          // Effective bath temperature from in to emergence, for the forecast; made anew after a
          // mark.
          """
          CREATE TABLE print_paces (
            print INTEGER PRIMARY KEY REFERENCES prints (number),
            emergence_c REAL
          ) STRICT
          """,
          """
          CREATE TRIGGER a_mark_is_changed AFTER UPDATE ON marks BEGIN
            DELETE FROM print_paces WHERE print = NEW.print;
          END
          """,
          "CREATE VIRTUAL TABLE print_words USING"
              + " fts5 (words, content = '', contentless_delete = 1)",
          "INSERT INTO print_words (rowid, words) SELECT number, title || ' ' || notes FROM prints",
          "PRAGMA user_version = 2");

  private LogSchemaBook() {}
}
