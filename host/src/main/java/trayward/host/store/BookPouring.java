package trayward.host.store;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.jdbi.v3.core.Handle;
import trayward.host.bath.Bath;
import trayward.host.bath.BookEntry;
import trayward.host.bath.Bottles;
import trayward.host.bath.Checked;
import trayward.host.bath.EntryKind;
import trayward.host.session.Session;
import trayward.host.store.BathBook.Now;

/**
 * Makes baths and enters lines in their books, within a transaction; what cannot be is thrown as
 * {@link BookRejected}, which rolls it back. Stateless.
 */
record BookPouring(BookKeeper keeper, VapourRows vapour) {

  /** Makes a bath, pours what it is made of, and puts it in the tray. */
  Bath make(Handle handle, Now now, Bath bath, List<BookEntry> parts) {
    account(handle, now);
    Bath made = BathRows.add(handle, bath);
    for (BookEntry part : parts) {
      pour(handle, part.in(made.id(), now.wall(), now.sessionS()));
    }
    BathRows.putInTray(handle, OptionalLong.of(made.id()), now.wall());
    keeper.refresh(handle, made.id());
    return made;
  }

  /** Enters a line; its wall-clock time may be earlier than now, not later. */
  BookEntry enter(Handle handle, Now now, BookEntry entry) {
    Bath bath = known(handle, entry.bathId());
    if (entry.wall().isAfter(now.wall()) || entry.wall().isBefore(bath.madeWall())) {
      throw BookRejected.of(
          "at", entry.wall(), "a time since " + bath.madeWall() + " that has been");
    }
    if (BookRows.count(handle, bath.id()) >= TrayLog.ADDITIONS_MAX) {
      throw BookRejected.of(
          "bath", bath.id(), "a bath with fewer than " + TrayLog.ADDITIONS_MAX + " entries");
    }
    account(handle, now);
    BookEntry made = pour(handle, entry);
    keeper.refresh(handle, bath.id());
    return made;
  }

  /** A bath that must be there. */
  static Bath known(Handle handle, long id) {
    return BathRows.byId(handle, id)
        .orElseThrow(() -> BookRejected.of("bath", id, "a bath that is in the log"));
  }

  /** Adds a line; of something carried over also the one in the book it came from. */
  private BookEntry pour(Handle handle, BookEntry entry) {
    OptionalLong session =
        SessionRows.open(handle).map(s -> OptionalLong.of(s.id())).orElseGet(OptionalLong::empty);
    if (entry.kind() == EntryKind.POURED) {
      refuseUnknown(handle, entry);
    }
    BookEntry made = BookRows.add(handle, entry, session);
    if (entry.kind() == EntryKind.CARRIED_OVER) {
      long from = entry.other().orElse(0);
      if (from == entry.bathId() || BathRows.byId(handle, from).isEmpty()) {
        throw BookRejected.of("from", from, "another bath that is in the log");
      }
      keeper.keepCarried(handle, made);
      // Its pair stands right behind it: id + 1.
      BookRows.add(handle, pair(made, from), session);
      keeper.refresh(handle, from);
    }
    return made;
  }

  private static BookEntry pair(BookEntry carried, long from) {
    return new BookEntry(
        0,
        from,
        carried.wall(),
        carried.sessionS(),
        EntryKind.TAKEN_OVER,
        "",
        "",
        carried.millilitres(),
        OptionalLong.of(carried.bathId()),
        carried.celsius(),
        0,
        0);
  }

  /** What was taken off the shelf cannot be poured any more, though old books still know it. */
  static void refuseUnknown(Handle handle, BookEntry entry) {
    Bottles standing = new Bottles(ShelfRows.solutionsStanding(handle));
    if (standing.find("what", entry.what(), entry.dilution()) instanceof Checked.Bad<?> unknown) {
      throw new BookRejected(unknown.problem());
    }
  }

  /** Counts what the bath in the tray gave off up to now. */
  void account(Handle handle, Now now) {
    Optional<Session> session = SessionRows.open(handle);
    if (session.isPresent() && !Double.isNaN(now.sessionS())) {
      vapour.account(handle, session.get(), Cells.ms(now.sessionS()), now.wall());
    }
  }
}
