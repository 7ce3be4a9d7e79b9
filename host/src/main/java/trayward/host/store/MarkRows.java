package trayward.host.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;
import trayward.host.session.Correction;
import trayward.host.session.Mark;
import trayward.host.session.MarkKind;
import trayward.host.session.MarkRule;
import trayward.host.session.Moment;
import trayward.host.session.Print;
import trayward.host.session.Session;

/** The table of marks. One taken back stays, flagged. */
final class MarkRows {

  private MarkRows() {}

  /** Makes a mark in a session, if the session is open and the rule allows it. */
  static MarkResult make(
      Handle handle, MarkKind kind, long sessionId, Moment at, String by, OptionalDouble bathC) {
    if (SessionRows.open(handle).filter(session -> session.id() == sessionId).isEmpty()) {
      return new MarkResult.Refused("session " + sessionId + " is not open");
    }
    if (at.sessionS() > Cells.SESSION_MAX_S) {
      return new MarkResult.Refused("a session lasts at most 31 days");
    }
    Optional<Print> latest = PrintRows.latest(handle, sessionId);
    // As the log keeps it, so that the rule compares like with like.
    double atS = Cells.seconds(Cells.ms(at.sessionS()));
    MarkRule.Outcome outcome = MarkRule.judge(latest, kind, atS);
    if (outcome instanceof MarkRule.Refused refused) {
      return new MarkResult.Refused(refused.why());
    }
    if (outcome instanceof MarkRule.Duplicate) {
      return new MarkResult.Duplicate(latest.orElseThrow());
    }
    long number =
        kind == MarkKind.IN
            ? PrintRows.begin(handle, sessionId, at, latest)
            : latest.orElseThrow().number();
    if (ever(handle, number) >= Print.MARKS_MAX) {
      return new MarkResult.Refused(
          "print " + number + " has had " + Print.MARKS_MAX + " marks, the most there can be");
    }
    insert(handle, number, kind, at, by, bathC);
    return new MarkResult.Marked(PrintRows.byNumber(handle, number).orElseThrow());
  }

  /** Takes back the newest mark of a session; with an in, the print it began and what it left. */
  static Optional<Mark> undoLast(Handle handle, long sessionId, Instant wall) {
    Optional<Print> latest = PrintRows.latest(handle, sessionId);
    Optional<Session> open = SessionRows.open(handle).filter(s -> s.id() == sessionId);
    if (latest.isEmpty() || open.isEmpty()) {
      return Optional.empty();
    }
    List<Mark> marks = latest.get().marks();
    Mark last = marks.get(marks.size() - 1);
    handle
        .createUpdate("UPDATE marks SET undone = 1, undone_wall_ms = :wall WHERE id = :id")
        .bind("wall", wall.toEpochMilli())
        .bind("id", last.id())
        .execute();
    keepUndone(handle, latest.get(), last, wall);
    SummaryRows.drop(handle, latest.get().number());
    if (last.kind() == MarkKind.IN) {
      PrintRows.reopenLeftBy(handle, latest.get().number());
    }
    return Optional.of(last);
  }

  private static void keepUndone(Handle handle, Print print, Mark mark, Instant wall) {
    CorrectionRows.keep(
        handle,
        new Correction(
            wall,
            Correction.Thing.PRINT,
            print.number(),
            mark.kind().word(),
            MarkCorrections.seconds(print.elapsedS(mark.kind()).orElse(0)),
            ""));
  }

  /** The marks not taken back of at most {@link LogReader#ROWS_MAX} prints, in time order. */
  static Map<Long, List<Mark>> live(Handle handle, List<Long> numbers) {
    Map<Long, List<Mark>> byPrint = new HashMap<>();
    handle
        .createQuery(
            """
            SELECT * FROM marks WHERE undone = 0 AND print IN (<numbers>)
              ORDER BY session_ms, id
            """)
        .bindList("numbers", numbers)
        .map(MarkRows::numbered)
        .forEach(
            mark -> byPrint.computeIfAbsent(mark.print(), n -> new ArrayList<>()).add(mark.mark()));
    return byPrint;
  }

  static void insert(
      Handle handle, long print, MarkKind kind, Moment at, String by, OptionalDouble bathC) {
    Cells.bind(
            handle
                .createUpdate(
                    """
                    INSERT INTO marks (print, kind, session_ms, wall_ms, made_by, bath_centi_c)
                      VALUES (:print, :kind, :ms, :wall, :by, :bath)
                    """)
                .bind("print", print)
                .bind("kind", kind.word())
                .bind("ms", Cells.ms(at.sessionS()))
                .bind("wall", at.wall().toEpochMilli())
                .bind("by", Cells.cut(by, TrayLog.BY_MAX)),
            "bath",
            Cells.centi(bathC))
        .execute();
  }

  /** Puts a mark elsewhere; who made it stays. */
  static void move(Handle handle, long id, Moment at, OptionalDouble bathC) {
    Cells.bind(
            handle
                .createUpdate(
                    """
                    UPDATE marks SET session_ms = :ms, wall_ms = :wall, bath_centi_c = :bath
                      WHERE id = :id
                    """)
                .bind("ms", Cells.ms(at.sessionS()))
                .bind("wall", at.wall().toEpochMilli())
                .bind("id", id),
            "bath",
            Cells.centi(bathC))
        .execute();
  }

  /** How many marks a print has had, those taken back included. */
  static int ever(Handle handle, long print) {
    return handle
        .createQuery("SELECT count(*) FROM marks WHERE print = :print")
        .bind("print", print)
        .mapTo(Integer.class)
        .one();
  }

  private record Numbered(long print, Mark mark) {}

  private static Numbered numbered(ResultSet row, StatementContext context) throws SQLException {
    return new Numbered(
        row.getLong("print"),
        new Mark(
            row.getLong("id"),
            MarkKind.of(row.getString("kind")).orElseThrow(),
            Cells.seconds(row.getLong("session_ms")),
            Cells.wall(row, "wall_ms"),
            row.getString("made_by"),
            Cells.celsius(row, "bath_centi_c")));
  }
}
