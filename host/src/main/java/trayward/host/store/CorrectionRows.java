package trayward.host.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;
import trayward.host.session.Correction;

/** The table of corrections: what stood there before, and what then. Rows are never changed. */
final class CorrectionRows {

  private CorrectionRows() {}

  /** Keeps that a field of a thing was one text and became another; the same text is none. */
  static void keep(Handle handle, Correction c) {
    if (c.was().equals(c.became())) {
      return;
    }
    handle
        .createUpdate(
            """
            INSERT INTO corrections (wall_ms, thing, thing_id, field, was, became)
              VALUES (:wall, :thing, :id, :field, :was, :became)
            """)
        .bind("wall", c.wall().toEpochMilli())
        .bind("thing", c.thing().word())
        .bind("id", c.thingId())
        .bind("field", c.field())
        .bind("was", c.was())
        .bind("became", c.became())
        .execute();
  }

  /** How many there are of a thing. */
  static int count(Handle handle, Correction.Thing thing, long id) {
    return handle
        .createQuery("SELECT count(*) FROM corrections WHERE thing = :thing AND thing_id = :id")
        .bind("thing", thing.word())
        .bind("id", id)
        .mapTo(Integer.class)
        .one();
  }

  /** What was corrected of a thing, oldest first: at most the newest {@code limit}. */
  static List<Correction> of(Handle handle, Correction.Thing thing, long id, int limit) {
    return handle
        .createQuery(
            """
            SELECT * FROM (SELECT * FROM corrections WHERE thing = :thing AND thing_id = :id
              ORDER BY id DESC LIMIT :limit) ORDER BY id
            """)
        .bind("thing", thing.word())
        .bind("id", id)
        .bind("limit", limit)
        .map(CorrectionRows::correction)
        .list();
  }

  private static Correction correction(ResultSet row, StatementContext context)
      throws SQLException {
    return new Correction(
        Instant.ofEpochMilli(row.getLong("wall_ms")),
        Correction.Thing.of(row.getString("thing")),
        row.getLong("thing_id"),
        row.getString("field"),
        row.getString("was"),
        row.getString("became"));
  }
}
