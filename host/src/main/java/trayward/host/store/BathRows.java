package trayward.host.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;
import trayward.host.bath.Addition;
import trayward.host.bath.Bath;
import trayward.host.bath.Checked;
import trayward.host.bath.Problem;

/** The tables of baths and of what was added to them. */
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

  /** Adds to a bath that is in the log and has room for more. */
  static Checked<Addition> addIfKnown(Handle handle, Addition addition) {
    String id = Long.toString(addition.bathId());
    if (byId(handle, addition.bathId()).isEmpty()) {
      return new Checked.Bad<>(new Problem("bath", id, "a bath that is in the log"));
    }
    if (additions(handle, addition.bathId()).size() >= TrayLog.ADDITIONS_MAX) {
      return new Checked.Bad<>(
          new Problem(
              "bath", id, "a bath with fewer than " + TrayLog.ADDITIONS_MAX + " additions"));
    }
    return new Checked.Good<>(add(handle, addition));
  }

  private static Addition add(Handle handle, Addition addition) {
    OptionalLong ms =
        Double.isNaN(addition.sessionS())
            ? OptionalLong.empty()
            : OptionalLong.of(Cells.ms(addition.sessionS()));
    long id =
        Cells.bind(
                handle
                    .createUpdate(
                        """
                        INSERT INTO additions (bath_id, wall_ms, session_ms, what, millilitres)
                          VALUES (:bath, :wall, :ms, :what, :millilitres)
                        """)
                    .bind("bath", addition.bathId())
                    .bind("wall", addition.wall().toEpochMilli())
                    .bind("what", addition.what())
                    .bind("millilitres", addition.millilitres()),
                "ms",
                ms)
            .executeAndReturnGeneratedKeys()
            .mapTo(Long.class)
            .one();
    return handle
        .createQuery("SELECT * FROM additions WHERE id = :id")
        .bind("id", id)
        .map(BathRows::addition)
        .one();
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

  static List<Addition> additions(Handle handle, long bathId) {
    return handle
        .createQuery("SELECT * FROM additions WHERE bath_id = :bath ORDER BY id")
        .bind("bath", bathId)
        .map(BathRows::addition)
        .list();
  }

  private static Bath bath(ResultSet row, StatementContext context) throws SQLException {
    return new Bath(
        row.getLong("id"),
        Cells.wall(row, "made_wall_ms"),
        row.getString("name"),
        row.getDouble("litres"),
        row.getString("note"));
  }

  private static Addition addition(ResultSet row, StatementContext context) throws SQLException {
    return new Addition(
        row.getLong("id"),
        row.getLong("bath_id"),
        Cells.wall(row, "wall_ms"),
        Cells.secondsOf(row, "session_ms").orElse(Double.NaN),
        row.getString("what"),
        row.getDouble("millilitres"));
  }
}
