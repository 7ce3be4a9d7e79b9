package trayward.host.report;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import trayward.host.store.LogColumn;
import trayward.host.store.LogRow;
import trayward.host.store.LogTable;
import trayward.host.store.WholeLog;

/**
 * Everything in the log as files that can be imported: {@code manifest.json}, {@code columns.md},
 * {@code log/}, {@code traces/} and {@code pictures/}. Stateless.
 */
public final class LogExport {

  /** What the manifest calls it. */
  static final String FORMAT = "trayward-log";

  /** Counts up when a reader of the one before would not understand it. */
  static final int VERSION = 1;

  private static final ObjectMapper JSON = new ObjectMapper();

  private LogExport() {}

  /** Writes all of it; gives the pictures of which there is no file. */
  public static List<String> write(Path folder, WholeLog log) throws IOException {
    try {
      return all(folder, log);
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  private static List<String> all(Path folder, WholeLog log) throws IOException {
    Files.createDirectories(folder.resolve("log"));
    Files.createDirectories(folder.resolve("traces"));
    ObjectNode manifest = JSON.createObjectNode();
    manifest.put("format", FORMAT).put("version", VERSION);
    ObjectNode rows = manifest.putObject("rows");
    for (LogTable table : WholeLog.tables()) {
      try (BufferedWriter out = begun(folder.resolve(file(table)), table)) {
        long[] count = {0};
        log.each(
            table,
            row -> {
              line(out, table, row);
              count[0]++;
            });
        rows.put(table.name(), count[0]);
      }
    }
    ObjectNode samples = manifest.putObject("samples");
    for (long session : log.traced()) {
      try (BufferedWriter out = begun(folder.resolve(trace(session)), WholeLog.trace())) {
        long[] count = {0};
        log.eachSample(
            session,
            row -> {
              line(out, WholeLog.trace(), row);
              count[0]++;
            });
        samples.put(Long.toString(session), count[0]);
      }
    }
    List<String> missing = pictures(folder, log);
    ArrayNode names = manifest.putArray("missing_pictures");
    missing.forEach(names::add);
    Files.writeString(
        folder.resolve("manifest.json"),
        JSON.writerWithDefaultPrettyPrinter().writeValueAsString(manifest) + "\n");
    Files.writeString(folder.resolve("columns.md"), columns());
    return missing;
  }

  /** What each column takes, for whoever reads or makes such files by other means. */
  private static String columns() {
    StringBuilder out = new StringBuilder("# Columns of this folder\n");
    for (LogTable table : WholeLog.tables()) {
      columns(out, file(table), table);
    }
    columns(out, "traces/session-N.csv", WholeLog.trace());
    return out.toString();
  }

  private static void columns(StringBuilder out, String file, LogTable table) {
    out.append("\n## ").append(file).append("\n\n| column | accepted |\n|---|---|\n");
    for (LogColumn column : table.columns()) {
      out.append(String.format("| `%s` | %s |\n", column.name(), column.accepted()));
    }
  }

  static String file(LogTable table) {
    return "log/" + table.name() + ".csv";
  }

  static String trace(long session) {
    return "traces/session-" + session + ".csv";
  }

  private static BufferedWriter begun(Path file, LogTable table) throws IOException {
    BufferedWriter out = Files.newBufferedWriter(file);
    out.write(table.header() + "\n");
    return out;
  }

  private static void line(BufferedWriter out, LogTable table, LogRow row) {
    StringBuilder line = new StringBuilder(80);
    for (var column : table.columns()) {
      Optional<Object> cell = row.cell(column.name());
      line.append(column.equals(table.columns().get(0)) ? "" : ",");
      cell.ifPresent(v -> line.append(v instanceof String s ? PrintExport.quoted(s) : v));
    }
    try {
      out.append(line.append('\n'));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<String> pictures(Path folder, WholeLog log) throws IOException {
    Path to = folder.resolve("pictures");
    Files.createDirectories(to);
    List<String> missing = new ArrayList<>();
    log.each(
        WholeLog.pictures(),
        row -> {
          Path from = log.picture(row);
          String name = String.valueOf(from.getFileName());
          try {
            if (Files.isRegularFile(from)) {
              Files.copy(from, to.resolve(name), StandardCopyOption.REPLACE_EXISTING);
            } else {
              missing.add(name);
            }
          } catch (IOException e) {
            throw new UncheckedIOException(e);
          }
        });
    return missing;
  }
}
