package trayward.host.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;
import trayward.host.session.Mark;
import trayward.host.session.Moment;
import trayward.host.session.Print;

/** The table of prints. A print whose every mark was taken back is kept and not shown. */
final class PrintRows {

  /** Whether the print {@code number} of a query is shown. */
  static final String SHOWN = "EXISTS (SELECT 1 FROM marks WHERE print = number AND undone = 0)";

  private PrintRows() {}

  /** Begins a print and leaves the one in progress, if any, without a pull. Gives its number. */
  static long begin(Handle handle, long sessionId, Moment at, Optional<Print> latest) {
    long number =
        handle
            .createUpdate("INSERT INTO prints (session_id, started_wall_ms) VALUES (:id, :wall)")
            .bind("id", sessionId)
            .bind("wall", at.wall().toEpochMilli())
            .executeAndReturnGeneratedKeys()
            .mapTo(Long.class)
            .one();
    latest.ifPresent(
        print -> leave(handle, print, Cells.ms(at.sessionS()), OptionalLong.of(number)));
    return number;
  }

  /** Leaves a print without a pull where it is still in progress. */
  static void leave(Handle handle, Print print, long sessionMs) {
    leave(handle, print, sessionMs, OptionalLong.empty());
  }

  private static void leave(Handle handle, Print print, long sessionMs, OptionalLong by) {
    if (print.inProgress()) {
      Cells.bind(
              handle
                  .createUpdate(
                      "UPDATE prints SET closed_ms = :ms, closed_by = :by WHERE number = :number")
                  .bind("ms", sessionMs)
                  .bind("number", print.number()),
              "by",
              by)
          .execute();
    }
  }

  /** Takes back that print {@code number} left an earlier one without a pull. */
  static void reopenLeftBy(Handle handle, long number) {
    handle
        .createUpdate(
            "DELETE FROM print_summaries WHERE print IN"
                + " (SELECT number FROM prints WHERE closed_by = :number)")
        .bind("number", number)
        .execute();
    handle
        .createUpdate(
            "UPDATE prints SET closed_ms = NULL, closed_by = NULL WHERE closed_by = :number")
        .bind("number", number)
        .execute();
  }

  static void setTexts(Handle handle, long number, String title, String notes) {
    handle
        .createUpdate("UPDATE prints SET title = :title, notes = :notes WHERE number = :number")
        .bind("title", title)
        .bind("notes", notes)
        .bind("number", number)
        .execute();
  }

  /** The newest print of a session. */
  static Optional<Print> latest(Handle handle, long sessionId) {
    return handle
        .createQuery(
            "SELECT * FROM prints WHERE session_id = :id AND "
                + SHOWN
                + " ORDER BY number DESC LIMIT 1")
        .bind("id", sessionId)
        .map(PrintRows::bare)
        .findOne()
        .map(print -> withMarks(handle, List.of(print)).get(0));
  }

  static Optional<Print> byNumber(Handle handle, long number) {
    return handle
        .createQuery("SELECT * FROM prints WHERE number = :number AND " + SHOWN)
        .bind("number", number)
        .map(PrintRows::bare)
        .findOne()
        .map(print -> withMarks(handle, List.of(print)).get(0));
  }

  static List<Print> newestFirst(Handle handle, int limit, int offset) {
    return withMarks(
        handle,
        handle
            .createQuery(
                "SELECT * FROM prints WHERE "
                    + SHOWN
                    + " ORDER BY number DESC LIMIT :limit OFFSET :offset")
            .bind("limit", limit)
            .bind("offset", offset)
            .map(PrintRows::bare)
            .list());
  }

  /** The print after or before one in its session. */
  static Optional<Print> neighbour(Handle handle, Print print, boolean after) {
    return handle
        .createQuery(
            "SELECT * FROM prints WHERE session_id = :id AND "
                + SHOWN
                + (after
                    ? " AND number > :number ORDER BY number LIMIT 1"
                    : " AND number < :number ORDER BY number DESC LIMIT 1"))
        .bind("id", print.sessionId())
        .bind("number", print.number())
        .map(PrintRows::bare)
        .findOne()
        .map(bare -> withMarks(handle, List.of(bare)).get(0));
  }

  /**
   * A print's in was put elsewhere: it began then, and one it left without a pull was left then.
   */
  static void moveBeginning(Handle handle, long number, Moment at) {
    handle
        .createUpdate("UPDATE prints SET started_wall_ms = :wall WHERE number = :number")
        .bind("wall", at.wall().toEpochMilli())
        .bind("number", number)
        .execute();
    handle
        .createUpdate("UPDATE prints SET closed_ms = :ms WHERE closed_by = :number")
        .bind("ms", Cells.ms(at.sessionS()))
        .bind("number", number)
        .execute();
  }

  /** A pull that was forgotten is known now. */
  static void noLongerLeft(Handle handle, long number) {
    handle
        .createUpdate("UPDATE prints SET closed_ms = NULL, closed_by = NULL WHERE number = :number")
        .bind("number", number)
        .execute();
  }

  /** Prints, newest first, with their marks. */
  static List<Print> withMarks(Handle handle, List<Print> newestFirst) {
    if (newestFirst.isEmpty()) {
      return List.of();
    }
    Map<Long, List<Mark>> marks =
        MarkRows.live(handle, newestFirst.stream().map(Print::number).toList());
    List<Print> whole = new ArrayList<>(newestFirst.size());
    for (Print bare : newestFirst) {
      whole.add(
          new Print(
              bare.number(),
              bare.sessionId(),
              bare.startedWall(),
              marks.getOrDefault(bare.number(), List.of()),
              bare.title(),
              bare.notes(),
              bare.closedS()));
    }
    return List.copyOf(whole);
  }

  /** A print of a row, without its marks. */
  static Print bare(ResultSet row, StatementContext context) throws SQLException {
    return new Print(
        row.getLong("number"),
        row.getLong("session_id"),
        Cells.wall(row, "started_wall_ms"),
        List.of(),
        row.getString("title"),
        row.getString("notes"),
        Cells.secondsOf(row, "closed_ms"));
  }
}
