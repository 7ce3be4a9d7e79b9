package trayward.host.store;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * Whether a log has every table and index as the chain of {@link LogSchema} makes them: an index
 * that is gone takes a rule with it and nothing else tells. Stateless.
 */
final class LogShape {

  private LogShape() {}

  static List<LogFinding> findings(Handle handle) {
    Map<String, String> is = parts(handle);
    Map<String, String> accepted =
        Jdbi.create("jdbc:sqlite::memory:")
            .withHandle(
                fresh -> {
                  LogSchema.upgrade(fresh, 0);
                  return parts(fresh);
                });
    List<LogFinding> found = new ArrayList<>();
    accepted.forEach(
        (name, sql) -> {
          if (!sql.equals(is.get(name))) {
            String was = is.getOrDefault(name, "nothing");
            found.add(LogFinding.of("schema", name, "sql", was, "as this program makes it"));
          }
        });
    return found;
  }

  /** What SQLite made by itself has no words of its own. */
  private static Map<String, String> parts(Handle handle) {
    Map<String, String> parts = new TreeMap<>();
    handle
        .createQuery("SELECT name, sql FROM sqlite_schema WHERE sql IS NOT NULL")
        .map((row, context) -> Map.entry(row.getString(1), row.getString(2)))
        .forEach(part -> parts.put(part.getKey(), part.getValue()));
    return parts;
  }
}
