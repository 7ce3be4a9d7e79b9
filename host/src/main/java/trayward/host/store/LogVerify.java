package trayward.host.store;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;
import trayward.host.bath.BathContents;
import trayward.host.session.PrintBath;
import trayward.host.session.PrintSummary;

/** Goes through a whole log and tells what is wrong in it; changes nothing. One thread, one use. */
final class LogVerify {

  /** Worked-out numbers that are the same but for the order of their sums. */
  private static final double SAME = 1e-9;

  /** Most lines of SQLite's own check. */
  private static final int TOLD_MAX = 50;

  private static final String AS_WORKED_OUT = "as worked out anew: ";

  private final Handle handle;
  private final PictureFiles files;
  private final List<LogFinding> found = new ArrayList<>();

  private LogVerify(Handle handle, PictureFiles files) {
    this.handle = handle;
    this.files = files;
  }

  /** What is wrong; empty for a healthy log. The book reckons with {@code model}. */
  static List<LogFinding> findings(Handle handle, PictureFiles files, BookModel model) {
    LogVerify verify = new LogVerify(handle, files);
    verify.sqlite();
    verify.found.addAll(LogShape.findings(handle));
    // What does not hang together cannot be reckoned with.
    if (verify.found.isEmpty()) {
      verify.rows();
    }
    if (verify.found.isEmpty()) {
      verify.found.addAll(LogRules.findings(handle));
    }
    if (verify.found.isEmpty()) {
      verify.books(model);
      verify.summaries();
      verify.words();
    }
    return List.copyOf(verify.found);
  }

  private void sqlite() {
    handle
        .createQuery("PRAGMA integrity_check(" + TOLD_MAX + ")")
        .mapTo(String.class)
        .filter(line -> !line.equals("ok"))
        .forEach(line -> add("file", "pages", "integrity", line, "ok"));
    handle
        .createQuery("PRAGMA foreign_key_check")
        .map((row, c) -> new String[] {row.getString(1), row.getString(2), row.getString(3)})
        .forEach(r -> add(r[0], r[1], "reference", "none in " + r[2], "a row of " + r[2]));
  }

  private void add(String table, Object id, String field, Object is, String accepted) {
    found.add(LogFinding.of(table, id, field, is, accepted));
  }

  private void rows() {
    for (LogTable table : LogTables.ALL) {
      TableRows.each(
          handle,
          table,
          row ->
              table
                  .problem(row)
                  .or(
                      () ->
                          table.equals(LogTables.PICTURES)
                              ? PictureCheck.problem(row, files.of(row.text("file"), false))
                              : Optional.empty())
                  .ifPresent(p -> found.add(new LogFinding(table.name(), table.id(row), p))));
    }
    for (long session : TableRows.traced(handle)) {
      TableRows.eachSample(
          handle,
          session,
          row ->
              LogTables.TRACE
                  .problem(row)
                  .ifPresent(
                      p ->
                          found.add(
                              new LogFinding("trace", session + " " + row.whole("t_ms"), p))));
    }
  }

  private void books(BookModel model) {
    RemadeBooks books = RemadeBooks.of(handle, model.use());
    found.addAll(books.findings());
    if (!books.findings().isEmpty()) {
      return;
    }
    books
        .carried()
        .forEach(
            (id, now) -> {
              BathContents kept = BookKeeper.carried(handle, id);
              if (differ(kept.millilitres().value(), now.millilitres().value())
                  || differ(kept.strength().value(), now.strength().value())
                  || differ(kept.bromideGPerL().value(), now.bromideGPerL().value())
                  || differ(kept.areaM2(), now.areaM2())) {
                add("additions", id, "contents", kept, AS_WORKED_OUT + now);
              }
            });
    Map<Long, PrintBath> kept = new HashMap<>();
    handle
        .createQuery("SELECT * FROM print_baths")
        .map((row, c) -> Map.entry(row.getLong("print"), PrintBathRows.bath(row, c)))
        .forEach(e -> kept.put(e.getKey(), e.getValue()));
    Set<Long> prints = new HashSet<>(kept.keySet());
    prints.addAll(books.prints().keySet());
    prints.forEach(print -> bath(print, kept.get(print), books.prints().get(print)));
  }

  private void bath(long print, @Nullable PrintBath kept, @Nullable BathContents now) {
    if (kept == null || now == null) {
      add("print_baths", print, "bath", kept == null ? "nothing" : "a bath", "what the book says");
    } else if (kept.bathId() != now.bathId()
        || differ(kept.litres(), now.litres().value())
        || differ(kept.strength(), now.strength().value())
        || differ(kept.bromideGPerL(), now.bromideGPerL().value())
        || differ(kept.sulfiteGPerL(), now.sulfiteGPerL().value())
        || differ(kept.areaM2PerL() * kept.litres(), now.areaM2())
        || differ(kept.hotS(), now.hotS())) {
      String is =
          String.format(
              "%.4f L, bromide %.4f g/L", now.litres().value(), now.bromideGPerL().value());
      String was = String.format("%.4f L, bromide %.4f g/L", kept.litres(), kept.bromideGPerL());
      add("print_baths", print, "bath", was, AS_WORKED_OUT + is);
    }
  }

  private static boolean differ(double kept, double now) {
    return Math.abs(kept - now) > SAME * Math.max(1, Math.abs(now));
  }

  private void summaries() {
    List<Long> numbers =
        handle.createQuery("SELECT print FROM print_summaries").mapTo(Long.class).list();
    for (long number : numbers) {
      PrintSummary kept = SummaryRows.kept(handle, List.of(number)).get(number);
      PrintSummary now =
          PrintRows.byNumber(handle, number)
              .map(print -> SummaryRows.workedOut(handle, print))
              .orElse(null);
      if (kept == null || !kept.equals(now)) {
        add("print_summaries", number, "summary", String.valueOf(kept), AS_WORKED_OUT + now);
      }
    }
    handle
        .createQuery(
            """
            SELECT DISTINCT print FROM print_paces WHERE print NOT IN
              (SELECT print FROM marks WHERE kind = 'emergence' AND undone = 0)
            """)
        .mapTo(Long.class)
        .forEach(n -> add("print_paces", n, "emergence_c", "kept", "none without an emergence"));
  }

  /** The words themselves cannot be read back; that each print with words has some can. */
  private void words() {
    handle
        .createQuery(
            """
            SELECT number FROM prints WHERE title || notes <> ''
              AND number NOT IN (SELECT rowid FROM print_words)
            """)
        .mapTo(Long.class)
        .forEach(n -> add("print_words", n, "words", "none", "the words of the print"));
  }
}
