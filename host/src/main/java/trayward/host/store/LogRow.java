package trayward.host.store;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One row of a table as it is exported. Immutable.
 *
 * @param cells {@link Long}, {@link Double} or {@link String} by column, in their order; a column
 *     that says nothing is left out
 */
public record LogRow(Map<String, Object> cells) {

  /** Copies the cells in their order. */
  public LogRow {
    cells = Collections.unmodifiableMap(new LinkedHashMap<>(cells));
  }

  /** What stands in a column; empty where nothing. */
  public Optional<Object> cell(String column) {
    return Optional.ofNullable(cells.get(column));
  }

  /** A whole number; -1 where there is none. */
  long whole(String column) {
    return cells.get(column) instanceof Long whole ? whole : -1;
  }

  /** A number with a point; empty where there is none. */
  OptionalDouble real(String column) {
    return cells.get(column) instanceof Double real
        ? OptionalDouble.of(real)
        : OptionalDouble.empty();
  }

  /** A text; empty where there is none. */
  String text(String column) {
    return cells.get(column) instanceof String text ? text : "";
  }
}
