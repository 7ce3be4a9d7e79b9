package trayward.host.store;

import java.util.Optional;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import trayward.host.bath.Bath;
import trayward.host.bath.BookEntry;
import trayward.host.bath.Checked;
import trayward.host.bath.EntryKind;
import trayward.host.session.Correction;
import trayward.host.store.BathBook.Now;

/**
 * Puts right what was entered in the bath book, within a transaction, and keeps what it was; what
 * would leave a book that does not balance is thrown as {@link BookRejected}. Stateless.
 */
record BookCorrections(BookKeeper keeper) {

  /** Corrects a line that a person entered. */
  BookEntry correct(
      Handle handle,
      Now now,
      long bathId,
      long id,
      Function<BookEntry, Checked<BookEntry>> change) {
    BookEntry was = entered(handle, bathId, id);
    BookEntry is = BookRejected.insist(change.apply(was));
    if (is.kind() == EntryKind.POURED) {
      BookPouring.refuseUnknown(handle, is);
    }
    BookRows.change(handle, is);
    if (is.kind() == EntryKind.CARRIED_OVER) {
      BookEntry pair = BookRows.byId(handle, id + 1).orElseThrow();
      BookRows.change(handle, pair.holding(is.millilitres()));
      keeper.refresh(handle, pair.bathId());
    }
    kept(handle, now, was, "what", was.what(), is.what());
    kept(handle, now, was, "dilution", was.dilution(), is.dilution());
    kept(handle, now, was, "millilitres", ml(was), ml(is));
    kept(handle, now, was, "celsius", warmth(was), warmth(is));
    keeper.refresh(handle, bathId);
    return is;
  }

  /** Takes back a line that a person entered: it stays in the log and counts no more. */
  BookEntry takeBack(Handle handle, Now now, long bathId, long id) {
    BookEntry was = entered(handle, bathId, id);
    BookRows.takeBack(handle, id, now.wall());
    if (was.kind() == EntryKind.CARRIED_OVER) {
      BookRows.takeBack(handle, id + 1, now.wall());
      keeper.refresh(handle, was.other().orElseThrow());
    }
    kept(handle, now, was, was.kind().word(), ml(was) + " mL " + was.what(), "");
    keeper.refresh(handle, bathId);
    return was;
  }

  /** Changes name and note. */
  Bath rename(Handle handle, Now now, long id, Optional<String> name, Optional<String> note) {
    Bath was = BookPouring.known(handle, id);
    String newName = name.orElse(was.name());
    String newNote = note.orElse(was.note());
    Bath is = BookRejected.insist(Bath.check(id, was.madeWall(), newName, was.litres(), newNote));
    BathRows.setTexts(handle, id, newName, newNote);
    kept(handle, now, id, "name", was.name(), newName);
    kept(handle, now, id, "note", was.note(), newNote);
    return is;
  }

  private static BookEntry entered(Handle handle, long bathId, long id) {
    return BookRows.byId(handle, id)
        .filter(e -> e.bathId() == bathId && e.kind().entered())
        .orElseThrow(
            () -> BookRejected.of("addition", id, "one that was entered for bath " + bathId));
  }

  private static void kept(
      Handle handle, Now now, BookEntry of, String field, String was, String became) {
    String line = "addition " + of.id() + " " + field;
    kept(handle, now, of.bathId(), line, was.strip(), became.strip());
  }

  private static void kept(
      Handle handle, Now now, long bath, String field, String was, String became) {
    CorrectionRows.keep(
        handle, new Correction(now.wall(), Correction.Thing.BATH, bath, field, was, became));
  }

  private static String ml(BookEntry e) {
    return Double.toString(e.millilitres());
  }

  private static String warmth(BookEntry e) {
    return e.celsius().isPresent() ? Double.toString(e.celsius().getAsDouble()) : "";
  }
}
