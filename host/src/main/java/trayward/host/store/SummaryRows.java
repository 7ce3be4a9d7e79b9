package trayward.host.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Update;
import trayward.host.session.Mark;
import trayward.host.session.Print;
import trayward.host.session.PrintSummary;
import trayward.host.session.Session;
import trayward.host.session.TraceSample;

/** The table of summaries, kept once a print is finished and its trace complete. */
final class SummaryRows {

  private SummaryRows() {}

  /** Those kept, of at most {@link LogReader#ROWS_MAX} prints. */
  static Map<Long, PrintSummary> kept(Handle handle, Collection<Long> numbers) {
    Map<Long, PrintSummary> byPrint = new HashMap<>();
    if (numbers.isEmpty()) {
      return byPrint;
    }
    handle
        .createQuery("SELECT * FROM print_summaries WHERE print IN (<numbers>)")
        .bindList("numbers", List.copyOf(numbers))
        .map((row, context) -> Map.entry(row.getLong("print"), summary(row)))
        .forEach(entry -> byPrint.put(entry.getKey(), entry.getValue()));
    return byPrint;
  }

  /** From the trace, rounded as the table keeps it, so that both ways give the same. */
  static PrintSummary workedOut(Handle handle, Print print) {
    PrintSummary s = PrintSummary.of(print, traceAround(handle, print, PrintSummary.GAP_MAX_S));
    return new PrintSummary(
        toCenti(s.atInC()),
        toCenti(s.atEmergenceC()),
        toCenti(s.atPullC()),
        s.meanC(),
        toCenti(s.minC()),
        toCenti(s.maxC()),
        s.deviationK(),
        s.samples(),
        toMs(s.emergenceS()),
        toMs(s.pullS()));
  }

  /** A print's samples and those {@code marginS} seconds around it, bounded. */
  static List<TraceSample> traceAround(Handle handle, Print print, double marginS) {
    Optional<Mark> in = print.inAt();
    if (in.isEmpty()) {
      return List.of();
    }
    double inS = in.get().sessionS();
    double endS =
        Math.min(print.endS().orElse(Double.POSITIVE_INFINITY), inS + LogReader.PRINT_TRACE_MAX);
    return TraceRows.between(
        handle, print.sessionId(), inS - marginS, endS + marginS, LogReader.PRINT_TRACE_MAX);
  }

  /** Whether nothing that counts can come any more: finished, and its trace goes on beyond. */
  static boolean complete(Handle handle, Print print) {
    OptionalDouble endS = print.endS();
    if (endS.isEmpty()) {
      return false;
    }
    boolean over = SessionRows.byId(handle, print.sessionId()).filter(Session::open).isEmpty();
    return over
        || TraceRows.lastMs(handle, print.sessionId())
            >= Cells.ms(endS.getAsDouble() + PrintSummary.GAP_MAX_S);
  }

  static boolean complete(Handle handle, long number) {
    return PrintRows.byNumber(handle, number).filter(p -> complete(handle, p)).isPresent();
  }

  /** Drops what is kept of a print and keeps it anew if the print is complete. */
  static void renew(Handle handle, long number) {
    drop(handle, number);
    Optional<Print> print = PrintRows.byNumber(handle, number);
    print.filter(p -> complete(handle, p)).ifPresent(p -> keep(handle, p));
  }

  static void drop(Handle handle, long number) {
    handle
        .createUpdate("DELETE FROM print_summaries WHERE print = :print")
        .bind("print", number)
        .execute();
  }

  /** Prints shown of which no summary is kept, newest first. */
  static List<Long> missing(Handle handle, int most) {
    return handle
        .createQuery(
            "SELECT number FROM prints WHERE NOT EXISTS"
                + " (SELECT 1 FROM print_summaries WHERE print = number) AND "
                + PrintRows.SHOWN
                + " ORDER BY number DESC LIMIT :most")
        .bind("most", most)
        .mapTo(Long.class)
        .list();
  }

  private static void keep(Handle handle, Print print) {
    PrintSummary s = workedOut(handle, print);
    Update insert =
        handle
            .createUpdate(
                """
                INSERT OR REPLACE INTO print_summaries VALUES (:print, :in, :emergence, :pull,
                  :mean, :min, :max, :deviation, :samples, :emergence_ms, :pull_ms)
                """)
            .bind("print", print.number())
            .bind("samples", s.samples());
    Cells.bind(insert, "in", Cells.centi(s.atInC()));
    Cells.bind(insert, "emergence", Cells.centi(s.atEmergenceC()));
    Cells.bind(insert, "pull", Cells.centi(s.atPullC()));
    Cells.bind(insert, "min", Cells.centi(s.minC()));
    Cells.bind(insert, "max", Cells.centi(s.maxC()));
    Cells.bind(insert, "emergence_ms", ms(s.emergenceS()));
    Cells.bind(insert, "pull_ms", ms(s.pullS()));
    real(insert, "mean", s.meanC());
    real(insert, "deviation", s.deviationK());
    insert.execute();
  }

  private static void real(Update insert, String name, OptionalDouble value) {
    if (value.isPresent()) {
      insert.bind(name, value.getAsDouble());
    } else {
      insert.bindNull(name, Types.REAL);
    }
  }

  private static OptionalDouble toCenti(OptionalDouble celsius) {
    OptionalLong centi = Cells.centi(celsius);
    return centi.isPresent() ? OptionalDouble.of(centi.getAsLong() / 100.0) : celsius;
  }

  private static OptionalLong ms(OptionalDouble seconds) {
    return seconds.isPresent()
        ? OptionalLong.of(Cells.ms(seconds.getAsDouble()))
        : OptionalLong.empty();
  }

  private static OptionalDouble toMs(OptionalDouble seconds) {
    OptionalLong ms = ms(seconds);
    return ms.isPresent() ? OptionalDouble.of(Cells.seconds(ms.getAsLong())) : seconds;
  }

  private static OptionalDouble real(ResultSet row, String column) throws SQLException {
    double value = row.getDouble(column);
    return row.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  private static PrintSummary summary(ResultSet row) throws SQLException {
    return new PrintSummary(
        Cells.celsius(row, "in_centi_c"),
        Cells.celsius(row, "emergence_centi_c"),
        Cells.celsius(row, "pull_centi_c"),
        real(row, "mean_c"),
        Cells.celsius(row, "min_centi_c"),
        Cells.celsius(row, "max_centi_c"),
        real(row, "deviation_k"),
        row.getLong("samples"),
        Cells.secondsOf(row, "emergence_ms"),
        Cells.secondsOf(row, "pull_ms"));
  }
}
