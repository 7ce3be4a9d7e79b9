package trayward.host.store;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import trayward.host.bath.Problem;

/**
 * A table of the log as it is exported, taken in again and checked. Immutable.
 *
 * @param name its name in the log
 * @param columns what is exported of it; the first is its id, or the first part of it
 * @param order the columns it is ordered by
 * @param rule what a row must be as a whole, beside what its columns take
 */
public record LogTable(
    String name, List<LogColumn> columns, String order, Function<LogRow, Optional<Problem>> rule) {

  /** Copies the columns. */
  public LogTable {
    columns = List.copyOf(columns);
  }

  /** Names of the columns, with commas. */
  public String header() {
    return columns.stream().map(LogColumn::name).collect(Collectors.joining(","));
  }

  /** The first thing wrong with a row by itself. */
  Optional<Problem> problem(LogRow row) {
    return columns.stream()
        .map(column -> column.problem(row))
        .flatMap(Optional::stream)
        .findFirst()
        .or(() -> rule.apply(row));
  }

  /** The id of a row, for a person who looks for it. */
  String id(LogRow row) {
    return row.cell(columns.get(0).name()).map(Object::toString).orElse("?");
  }
}
