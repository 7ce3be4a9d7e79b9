package trayward.host.store;

import org.jdbi.v3.core.Handle;

/** Counts of every table. */
final class CountRows {

  private CountRows() {}

  static LogCounts all(Handle handle) {
    return handle
        .createQuery(
            """
            SELECT (SELECT count(*) FROM sessions) AS sessions,
              (SELECT count(DISTINCT print) FROM marks WHERE undone = 0) AS prints,
              (SELECT count(*) FROM marks WHERE undone = 0) AS marks,
              (SELECT count(*) FROM marks WHERE undone = 1) AS undone,
              (SELECT count(*) FROM baths) AS baths,
              (SELECT count(*) FROM additions WHERE taken_back_wall_ms IS NULL
                AND kind NOT IN ('evaporated', 'printed', 'taken-over')) AS additions,
              (SELECT count(*) FROM events) AS events,
              (SELECT count(*) FROM trace) AS samples
            """)
        .map(
            (row, context) ->
                new LogCounts(
                    row.getLong("sessions"),
                    row.getLong("prints"),
                    row.getLong("marks"),
                    row.getLong("undone"),
                    row.getLong("baths"),
                    row.getLong("additions"),
                    row.getLong("events"),
                    row.getLong("samples")))
        .one();
  }
}
