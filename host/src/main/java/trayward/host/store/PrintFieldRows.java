package trayward.host.store;

import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import trayward.host.session.PrintField;

/** The table of what is said of prints. A field that says nothing has no row. */
final class PrintFieldRows {

  private PrintFieldRows() {}

  private record Cell(long print, String field, String value) {}

  /** What is said of each of at most {@link LogReader#ROWS_MAX} prints. */
  static Map<Long, Map<PrintField, String>> of(Handle handle, Collection<Long> numbers) {
    Map<Long, Map<PrintField, String>> byPrint = new HashMap<>();
    if (numbers.isEmpty()) {
      return byPrint;
    }
    handle
        .createQuery("SELECT print, field, value FROM print_fields WHERE print IN (<numbers>)")
        .bindList("numbers", List.copyOf(numbers))
        .map((row, c) -> new Cell(row.getLong(1), row.getString(2), row.getString(3)))
        .forEach(cell -> put(byPrint, cell));
    return byPrint;
  }

  /** A field of a later version is left alone. */
  private static void put(Map<Long, Map<PrintField, String>> byPrint, Cell cell) {
    Optional<PrintField> field = PrintField.of(cell.field());
    field.ifPresent(
        f ->
            byPrint
                .computeIfAbsent(cell.print(), n -> new EnumMap<>(PrintField.class))
                .put(f, cell.value()));
  }

  /** Sets a field, or takes it away where the text is empty. */
  static void set(Handle handle, long number, PrintField field, String value) {
    handle
        .createUpdate(
            value.isEmpty()
                ? "DELETE FROM print_fields WHERE print = :print AND field = :field"
                : "INSERT OR REPLACE INTO print_fields VALUES (:print, :field, :value)")
        .bind("print", number)
        .bind("field", field.word())
        .bindMap(value.isEmpty() ? Map.of() : Map.of("value", value))
        .execute();
  }

  /** Values of a field, each once, that of the newest print first. */
  static List<String> remembered(Handle handle, PrintField field, int limit) {
    return handle
        .createQuery(
            """
            SELECT value FROM print_fields WHERE field = :field
              GROUP BY value ORDER BY max(print) DESC LIMIT :limit
            """)
        .bind("field", field.word())
        .bind("limit", limit)
        .mapTo(String.class)
        .list();
  }
}
