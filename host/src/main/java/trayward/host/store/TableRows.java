package trayward.host.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.jdbi.v3.core.Handle;

/** Rows of any table of {@link LogTables}, read one after another. Stateless. */
final class TableRows {

  private TableRows() {}

  static void each(Handle handle, LogTable table, Consumer<LogRow> sink) {
    handle
        .createQuery(
            "SELECT " + table.header() + " FROM " + table.name() + " ORDER BY " + table.order())
        .map((row, context) -> row(table, row))
        .forEach(sink);
  }

  static List<Long> traced(Handle handle) {
    return handle
        .createQuery(
            "SELECT id FROM sessions WHERE EXISTS"
                + " (SELECT 1 FROM trace WHERE session_id = id) ORDER BY id")
        .mapTo(Long.class)
        .list();
  }

  static void eachSample(Handle handle, long session, Consumer<LogRow> sink) {
    handle
        .createQuery(
            """
            SELECT t_ms, bath_centi_c, plate_centi_c, set_centi_c, duty_permille, word AS state,
                fan_proven
              FROM trace LEFT JOIN states ON code = state
              WHERE session_id = :session ORDER BY t_ms
            """)
        .bind("session", session)
        .map((row, context) -> row(LogTables.TRACE, row))
        .forEach(sink);
  }

  static long count(Handle handle, String table) {
    return handle.createQuery("SELECT count(*) FROM " + table).mapTo(Long.class).one();
  }

  private static LogRow row(LogTable table, ResultSet row) throws SQLException {
    Map<String, Object> cells = new LinkedHashMap<>();
    int at = 1;
    for (LogColumn column : table.columns()) {
      switch (column.kind()) {
        case WHOLE -> put(cells, column, row, row.getLong(at));
        case REAL -> put(cells, column, row, row.getDouble(at));
        case TEXT -> {
          String text = row.getString(at);
          if (text != null) {
            cells.put(column.name(), text);
          }
        }
      }
      at++;
    }
    return new LogRow(cells);
  }

  private static void put(Map<String, Object> cells, LogColumn column, ResultSet row, Object value)
      throws SQLException {
    if (!row.wasNull()) {
      cells.put(column.name(), value);
    }
  }
}
