package trayward.host.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;
import org.jdbi.v3.core.statement.Update;
import trayward.host.session.PrintStep;
import trayward.host.session.StepKind;

/** The table of steps after the developer. One taken back stays, and keeps its number. */
final class PrintStepRows {

  private PrintStepRows() {}

  /** Adds one; the number it comes with is not looked at. Gives it with its own. */
  static PrintStep add(Handle handle, long print, PrintStep step) {
    Update insert =
        handle
            .createUpdate(
                """
                INSERT INTO print_steps (print, kind, seconds, dilution, what, wall_ms)
                  VALUES (:print, :kind, :seconds, :dilution, :what, :wall)
                """)
            .bind("print", print)
            .bind("kind", step.kind().word())
            .bind("dilution", step.dilution())
            .bind("what", step.what())
            .bind("wall", step.wall().toEpochMilli());
    if (step.seconds().isPresent()) {
      insert.bind("seconds", step.seconds().getAsDouble());
    } else {
      insert.bindNull("seconds", Types.REAL);
    }
    insert.execute();
    List<PrintStep> all = of(handle, print);
    return all.get(all.size() - 1);
  }

  /** Those not taken back, in order. */
  static List<PrintStep> of(Handle handle, long print) {
    return handle
        .createQuery(
            """
            SELECT * FROM (SELECT *, row_number() OVER (ORDER BY id) AS n
              FROM print_steps WHERE print = :print) WHERE taken_back_wall_ms IS NULL ORDER BY n
            """)
        .bind("print", print)
        .map(PrintStepRows::step)
        .list();
  }

  /** How many a print has had, those taken back included. */
  static int ever(Handle handle, long print) {
    return handle
        .createQuery("SELECT count(*) FROM print_steps WHERE print = :print")
        .bind("print", print)
        .mapTo(Integer.class)
        .one();
  }

  /** Takes the step of a number back; gives it, or nothing where there is none. */
  static Optional<PrintStep> takeBack(Handle handle, long print, int n, Instant wall) {
    Optional<PrintStep> step = of(handle, print).stream().filter(s -> s.n() == n).findFirst();
    if (step.isPresent()) {
      handle
          .createUpdate(
              """
              UPDATE print_steps SET taken_back_wall_ms = :wall WHERE id =
                (SELECT id FROM print_steps WHERE print = :print ORDER BY id LIMIT 1 OFFSET :at)
              """)
          .bind("wall", wall.toEpochMilli())
          .bind("print", print)
          .bind("at", n - 1)
          .execute();
    }
    return step;
  }

  private static PrintStep step(ResultSet row, StatementContext context) throws SQLException {
    double seconds = row.getDouble("seconds");
    OptionalDouble known = row.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(seconds);
    return new PrintStep(
        row.getInt("n"),
        StepKind.of(row.getString("kind")).orElseThrow(),
        known,
        row.getString("dilution"),
        row.getString("what"),
        Cells.wall(row, "wall_ms"));
  }
}
