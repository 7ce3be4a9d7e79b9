package trayward.host.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;
import trayward.host.bath.BookEntry;
import trayward.host.bath.EntryKind;

/** The table of the lines of the bath book, in the order of the wall clock and of entering. */
final class BookRows {

  private static final String LIVE = " AND taken_back_wall_ms IS NULL ";

  private BookRows() {}

  static BookEntry add(Handle handle, BookEntry entry, OptionalLong sessionId) {
    OptionalLong ms =
        Double.isNaN(entry.sessionS())
            ? OptionalLong.empty()
            : OptionalLong.of(Cells.ms(entry.sessionS()));
    var insert =
        handle
            .createUpdate(
                """
                INSERT INTO additions (bath_id, wall_ms, session_ms, session_id, kind, what,
                    dilution, millilitres, other, temperature_centi_c, doubt_ml, hot_ms)
                  VALUES (:bath, :wall, :ms, :session, :kind, :what, :dilution, :millilitres,
                    :other, :celsius, :doubt, :hot)
                """)
            .bind("bath", entry.bathId())
            .bind("wall", entry.wall().toEpochMilli())
            .bind("kind", entry.kind().word())
            .bind("what", entry.what())
            .bind("dilution", entry.dilution())
            .bind("millilitres", entry.millilitres())
            .bind("doubt", entry.doubtMl())
            .bind("hot", Math.round(entry.hotS() * 1000));
    Cells.bind(insert, "ms", ms);
    Cells.bind(insert, "session", sessionId);
    Cells.bind(insert, "other", entry.other());
    Cells.bind(insert, "celsius", Cells.centi(entry.celsius()));
    return byId(handle, insert.executeAndReturnGeneratedKeys().mapTo(Long.class).one())
        .orElseThrow();
  }

  /** The lines of a bath that count, in order. */
  static List<BookEntry> of(Handle handle, long bathId) {
    return handle
        .createQuery(
            "SELECT * FROM additions WHERE bath_id = :bath" + LIVE + "ORDER BY wall_ms, id")
        .bind("bath", bathId)
        .map(BookRows::entry)
        .list();
  }

  /** Only those that a person entered. */
  static List<BookEntry> entered(Handle handle, long bathId) {
    return of(handle, bathId).stream().filter(e -> e.kind().entered()).toList();
  }

  static Optional<BookEntry> byId(Handle handle, long id) {
    return handle
        .createQuery("SELECT * FROM additions WHERE id = :id" + LIVE)
        .bind("id", id)
        .map(BookRows::entry)
        .findOne();
  }

  /** How many a person entered, those taken back too. */
  static int count(Handle handle, long bathId) {
    return handle
        .createQuery(
            """
            SELECT count(*) FROM additions WHERE bath_id = :bath
              AND kind NOT IN ('evaporated', 'printed', 'taken-over')
            """)
        .bind("bath", bathId)
        .mapTo(Integer.class)
        .one();
  }

  /** When the newest line of a bath was, or another time where it has none. */
  static Instant newest(Handle handle, long bathId, Instant otherwise) {
    return handle
        .createQuery(
            "SELECT max(coalesce(max(wall_ms), :none), :none) FROM additions WHERE bath_id = :bath"
                + LIVE)
        .bind("none", otherwise.toEpochMilli())
        .bind("bath", bathId)
        .mapTo(Long.class)
        .map(Instant::ofEpochMilli)
        .one();
  }

  /** Every line that tells of something carried over, in order of time. */
  static List<BookEntry> carried(Handle handle) {
    return handle
        .createQuery(
            "SELECT * FROM additions WHERE kind = 'carried-over'" + LIVE + "ORDER BY wall_ms, id")
        .map(BookRows::entry)
        .list();
  }

  /** Lines in other books that tell of something carried over from this bath. */
  static List<BookEntry> carriedFrom(Handle handle, long bathId) {
    return handle
        .createQuery(
            "SELECT * FROM additions WHERE kind = 'carried-over' AND other = :bath"
                + LIVE
                + "ORDER BY wall_ms, id")
        .bind("bath", bathId)
        .map(BookRows::entry)
        .list();
  }

  /** What was poured in lately, each what and how much but once, newest first. */
  static List<BookEntry> pouredOfLate(Handle handle, int limit) {
    return handle
        .createQuery(
            """
            SELECT * FROM additions WHERE id IN (SELECT max(id) FROM
                (SELECT * FROM additions WHERE kind = 'poured' AND taken_back_wall_ms IS NULL
                  ORDER BY id DESC LIMIT 200)
                GROUP BY lower(what), dilution, millilitres)
              ORDER BY id DESC LIMIT :limit
            """)
        .bind("limit", limit)
        .map(BookRows::entry)
        .list();
  }

  /** The line that says a print went into a bath. */
  static Optional<BookEntry> ofPrint(Handle handle, long print) {
    return handle
        .createQuery("SELECT * FROM additions WHERE kind = 'printed' AND other = :print" + LIVE)
        .bind("print", print)
        .map(BookRows::entry)
        .findFirst();
  }

  static void change(Handle handle, BookEntry to) {
    Cells.bind(
            handle
                .createUpdate(
                    """
                    UPDATE additions SET what = :what, dilution = :dilution,
                      millilitres = :millilitres, doubt_ml = :doubt,
                      temperature_centi_c = :celsius WHERE id = :id
                    """)
                .bind("what", to.what())
                .bind("dilution", to.dilution())
                .bind("millilitres", to.millilitres())
                .bind("doubt", to.doubtMl())
                .bind("id", to.id()),
            "celsius",
            Cells.centi(to.celsius()))
        .execute();
  }

  static void takeBack(Handle handle, long id, Instant wall) {
    handle
        .createUpdate("UPDATE additions SET taken_back_wall_ms = :wall WHERE id = :id")
        .bind("wall", wall.toEpochMilli())
        .bind("id", id)
        .execute();
  }

  private static BookEntry entry(ResultSet row, StatementContext context) throws SQLException {
    return new BookEntry(
        row.getLong("id"),
        row.getLong("bath_id"),
        Cells.wall(row, "wall_ms"),
        Cells.secondsOf(row, "session_ms").orElse(Double.NaN),
        EntryKind.of(row.getString("kind")).orElseThrow(),
        row.getString("what"),
        row.getString("dilution"),
        row.getDouble("millilitres"),
        Cells.whole(row, "other"),
        Cells.celsius(row, "temperature_centi_c"),
        row.getDouble("doubt_ml"),
        Cells.seconds(row.getLong("hot_ms")));
  }
}
