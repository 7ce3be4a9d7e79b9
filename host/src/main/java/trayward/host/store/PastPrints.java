package trayward.host.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;
import trayward.host.forecast.Arrhenius;
import trayward.host.forecast.Features;
import trayward.host.forecast.Forecaster;
import trayward.host.forecast.PastPrint;
import trayward.host.session.FieldRule;
import trayward.host.session.TraceSample;

/**
 * What the forecast learns from, read from the log. Temperatures from in to emergence are worked
 * out of the trace once and kept. Safe on any thread.
 */
public final class PastPrints {

  /** Traces read in one transaction: a mark waits for no more than these. */
  private static final int BATCH = 20;

  private final LogConnection connection;

  PastPrints(LogConnection connection) {
    this.connection = connection;
  }

  /** What changes whenever there may be something else to learn. */
  public List<Long> sign() {
    return connection.read(
        handle ->
            handle
                .createQuery(
                    """
                    SELECT coalesce((SELECT max(id) FROM marks), 0) AS marks,
                      coalesce((SELECT max(id) FROM corrections), 0) AS corrections,
                      coalesce((SELECT max(number) FROM prints), 0) AS prints
                    """)
                .map(
                    (row, context) ->
                        List.of(
                            row.getLong("marks"),
                            row.getLong("corrections"),
                            row.getLong("prints")))
                .one());
  }

  /** The paper of the newest print that names one, up to and with this number. */
  public Optional<String> paperOf(long number) {
    return newest(number, "paper");
  }

  /** The stops over of the newest print that tells them, up to and with this number. */
  public OptionalDouble stopsOf(long number) {
    return newest(number, "stops_over")
        .map(FieldRule::numberOf)
        .map(OptionalDouble::of)
        .orElse(OptionalDouble.empty());
  }

  private Optional<String> newest(long number, String field) {
    return connection.read(
        handle ->
            handle
                .createQuery(
                    """
                    SELECT value FROM print_fields WHERE field = :field AND print <= :number
                      ORDER BY print DESC LIMIT 1
                    """)
                .bind("field", field)
                .bind("number", number)
                .mapTo(String.class)
                .findOne());
  }

  /**
   * The newest prints with an emergence before a number, oldest first.
   *
   * @param before only prints of smaller numbers
   * @param paper only prints on this paper; empty for all
   */
  public List<PastPrint> before(long before, Optional<String> paper) {
    while (connection.write(handle -> pace(handle, before, paper)) == BATCH) {
      // another batch; a mark may come in between
    }
    List<PastPrint> prints =
        new ArrayList<>(connection.read(handle -> newestFirst(handle, before, paper)));
    Collections.reverse(prints);
    return List.copyOf(prints);
  }

  private static final String OF_THE_PAPER =
      "JOIN print_fields p ON p.print = e.print AND p.field = 'paper'"
          + " AND p.value = :paper COLLATE NOCASE ";

  private record Span(long print, long session, long inMs, long emergenceMs) {}

  /** Works out temperatures that are not kept yet, of the newest that count; gives how many. */
  private static int pace(Handle handle, long before, Optional<String> paper) {
    var query =
        handle.createQuery(
            """
            SELECT n.print, r.session_id, i.session_ms AS in_ms, n.e_ms FROM
                (SELECT e.print, e.session_ms AS e_ms FROM marks e
            """
                + (paper.isPresent() ? OF_THE_PAPER : "")
                + """
                  WHERE e.kind = 'emergence' AND e.undone = 0 AND e.print < :before
                  ORDER BY e.print DESC LIMIT :newest) n
              JOIN marks i ON i.print = n.print AND i.kind = 'in' AND i.undone = 0
              JOIN prints r ON r.number = n.print
              WHERE n.print NOT IN (SELECT print FROM print_paces) LIMIT :batch
            """);
    paper.ifPresent(p -> query.bind("paper", p));
    List<Span> spans =
        query
            .bind("newest", Forecaster.PRINTS_MAX)
            .bind("before", before)
            .bind("batch", BATCH)
            .map(
                (row, context) ->
                    new Span(
                        row.getLong("print"),
                        row.getLong("session_id"),
                        row.getLong("in_ms"),
                        row.getLong("e_ms")))
            .list();
    for (Span span : spans) {
      List<TraceSample> trace =
          TraceRows.between(
              handle,
              span.session(),
              Cells.seconds(span.inMs()),
              Cells.seconds(span.emergenceMs()),
              LogReader.PRINT_TRACE_MAX);
      double meanC =
          Arrhenius.meanC(
              trace.stream().map(TraceSample::sessionS).toList(),
              trace.stream().map(TraceSample::bathC).toList());
      var insert =
          handle
              .createUpdate("INSERT OR REPLACE INTO print_paces VALUES (:print, :c)")
              .bind("print", span.print());
      (Double.isNaN(meanC) ? insert.bindNull("c", java.sql.Types.REAL) : insert.bind("c", meanC))
          .execute();
    }
    return spans.size();
  }

  private static List<PastPrint> newestFirst(Handle handle, long before, Optional<String> paper) {
    var query =
        handle.createQuery(
            """
            SELECT e.print, i.session_ms AS in_ms, e.session_ms AS e_ms, u.session_ms AS u_ms,
                c.emergence_c, b.litres, b.area_m2, b.bromide_g_per_l, b.strength,
                s.value AS stops
              FROM marks e JOIN marks i ON i.print = e.print AND i.kind = 'in' AND i.undone = 0
              JOIN print_paces c ON c.print = e.print AND c.emergence_c IS NOT NULL
              LEFT JOIN marks u ON u.print = e.print AND u.kind = 'pull' AND u.undone = 0
              LEFT JOIN print_baths b ON b.print = e.print
              LEFT JOIN print_fields s ON s.print = e.print AND s.field = 'stops_over'
            """
                + (paper.isPresent() ? OF_THE_PAPER : "")
                + """
                WHERE e.kind = 'emergence' AND e.undone = 0 AND e.print < :before
                ORDER BY e.print DESC LIMIT :limit
                """);
    paper.ifPresent(p -> query.bind("paper", p));
    return query
        .bind("before", before)
        .bind("limit", Forecaster.PRINTS_MAX)
        .map(PastPrints::print)
        .list();
  }

  private static PastPrint print(ResultSet row, StatementContext context) throws SQLException {
    double inS = Cells.seconds(row.getLong("in_ms"));
    OptionalDouble pull = Cells.secondsOf(row, "u_ms");
    double litres = row.getDouble("litres");
    boolean bath = !row.wasNull() && litres > 0;
    String stops = row.getString("stops");
    return new PastPrint(
        row.getLong("print"),
        row.getDouble("emergence_c"),
        Cells.seconds(row.getLong("e_ms")) - inS,
        pull.isPresent() ? OptionalDouble.of(pull.getAsDouble() - inS) : OptionalDouble.empty(),
        new Features(
            told(bath, row.getDouble("area_m2") / litres),
            told(bath, row.getDouble("bromide_g_per_l")),
            told(bath, row.getDouble("strength")),
            stops == null ? OptionalDouble.empty() : OptionalDouble.of(FieldRule.numberOf(stops))));
  }

  private static OptionalDouble told(boolean known, double value) {
    return known ? OptionalDouble.of(value) : OptionalDouble.empty();
  }
}
