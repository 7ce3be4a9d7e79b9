package trayward.host.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;
import trayward.host.session.Session;

/** The table of sessions. */
final class SessionRows {

  private SessionRows() {}

  static Session start(Handle handle, Instant wall, boolean simulated) {
    open(handle).ifPresent(left -> end(handle, left, wall.toEpochMilli(), "superseded"));
    handle
        .createUpdate(
            "INSERT INTO sessions (started_wall_ms, simulated) VALUES (:wall, :simulated)")
        .bind("wall", wall.toEpochMilli())
        .bind("simulated", simulated)
        .execute();
    return open(handle).orElseThrow();
  }

  /** Ends a session a killed process left open, at the last moment the log knows of it. */
  static boolean interruptOpen(Handle handle, VapourRows vapour) {
    Optional<Session> left = open(handle);
    left.ifPresent(
        session -> {
          long lastMs = lastMs(handle, session.id());
          vapour.account(handle, session, lastMs, session.startedWall().plusMillis(lastMs));
        });
    left.ifPresent(
        session ->
            end(
                handle,
                session,
                session.startedWall().toEpochMilli() + lastMs(handle, session.id()),
                "interrupted"));
    return left.isPresent();
  }

  /** Ends a session and leaves its print, if one is in progress, without a pull. */
  static void end(Handle handle, Session session, long endedWallMs, String ending) {
    PrintRows.latest(handle, session.id())
        .ifPresent(print -> PrintRows.leave(handle, print, lastMs(handle, session.id())));
    handle
        .createUpdate("UPDATE sessions SET ended_wall_ms = :wall, ending = :ending WHERE id = :id")
        .bind("wall", endedWallMs)
        .bind("ending", ending)
        .bind("id", session.id())
        .execute();
  }

  static Optional<Session> open(Handle handle) {
    return handle
        .createQuery("SELECT * FROM sessions WHERE ended_wall_ms IS NULL")
        .map(SessionRows::session)
        .findOne();
  }

  static Optional<Session> byId(Handle handle, long id) {
    return handle
        .createQuery("SELECT * FROM sessions WHERE id = :id")
        .bind("id", id)
        .map(SessionRows::session)
        .findOne();
  }

  static List<Session> newestFirst(Handle handle, int limit, int offset) {
    return handle
        .createQuery("SELECT * FROM sessions ORDER BY id DESC LIMIT :limit OFFSET :offset")
        .bind("limit", limit)
        .bind("offset", offset)
        .map(SessionRows::session)
        .list();
  }

  /** What was felt in each of these sessions, in the person's words; the empty text is left out. */
  static Map<Long, String> symptoms(Handle handle, Collection<Long> ids) {
    Map<Long, String> byId = new HashMap<>();
    if (!ids.isEmpty()) {
      handle
          .createQuery("SELECT id, symptoms FROM sessions WHERE id IN (<ids>) AND symptoms <> ''")
          .bindList("ids", List.copyOf(ids))
          .map((row, context) -> Map.entry(row.getLong(1), row.getString(2)))
          .forEach(entry -> byId.put(entry.getKey(), entry.getValue()));
    }
    return byId;
  }

  static void setSymptoms(Handle handle, long id, String symptoms) {
    handle
        .createUpdate("UPDATE sessions SET symptoms = :symptoms WHERE id = :id")
        .bind("symptoms", symptoms)
        .bind("id", id)
        .execute();
  }

  /** Session time of its last mark or sample, milliseconds; 0 where there is none. */
  static long lastMs(Handle handle, long id) {
    return handle
        .createQuery(
            """
            SELECT max(
              (SELECT coalesce(max(t_ms), 0) FROM trace WHERE session_id = :id),
              (SELECT coalesce(max(session_ms), 0) FROM marks JOIN prints ON number = print
                WHERE session_id = :id))
            """)
        .bind("id", id)
        .mapTo(Long.class)
        .one();
  }

  private static Session session(ResultSet row, StatementContext context) throws SQLException {
    return new Session(
        row.getLong("id"),
        Cells.wall(row, "started_wall_ms"),
        Cells.wallIfAny(row, "ended_wall_ms"),
        row.getString("ending"),
        row.getBoolean("simulated"));
  }
}
