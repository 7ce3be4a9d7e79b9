package trayward.host.store;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import trayward.host.bath.Balance;
import trayward.host.bath.Bath;
import trayward.host.bath.BathContents;
import trayward.host.bath.BookEntry;
import trayward.host.bath.Checked;
import trayward.host.bath.PrintUse;
import trayward.host.session.Correction;
import trayward.host.session.ShelfItem;

/** Baths with their lines and the shelf as they stand in the log. Safe on any thread. */
public final class BookArchive {

  private static final int ALL = Integer.MAX_VALUE;

  private final LogConnection connection;

  BookArchive(LogConnection connection) {
    this.connection = connection;
  }

  /**
   * A bath, its lines that count, in order, and what was corrected.
   *
   * @param bath the bath
   * @param entries its lines
   * @param history what was corrected, oldest first
   */
  public record Pages(Bath bath, List<BookEntry> entries, List<Correction> history) {}

  /**
   * Something that stands or stood on the shelf.
   *
   * @param item the thing
   * @param gone when it was taken off; empty while it stands
   * @param history what was corrected, oldest first
   */
  public record Shelved(ShelfItem item, Optional<Instant> gone, List<Correction> history) {}

  /** Every bath, oldest first. */
  public List<Pages> baths() {
    return connection.read(
        handle ->
            BathRows.all(handle).stream()
                .map(
                    bath ->
                        new Pages(
                            bath,
                            BookRows.of(handle, bath.id()),
                            history(handle, Correction.Thing.BATH, bath.id())))
                .toList());
  }

  /**
   * What a bath held when it had been made: before anything was printed in it or went as vapour.
   */
  public BathContents asMade(Bath bath) {
    return connection.read(
        handle -> {
          BathContents made = Balance.beginning(bath);
          // No sheet is among the lines that count here, so what printing does plays no part.
          if (new BookKeeper(PrintUse.STANDARD).lines(handle, bath)
              instanceof Checked.Good<List<Balance.Line>> good) {
            for (Balance.Line line : good.value()) {
              boolean then = line.entry().wall().equals(bath.madeWall());
              made = then && line.entry().kind().entered() ? line.after() : made;
            }
          }
          return made;
        });
  }

  /** Everything that ever stood on the shelf, oldest first. */
  public List<Shelved> shelf() {
    return connection.read(
        handle ->
            ShelfRows.ever(handle).stream()
                .map(
                    s ->
                        new Shelved(
                            s.item(),
                            s.gone(),
                            history(handle, Correction.Thing.SHELF, s.item().id())))
                .toList());
  }

  private static List<Correction> history(Handle handle, Correction.Thing thing, long id) {
    return CorrectionRows.of(handle, thing, id, ALL);
  }
}
