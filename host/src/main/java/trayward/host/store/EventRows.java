package trayward.host.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.OptionalLong;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;

/** The table of events, of which the newest are kept. */
final class EventRows {

  private EventRows() {}

  /** Adds an event and drops what is older than the newest {@code keep}. */
  static void add(
      Handle handle,
      OptionalLong sessionId,
      Instant wall,
      double uptimeS,
      String kind,
      String subject,
      String detail,
      long keep) {
    long id =
        Cells.bind(
                handle
                    .createUpdate(
                        """
                        INSERT INTO events (session_id, wall_ms, uptime_ms, kind, subject, detail)
                          VALUES ((SELECT id FROM sessions WHERE id = :session), :wall, :uptime,
                            :kind, :subject, :detail)
                        """)
                    .bind("wall", wall.toEpochMilli())
                    .bind("uptime", Double.isFinite(uptimeS) ? Math.round(uptimeS * 1000) : 0)
                    .bind("kind", Cells.cut(kind, LogEvent.KIND_MAX))
                    .bind("subject", Cells.cut(subject, LogEvent.SUBJECT_MAX))
                    .bind("detail", Cells.cut(detail, LogEvent.DETAIL_MAX)),
                "session",
                sessionId)
            .executeAndReturnGeneratedKeys()
            .mapTo(Long.class)
            .one();
    handle.createUpdate("DELETE FROM events WHERE id <= :id").bind("id", id - keep).execute();
  }

  static List<LogEvent> newestFirst(Handle handle, OptionalLong sessionId, int limit) {
    String where = sessionId.isPresent() ? "WHERE session_id = :session " : "";
    var query =
        handle
            .createQuery("SELECT * FROM events " + where + "ORDER BY id DESC LIMIT :limit")
            .bind("limit", limit);
    sessionId.ifPresent(id -> query.bind("session", id));
    return query.map(EventRows::event).list();
  }

  private static LogEvent event(ResultSet row, StatementContext context) throws SQLException {
    return new LogEvent(
        row.getLong("id"),
        Cells.whole(row, "session_id"),
        Cells.wall(row, "wall_ms"),
        Cells.seconds(row.getLong("uptime_ms")),
        row.getString("kind"),
        row.getString("subject"),
        row.getString("detail"));
  }
}
