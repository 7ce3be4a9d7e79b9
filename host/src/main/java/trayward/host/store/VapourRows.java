package trayward.host.store;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalLong;
import org.jdbi.v3.core.Handle;
import trayward.host.bath.Bath;
import trayward.host.bath.BookEntry;
import trayward.host.bath.Vapour;
import trayward.host.session.Session;

/**
 * Counts what the bath in the tray gave off as vapour, from the recorded temperatures, and how long
 * it was hot. Each stretch of the trace is counted once.
 */
record VapourRows(Vapour vapour) {

  /** Less than a drop and less than this long hot is no line in the book, seconds. */
  private static final double LEAST_ML = 0.05;

  private static final double LEAST_HOT_S = 1;

  /**
   * What stands between two moments of a session.
   *
   * @param millilitres vapour, mL
   * @param hotS how long it was hot, seconds
   */
  record Stood(double millilitres, double hotS) {}

  /** Writes the line up to a moment of the session for the bath in the tray. */
  void account(Handle handle, Session session, long upToMs, Instant wall) {
    Optional<Bath> bath = BathRows.inTray(handle);
    if (bath.isPresent()) {
      Stood stood = between(handle, session.id(), from(handle, session), upToMs);
      if (stood.millilitres() >= LEAST_ML || stood.hotS() >= LEAST_HOT_S) {
        long id = bath.get().id();
        BookRows.add(
            handle,
            BookEntry.stood(
                id,
                BookRows.newest(handle, id, wall),
                Cells.seconds(upToMs),
                vapour.doubted(stood.millilitres()),
                stood.hotS()),
            OptionalLong.of(session.id()));
      }
    }
    handle
        .createUpdate("INSERT OR REPLACE INTO accounted VALUES (1, :session, :upTo)")
        .bind("session", session.id())
        .bind("upTo", Math.max(upToMs, from(handle, session)))
        .execute();
  }

  /** What is not in the book yet. */
  Stood since(Handle handle, Session session) {
    return between(handle, session.id(), from(handle, session), Long.MAX_VALUE);
  }

  private static long from(Handle handle, Session session) {
    return handle
        .createQuery("SELECT up_to_ms FROM accounted WHERE session_id = :session")
        .bind("session", session.id())
        .mapTo(Long.class)
        .findOne()
        .orElse(-1L);
  }

  /** A sample stands for the second before it; what was not recorded is not counted. */
  private Stood between(Handle handle, long session, long fromMs, long toMs) {
    double[] sum = new double[2];
    handle
        .createQuery(
            """
            SELECT bath_centi_c AS centi, count(*) AS seconds FROM trace
              WHERE session_id = :session AND t_ms > :from AND t_ms <= :to
                AND bath_centi_c IS NOT NULL
              GROUP BY bath_centi_c
            """)
        .bind("session", session)
        .bind("from", fromMs)
        .bind("to", toMs)
        .map(
            (row, context) -> {
              double bathC = row.getLong("centi") / 100.0;
              double seconds = row.getLong("seconds");
              sum[0] += vapour.millilitres(bathC, seconds);
              sum[1] += bathC > Vapour.HOT_C ? seconds : 0;
              return true;
            })
        .list();
    return new Stood(sum[0], sum[1]);
  }
}
