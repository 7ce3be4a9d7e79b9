package trayward.host.store;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;
import trayward.host.session.Print;
import trayward.host.session.PrintField;

/**
 * The search for prints. Only names of the program become part of a statement; values are bound.
 */
final class PrintSearch {

  private PrintSearch() {}

  /** Prints a query asks for, newest first. */
  static List<Print> newestFirst(Handle handle, PrintQuery query, int limit, int offset) {
    StringBuilder sql = new StringBuilder("SELECT * FROM prints WHERE ").append(PrintRows.SHOWN);
    if (!query.words().isEmpty()) {
      sql.append(" AND number IN (SELECT rowid FROM print_words WHERE print_words MATCH :words)");
    }
    Map<String, Object> values = new HashMap<>();
    for (Map.Entry<PrintField, String> said : query.said().entrySet()) {
      int i = values.size();
      sql.append(
          String.format(
              " AND number IN (SELECT print FROM print_fields WHERE field = :f%d AND value = :v%d)",
              i, i));
      values.put("f" + i, said.getKey().word());
      values.put("v" + i, said.getValue());
    }
    sql.append(" ORDER BY number DESC LIMIT :limit OFFSET :offset");
    Query select =
        handle
            .createQuery(sql.toString())
            .bindMap(values)
            .bind("limit", limit)
            .bind("offset", offset);
    if (!query.words().isEmpty()) {
      select.bind("words", WordRows.query(query.words()));
    }
    return PrintRows.withMarks(handle, select.map(PrintRows::bare).list());
  }
}
