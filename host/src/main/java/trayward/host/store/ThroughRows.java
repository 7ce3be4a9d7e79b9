package trayward.host.store;

import org.jdbi.v3.core.Handle;
import trayward.host.session.WorkingBath;

/** What went through a bath after the developer: prints with a step that names it. */
final class ThroughRows {

  private ThroughRows() {}

  /** Prints with a step in a bath of this name since a moment of the wall clock. */
  static WorkingBath.Through since(Handle handle, String name, long sinceWallMs) {
    return handle
        .createQuery(
            """
            SELECT count(*) AS prints, coalesce(sum(area), 0) AS area,
                count(*) - count(area) AS unsized FROM
              (SELECT DISTINCT s.print, w.value * h.value / 1e6 AS area FROM print_steps s
                LEFT JOIN print_fields w ON w.print = s.print AND w.field = 'width_mm'
                LEFT JOIN print_fields h ON h.print = s.print AND h.field = 'height_mm'
                WHERE s.what = :name COLLATE NOCASE AND s.wall_ms >= :since
                  AND s.taken_back_wall_ms IS NULL)
            """)
        .bind("name", name)
        .bind("since", sinceWallMs)
        .map(
            (row, context) ->
                new WorkingBath.Through(
                    row.getInt("prints"), row.getDouble("area"), row.getInt("unsized")))
        .one();
  }
}
