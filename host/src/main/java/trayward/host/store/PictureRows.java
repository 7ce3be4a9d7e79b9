package trayward.host.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;
import trayward.host.session.PrintPicture;

/** The table of pictures. One taken back stays, and so do its files. */
final class PictureRows {

  private PictureRows() {}

  /** Adds one; the id it comes with is not looked at. Gives it with its own. */
  static PrintPicture add(Handle handle, PrintPicture picture) {
    long id =
        handle
            .createUpdate(
                """
                INSERT INTO pictures (print, file, type, width, height, bytes, wall_ms)
                  VALUES (:print, :file, :type, :width, :height, :bytes, :wall)
                """)
            .bind("print", picture.print())
            .bind("file", picture.file())
            .bind("type", picture.type())
            .bind("width", picture.width())
            .bind("height", picture.height())
            .bind("bytes", picture.bytes())
            .bind("wall", picture.wall().toEpochMilli())
            .executeAndReturnGeneratedKeys()
            .mapTo(Long.class)
            .one();
    return byId(handle, id).orElseThrow();
  }

  static Optional<PrintPicture> byId(Handle handle, long id) {
    return handle
        .createQuery("SELECT * FROM pictures WHERE id = :id AND taken_back_wall_ms IS NULL")
        .bind("id", id)
        .map(PictureRows::picture)
        .findOne();
  }

  static List<PrintPicture> of(Handle handle, long print) {
    return handle
        .createQuery(
            "SELECT * FROM pictures WHERE print = :print AND taken_back_wall_ms IS NULL ORDER BY id")
        .bind("print", print)
        .map(PictureRows::picture)
        .list();
  }

  static void takeBack(Handle handle, long id, Instant wall) {
    handle
        .createUpdate("UPDATE pictures SET taken_back_wall_ms = :wall WHERE id = :id")
        .bind("wall", wall.toEpochMilli())
        .bind("id", id)
        .execute();
  }

  private static PrintPicture picture(ResultSet row, StatementContext context) throws SQLException {
    return new PrintPicture(
        row.getLong("id"),
        row.getLong("print"),
        row.getString("file"),
        row.getString("type"),
        row.getInt("width"),
        row.getInt("height"),
        row.getLong("bytes"),
        Cells.wall(row, "wall_ms"));
  }
}
