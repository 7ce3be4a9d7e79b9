package trayward.host.report;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import trayward.host.store.LogColumn;
import trayward.host.store.LogRow;
import trayward.host.store.LogSource;
import trayward.host.store.LogTable;
import trayward.host.store.RowRefused;
import trayward.host.store.WholeLog;

/** A folder that {@link LogExport} wrote, read again row by row. One thread. */
public final class LogFolder implements LogSource {

  private final Path folder;
  private final JsonNode manifest;

  /**
   * Reads the manifest.
   *
   * @throws RowRefused where it is missing or of another format or version
   */
  public LogFolder(Path folder) throws IOException {
    this.folder = folder;
    Path file = folder.resolve("manifest.json");
    if (!Files.isRegularFile(file)) {
      throw new RowRefused(folder + ": found no manifest.json, accepted is a folder of `export`");
    }
    try {
      this.manifest = new ObjectMapper().readTree(Files.readString(file));
    } catch (JsonProcessingException e) {
      throw new RowRefused("manifest.json: found no JSON, accepted is one of `export`");
    }
    String format = manifest.path("format").asText();
    int version = manifest.path("version").asInt();
    if (!format.equals(LogExport.FORMAT) || version != LogExport.VERSION) {
      throw new RowRefused(
          String.format(
              "manifest.json: found format '%s' version %d, accepted is %s version %d",
              format, version, LogExport.FORMAT, LogExport.VERSION));
    }
  }

  @Override
  public void each(LogTable table, Taker taker) throws IOException {
    long expected = manifest.path("rows").path(table.name()).asLong(-1);
    rows(file(table), table, expected, taker);
  }

  @Override
  public void eachSample(long session, Taker taker) throws IOException {
    long expected = manifest.path("samples").path(Long.toString(session)).asLong(-1);
    rows(LogExport.trace(session), WholeLog.trace(), expected, taker);
  }

  @Override
  public List<Long> traced() {
    List<Long> sessions = new ArrayList<>();
    manifest
        .path("samples")
        .fieldNames()
        .forEachRemaining(
            name -> {
              if (!name.matches("[0-9]{1,18}")) {
                throw new RowRefused(
                    "manifest.json: samples: found '" + name + "', accepted is an id");
              }
              sessions.add(Long.parseLong(name));
            });
    return sessions;
  }

  @Override
  public String file(LogTable table) {
    return LogExport.file(table);
  }

  @Override
  public Path picture(String name) {
    return folder.resolve("pictures").resolve(name);
  }

  @Override
  public Set<String> missing() {
    Set<String> names = new HashSet<>();
    manifest.path("missing_pictures").forEach(name -> names.add(name.asText()));
    return names;
  }

  private void rows(String name, LogTable table, long expected, Taker taker) throws IOException {
    Path file = folder.resolve(name);
    if (!Files.isRegularFile(file)) {
      throw new RowRefused(name + ": found nothing, accepted is the file of the export");
    }
    long at = 0;
    try (BufferedReader in = Files.newBufferedReader(file)) {
      String header = in.readLine();
      if (!table.header().equals(header)) {
        throw new RowRefused(name + ": found other columns, accepted is " + table.header());
      }
      CsvReader csv = new CsvReader(in);
      Optional<List<Optional<String>>> row = csv.row();
      while (row.isPresent()) {
        at++;
        taker.take(read(name, at, table, row.get()), at);
        row = csv.row();
      }
    } catch (java.nio.charset.CharacterCodingException e) {
      throw new RowRefused(name + " row " + (at + 1) + ": found no UTF-8, accepted is UTF-8");
    } catch (IOException e) {
      throw new RowRefused(
          name
              + " row "
              + (at + 1)
              + ": found "
              + e.getMessage()
              + ", accepted is CSV of RFC 4180");
    }
    if (at != expected) {
      throw new RowRefused(
          name + ": found " + at + " rows, accepted is " + expected + ", as in manifest.json");
    }
  }

  private static LogRow read(String file, long at, LogTable table, List<Optional<String>> fields) {
    List<LogColumn> columns = table.columns();
    if (fields.size() != columns.size()) {
      throw new RowRefused(
          file
              + " row "
              + at
              + ": found "
              + fields.size()
              + " fields, accepted is "
              + columns.size());
    }
    Map<String, Object> cells = new LinkedHashMap<>();
    for (int i = 0; i < fields.size(); i++) {
      LogColumn column = columns.get(i);
      fields
          .get(i)
          .ifPresent(
              text ->
                  cells.put(
                      column.name(),
                      column
                          .read(text)
                          .orElseThrow(
                              () ->
                                  new RowRefused(file, Long.toString(at), column.refusal(text)))));
    }
    return new LogRow(cells);
  }
}
