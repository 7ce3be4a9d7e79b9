package trayward.host.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;
import trayward.host.bath.Bath;

/** The tables of baths and of which one is in the tray. */
final class BathRows {

  private BathRows() {}

  static Bath add(Handle handle, Bath bath) {
    long id =
        handle
            .createUpdate(
                """
                INSERT INTO baths (made_wall_ms, name, litres, note)
                  VALUES (:wall, :name, :litres, :note)
                """)
            .bind("wall", bath.madeWall().toEpochMilli())
            .bind("name", bath.name())
            .bind("litres", bath.litres())
            .bind("note", bath.note())
            .executeAndReturnGeneratedKeys()
            .mapTo(Long.class)
            .one();
    return byId(handle, id).orElseThrow();
  }

  static Optional<Bath> byId(Handle handle, long id) {
    return handle
        .createQuery("SELECT * FROM baths WHERE id = :id")
        .bind("id", id)
        .map(BathRows::bath)
        .findOne();
  }

  static List<Bath> newestFirst(Handle handle, int limit, int offset) {
    return handle
        .createQuery("SELECT * FROM baths ORDER BY id DESC LIMIT :limit OFFSET :offset")
        .bind("limit", limit)
        .bind("offset", offset)
        .map(BathRows::bath)
        .list();
  }

  static List<Bath> all(Handle handle) {
    return handle.createQuery("SELECT * FROM baths ORDER BY id").map(BathRows::bath).list();
  }

  static void setTexts(Handle handle, long id, String name, String note) {
    handle
        .createUpdate("UPDATE baths SET name = :name, note = :note WHERE id = :id")
        .bind("name", name)
        .bind("note", note)
        .bind("id", id)
        .execute();
  }

  /** The bath in the tray now; empty for an empty tray. */
  static Optional<Bath> inTray(Handle handle) {
    return handle
        .createQuery("SELECT bath_id FROM in_tray ORDER BY id DESC LIMIT 1")
        .map((row, context) -> Cells.whole(row, "bath_id"))
        .findOne()
        .filter(OptionalLong::isPresent)
        .flatMap(id -> byId(handle, id.getAsLong()));
  }

  static void putInTray(Handle handle, OptionalLong bath, Instant wall) {
    Cells.bind(
            handle
                .createUpdate("INSERT INTO in_tray (bath_id, wall_ms) VALUES (:bath, :wall)")
                .bind("wall", wall.toEpochMilli()),
            "bath",
            bath)
        .execute();
  }

  private static Bath bath(ResultSet row, StatementContext context) throws SQLException {
    return new Bath(
        row.getLong("id"),
        Cells.wall(row, "made_wall_ms"),
        row.getString("name"),
        row.getDouble("litres"),
        row.getString("note"));
  }
}
