package trayward.host.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;
import org.jdbi.v3.core.statement.StatementContext;
import trayward.host.session.TraceSample;

/** The table of the trace, and the names of states it refers to. */
final class TraceRows {

  /** Most names of states: some ten there are, and a log of many versions may see more. */
  static final int STATES_MAX = 64;

  /** Stands for a state that found no room. */
  static final String UNKNOWN = "?";

  private TraceRows() {}

  /** Adds samples to an open session; gives how many were kept. */
  static int add(Handle handle, long sessionId, List<TraceSample> samples) {
    if (SessionRows.open(handle).filter(session -> session.id() == sessionId).isEmpty()) {
      return 0;
    }
    samples.stream().map(TraceSample::state).distinct().forEach(word -> know(handle, word));
    PreparedBatch batch =
        handle.prepareBatch(
            """
            INSERT OR REPLACE INTO trace VALUES (:session, :ms, :bath, :plate, :set, :duty,
              (SELECT code FROM states WHERE word = :state), :fan)
            """);
    for (TraceSample sample : samples) {
      if (sample.sessionS() <= Cells.SESSION_MAX_S) {
        add(batch, sessionId, sample);
      }
    }
    int kept = batch.size();
    batch.execute();
    return kept;
  }

  private static void add(PreparedBatch batch, long sessionId, TraceSample sample) {
    Cells.bind(batch, "bath", Cells.centi(sample.bathC()));
    Cells.bind(batch, "plate", Cells.centi(sample.plateC()));
    Cells.bind(batch, "set", Cells.centi(sample.setC()));
    batch
        .bind("session", sessionId)
        .bind("ms", Cells.ms(sample.sessionS()))
        .bind("duty", Math.round(sample.duty() * 1000))
        .bind("state", sample.state())
        .bind("fan", sample.fanProven())
        .add();
  }

  /** Gives a state a code, if there is room for one more. */
  static void know(Handle handle, String word) {
    handle
        .createUpdate(
            """
            INSERT INTO states (word) SELECT :word
              WHERE NOT EXISTS (SELECT 1 FROM states WHERE word = :word)
                AND (SELECT count(*) FROM states) < :max
            """)
        .bind("word", word)
        .bind("max", STATES_MAX)
        .execute();
  }

  /** Session time of a session's newest sample, milliseconds; -1 where there is none. */
  static long lastMs(Handle handle, long sessionId) {
    return handle
        .createQuery("SELECT coalesce(max(t_ms), -1) FROM trace WHERE session_id = :session")
        .bind("session", sessionId)
        .mapTo(Long.class)
        .one();
  }

  static List<TraceSample> between(
      Handle handle, long sessionId, double fromS, double toS, int limit) {
    return handle
        .createQuery(
            """
            SELECT t_ms, bath_centi_c, plate_centi_c, set_centi_c, duty_permille, fan_proven,
                coalesce(word, :unknown) AS word
              FROM trace LEFT JOIN states ON code = state
              WHERE session_id = :session AND t_ms BETWEEN :from AND :to
              ORDER BY t_ms LIMIT :limit
            """)
        .bind("unknown", UNKNOWN)
        .bind("session", sessionId)
        .bind("from", Cells.ms(fromS))
        .bind("to", Cells.ms(toS))
        .bind("limit", limit)
        .map(TraceRows::sample)
        .list();
  }

  private static TraceSample sample(ResultSet row, StatementContext context) throws SQLException {
    return new TraceSample(
        Cells.seconds(row.getLong("t_ms")),
        Cells.celsius(row, "bath_centi_c").orElse(Double.NaN),
        Cells.celsius(row, "plate_centi_c").orElse(Double.NaN),
        Cells.celsius(row, "set_centi_c").orElse(Double.NaN),
        row.getLong("duty_permille") / 1000.0,
        row.getString("word"),
        row.getBoolean("fan_proven"));
  }
}
