package trayward.host.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;
import trayward.host.bath.Amount;
import trayward.host.bath.BathContents;
import trayward.host.session.PrintBath;

/** The table of what the bath was when a sheet went in: worked out from its book. */
final class PrintBathRows {

  private PrintBathRows() {}

  static void keep(Handle handle, long print, BathContents bath) {
    Amount bromide = bath.bromideGPerL();
    Amount sulfite = bath.sulfiteGPerL();
    handle
        .createUpdate(
            """
            INSERT OR REPLACE INTO print_baths VALUES (:print, :bath, :litres, :strength, :bromide,
              :bromideDoubt, :sulfite, :sulfiteDoubt, :area, :hot)
            """)
        .bind("print", print)
        .bind("bath", bath.bathId())
        .bind("litres", bath.litres().value())
        .bind("strength", bath.strength().value())
        .bind("bromide", bromide.value())
        .bind("bromideDoubt", bromide.standard())
        .bind("sulfite", sulfite.value())
        .bind("sulfiteDoubt", sulfite.standard())
        .bind("area", bath.areaM2())
        .bind("hot", bath.hotS())
        .execute();
  }

  static void forget(Handle handle, long print) {
    handle.execute("DELETE FROM print_baths WHERE print = ?", print);
  }

  static Optional<PrintBath> of(Handle handle, long print) {
    return handle
        .createQuery("SELECT * FROM print_baths WHERE print = :print")
        .bind("print", print)
        .map(PrintBathRows::bath)
        .findOne();
  }

  static PrintBath bath(ResultSet row, StatementContext context) throws SQLException {
    return new PrintBath(
        row.getLong("bath_id"),
        row.getDouble("litres"),
        row.getDouble("strength"),
        row.getDouble("bromide_g_per_l"),
        row.getDouble("bromide_doubt"),
        row.getDouble("sulfite_g_per_l"),
        row.getDouble("sulfite_doubt"),
        row.getDouble("area_m2"),
        row.getDouble("hot_s"));
  }
}
