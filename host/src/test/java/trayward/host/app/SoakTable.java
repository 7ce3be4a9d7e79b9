package trayward.host.app;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * The figures of a soak trial, a row each time somebody looked: kept as a file of comma-separated
 * values, each row as it comes, so that a trial that ends badly has told what it saw. One thread.
 */
final class SoakTable {

  private final Path file;
  private final List<String> columns;
  private final List<double[]> rows = new ArrayList<>();

  SoakTable(Path file, List<String> columns) throws IOException {
    this.file = file;
    this.columns = List.copyOf(columns);
    Files.createDirectories(file.toAbsolutePath().getParent());
    Files.writeString(file, String.join(",", columns) + "\n");
  }

  /** Adds a row, one value for each column; NaN is an empty cell. */
  void add(double... row) throws IOException {
    if (row.length != columns.size()) {
      throw new IllegalArgumentException(row.length + " values for " + columns);
    }
    rows.add(row);
    String line = Arrays.stream(row).mapToObj(SoakTable::cell).collect(Collectors.joining(","));
    Files.writeString(file, line + "\n", StandardOpenOption.APPEND);
  }

  private static String cell(double value) {
    return Double.isNaN(value) ? "" : String.format(Locale.ROOT, "%.7g", value);
  }

  int size() {
    return rows.size();
  }

  double[] column(String name) {
    int at = columns.indexOf(name);
    return rows.stream().mapToDouble(row -> row[at]).toArray();
  }

  /** How much a column grew from {@code fromRow} to the end, by the straight line through it. */
  double growth(String name, int fromRow) {
    double[] all = column(name);
    int n = all.length - fromRow;
    double meanX = (n - 1) / 2.0;
    double meanY = Arrays.stream(all, fromRow, all.length).average().orElseThrow();
    double xy = 0;
    double xx = 0;
    for (int i = 0; i < n; i++) {
      xy += (i - meanX) * (all[fromRow + i] - meanY);
      xx += (i - meanX) * (i - meanX);
    }
    return xx == 0 ? 0 : xy / xx * (n - 1);
  }

  /** The highest value of a column in rows from (inclusive) to (exclusive). */
  double most(String name, int fromRow, int toRow) {
    return Arrays.stream(column(name), fromRow, toRow).max().orElseThrow();
  }
}
