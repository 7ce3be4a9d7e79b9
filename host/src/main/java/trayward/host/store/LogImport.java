package trayward.host.store;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;
import trayward.host.bath.Problem;

/**
 * Fills a new log with what was exported, all of it or nothing. What is worked out is made anew.
 * One thread, one use.
 */
final class LogImport {

  private final Handle handle;
  private final LogSource source;
  private final BookModel model;
  private final Map<String, Set<Long>> ids = new HashMap<>();
  private final List<Runnable> later = new ArrayList<>();

  private LogImport(Handle handle, LogSource source, BookModel model) {
    this.handle = handle;
    this.source = source;
    this.model = model;
  }

  /**
   * Fills an empty log within a transaction.
   *
   * @throws RowRefused where anything is wrong
   * @throws UncheckedIOException where a file cannot be read
   */
  static void fill(Handle handle, LogSource source, BookModel model) {
    try {
      handle.execute("PRAGMA defer_foreign_keys = ON");
      new LogImport(handle, source, model).all();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (SQLException e) {
      throw new LogFailed("The new log could not be written: " + SqliteTrouble.words(e) + ".", e);
    }
  }

  private void all() throws IOException, SQLException {
    for (LogTable table : LogTables.ALL) {
      table(table);
    }
    later.forEach(Runnable::run);
    for (long session : source.traced()) {
      if (!known("sessions").contains(session)) {
        throw new RowRefused("traces: found session " + session + ", accepted is one of sessions");
      }
      trace(session);
    }
    refuse(LogRules.findings(handle));
    RemadeBooks books = RemadeBooks.of(handle, model.use());
    refuse(books.findings());
    books.carried().forEach((id, contents) -> BookKeeper.keep(handle, id, contents));
    books.prints().forEach((print, bath) -> PrintBathRows.keep(handle, print, bath));
    for (long print : known("prints")) {
      SummaryRows.renew(handle, print);
      WordRows.refresh(handle, print);
    }
  }

  private Set<Long> known(String table) {
    return ids.computeIfAbsent(table, t -> new HashSet<>());
  }

  private void refuse(List<LogFinding> findings) {
    if (!findings.isEmpty()) {
      LogFinding first = findings.get(0);
      throw new RowRefused(first.table(), "of id " + first.id(), first.problem());
    }
  }

  private void table(LogTable table) throws IOException, SQLException {
    String insert =
        "INSERT INTO "
            + table.name()
            + " ("
            + table.header()
            + ") VALUES ("
            + table.columns().stream().map(c -> "?").collect(Collectors.joining(","))
            + ")";
    String file = source.file(table);
    try (PreparedStatement statement = handle.getConnection().prepareStatement(insert)) {
      source.each(
          table,
          (row, at) -> {
            check(table, row, file, at);
            put(statement, table, row, file, at);
          });
    }
  }

  private void check(LogTable table, LogRow row, String file, long at) {
    table
        .problem(row)
        .ifPresent(
            problem -> {
              throw new RowRefused(file, Long.toString(at), problem);
            });
    LogColumn key = table.columns().get(0);
    known(table.name()).add(row.whole(key.name()));
    for (LogColumn column : table.columns()) {
      if (!column.table().isEmpty() && row.cell(column.name()).isPresent()) {
        Runnable refers = () -> refers(column, row, file, at);
        if (column.table().equals(table.name())) {
          later.add(refers);
        } else {
          refers.run();
        }
      }
    }
  }

  private void refers(LogColumn column, LogRow row, String file, long at) {
    if (!known(column.table()).contains(row.whole(column.name()))) {
      throw new RowRefused(
          file, Long.toString(at), column.refusal(Long.toString(row.whole(column.name()))));
    }
  }

  private static void put(
      PreparedStatement statement, LogTable table, LogRow row, String file, long at) {
    try {
      int n = 1;
      for (LogColumn column : table.columns()) {
        statement.setObject(n, row.cell(column.name()).orElse(null));
        n++;
      }
      statement.executeUpdate();
    } catch (SQLException e) {
      // Such as an id that stands there twice.
      Problem problem =
          new Problem(table.columns().get(0).name(), table.id(row), SqliteTrouble.words(e));
      throw new RowRefused(file, Long.toString(at), problem);
    }
  }

  private void trace(long session) throws IOException, SQLException {
    Map<String, Long> codes = new HashMap<>();
    String file = "traces/session-" + session + ".csv";
    long[] last = {-1};
    try (PreparedStatement insert =
        handle.getConnection().prepareStatement("INSERT INTO trace VALUES (?,?,?,?,?,?,?,?)")) {
      source.eachSample(
          session,
          (row, at) -> {
            check(LogTables.TRACE, row, file, at);
            long ms = row.whole("t_ms");
            if (ms <= last[0]) {
              Problem order = new Problem("t_ms", Long.toString(ms), "more than " + last[0]);
              throw new RowRefused(file, Long.toString(at), order);
            }
            last[0] = ms;
            sample(insert, session, row, codes, file, at);
          });
    }
  }

  private void sample(
      PreparedStatement insert,
      long session,
      LogRow row,
      Map<String, Long> codes,
      String file,
      long at) {
    String state = row.text("state");
    Long code = state.isEmpty() ? null : codes.computeIfAbsent(state, this::code);
    try {
      insert.setLong(1, session);
      int n = 2;
      for (LogColumn column : LogTables.TRACE.columns()) {
        insert.setObject(
            n, column.name().equals("state") ? code : row.cell(column.name()).orElse(null));
        n++;
      }
      insert.executeUpdate();
    } catch (SQLException e) {
      throw new RowRefused(
          file, Long.toString(at), new Problem("t_ms", "a sample", SqliteTrouble.words(e)));
    }
  }

  private long code(String word) {
    TraceRows.know(handle, word);
    return handle
        .createQuery("SELECT code FROM states WHERE word = :word")
        .bind("word", word)
        .mapTo(Long.class)
        .findOne()
        .orElseThrow(
            () ->
                new RowRefused(
                    "traces: found more than "
                        + TraceRows.STATES_MAX
                        + " states, accepted are as many"));
  }

  /** Brings the pictures in, safe on the disk; gives those that were. */
  static void pictures(Path log, LogSource source, List<Path> made) throws IOException {
    PictureFiles files = PictureFiles.of(log);
    LogTable table = LogTables.PICTURES;
    try {
      source.each(
          table,
          (row, at) -> {
            String where = source.file(table);
            table
                .problem(row)
                .ifPresent(
                    problem -> {
                      throw new RowRefused(where, Long.toString(at), problem);
                    });
            String name = row.text("file");
            if (!source.missing().contains(name)) {
              PictureCheck.problem(row, source.picture(name))
                  .ifPresent(
                      problem -> {
                        throw new RowRefused(where, Long.toString(at), problem);
                      });
              bring(files, name, source.picture(name), made);
            }
          });
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  private static void bring(PictureFiles files, String name, Path from, List<Path> made) {
    try {
      Path original = files.part();
      Files.copy(from, original, StandardCopyOption.REPLACE_EXISTING);
      Path small = files.part();
      Files.write(small, Thumbnail.of(PictureCore.read(original)));
      made.add(files.of(name, false));
      PictureFiles.name(original, files.of(name, false));
      made.add(files.of(name, true));
      PictureFiles.name(small, files.of(name, true));
      files.forceNames();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (NoPicture e) {
      throw new RowRefused("pictures/" + name + ": no picture: " + e.why());
    }
  }
}
