package trayward.host.store;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import trayward.host.bath.Balance;
import trayward.host.bath.Bath;
import trayward.host.bath.BathChange;
import trayward.host.bath.BathContents;
import trayward.host.bath.BookEntry;
import trayward.host.bath.Bottles;
import trayward.host.bath.Checked;
import trayward.host.bath.EntryKind;
import trayward.host.bath.Problem;
import trayward.host.session.Correction;
import trayward.host.session.PrintBath;
import trayward.host.session.Session;

/**
 * What is in each bath, what happened to it, and which is in the tray. Safe on any thread. What
 * would leave a book that does not balance is refused, and nothing is stored.
 */
public final class BathBook {

  /** Most corrections shown of one thing; older ones stay in the log. */
  private static final int CORRECTIONS_MAX = 200;

  /** As many as two rows of large buttons hold. */
  private static final int AGAIN_MAX = 6;

  private final LogConnection connection;
  private final BookKeeper keeper;
  private final VapourRows vapour;

  BathBook(LogConnection connection, BookKeeper keeper, VapourRows vapour) {
    this.connection = connection;
    this.keeper = keeper;
    this.vapour = vapour;
  }

  /**
   * A bath with its whole book.
   *
   * @param bath the bath
   * @param lines every line with what it left, oldest first
   * @param now what it holds now, with what went as vapour since the last line
   * @param inTray whether it is in the tray
   * @param corrections what was corrected of it and of its lines, oldest first
   */
  public record Whole(
      Bath bath,
      List<Balance.Line> lines,
      BathContents now,
      boolean inTray,
      List<Correction> corrections) {}

  /** When something is entered, told by the clocks. */
  public record Now(Instant wall, double sessionS) {}

  /** A bath with its book; empty where there is none of this id. */
  public Optional<Whole> whole(long id) {
    return connection.read(handle -> BathRows.byId(handle, id).map(b -> whole(handle, b)));
  }

  /** Baths with their books, newest first, at most {@code limit} of them after {@code offset}. */
  public List<Whole> newestFirst(int limit, int offset) {
    return connection.read(
        handle ->
            BathRows.newestFirst(handle, Cells.limit(limit, LogReader.ROWS_MAX), offset).stream()
                .map(bath -> whole(handle, bath))
                .toList());
  }

  /** The bath in the tray; empty for an empty tray. */
  public Optional<Bath> inTray() {
    return connection.read(BathRows::inTray);
  }

  /** What the bath in the tray holds now. */
  public Optional<BathContents> now() {
    return connection.read(
        handle -> BathRows.inTray(handle).map(b -> now(handle, keeper.contents(handle, b))));
  }

  /** What was poured in of late, newest first and each but once. */
  public List<BookEntry> pouredOfLate() {
    return connection.read(handle -> BookRows.pouredOfLate(handle, AGAIN_MAX));
  }

  /** What the bath was when a print went in. */
  public Optional<PrintBath> atPrint(long print) {
    return connection.read(handle -> PrintBathRows.of(handle, print));
  }

  private Whole whole(Handle handle, Bath bath) {
    Checked<List<Balance.Line>> checked = keeper.lines(handle, bath);
    if (!(checked instanceof Checked.Good<List<Balance.Line>> good)) {
      throw new LogFailed("the book of bath " + bath.id() + " does not balance.");
    }
    List<Balance.Line> lines = good.value();
    boolean inTray = BathRows.inTray(handle).filter(b -> b.id() == bath.id()).isPresent();
    BathContents last = Balance.last(bath, lines);
    return new Whole(
        bath,
        lines,
        inTray ? now(handle, last) : last,
        inTray,
        CorrectionRows.of(handle, Correction.Thing.BATH, bath.id(), CORRECTIONS_MAX));
  }

  private BathContents now(Handle handle, BathContents last) {
    Optional<Session> session = SessionRows.open(handle);
    if (session.isEmpty()) {
      return last;
    }
    VapourRows.Stood stood = vapour.since(handle, session.get());
    var change =
        new BathChange.Evaporated(vapour.vapour().doubted(stood.millilitres()), stood.hotS());
    return last.after(change) instanceof Checked.Good<BathContents> good ? good.value() : last;
  }

  /**
   * Makes a bath, pours what it is made of, and puts it in the tray.
   *
   * @param litres of which nothing is told, L; 0 for an empty tray
   * @param parts what is poured in, in order; their bath is the new one
   */
  public Checked<Whole> make(
      Now now, String name, double litres, String note, List<BookEntry> parts) {
    return Bath.check(0, now.wall(), name, litres, note)
        .then(
            bath ->
                balanced(
                    handle -> {
                      accountNow(handle, now);
                      Bath made = BathRows.add(handle, bath);
                      for (BookEntry part : parts) {
                        pour(handle, moved(part, made.id(), now));
                      }
                      BathRows.putInTray(handle, OptionalLong.of(made.id()), now.wall());
                      keeper.refresh(handle, made.id());
                      return whole(handle, made);
                    }));
  }

  private static BookEntry moved(BookEntry e, long bath, Now now) {
    return new BookEntry(
        0,
        bath,
        now.wall(),
        now.sessionS(),
        e.kind(),
        e.what(),
        e.dilution(),
        e.millilitres(),
        e.other(),
        e.celsius(),
        e.doubtMl(),
        0);
  }

  /** Enters a line; its wall-clock time may be earlier than now, not later. */
  public Checked<BookEntry> enter(Now now, BookEntry entry) {
    return balanced(
        handle -> {
          Bath bath =
              BathRows.byId(handle, entry.bathId())
                  .orElseThrow(() -> bad("bath", entry.bathId(), "a bath that is in the log"));
          if (entry.wall().isAfter(now.wall()) || entry.wall().isBefore(bath.madeWall())) {
            throw bad("at", entry.wall(), "a time since " + bath.madeWall() + " that has been");
          }
          if (BookRows.count(handle, bath.id()) >= TrayLog.ADDITIONS_MAX) {
            throw bad(
                "bath", bath.id(), "a bath with fewer than " + TrayLog.ADDITIONS_MAX + " entries");
          }
          accountNow(handle, now);
          BookEntry made = pour(handle, entry);
          keeper.refresh(handle, bath.id());
          return made;
        });
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
        throw bad("from", from, "another bath that is in the log");
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
  private static void refuseUnknown(Handle handle, BookEntry entry) {
    Bottles standing = new Bottles(ShelfRows.solutionsStanding(handle));
    if (standing.find("what", entry.what(), entry.dilution()) instanceof Checked.Bad<?> unknown) {
      throw new BookRejected(unknown.problem());
    }
  }

  /**
   * Corrects a line that a person entered; what it was is kept.
   *
   * @param change makes the line as it should be of the line as it is
   */
  public Checked<BookEntry> correct(
      Now now, long bathId, long id, Function<BookEntry, Checked<BookEntry>> change) {
    return balanced(
        handle -> {
          BookEntry was = entered(handle, bathId, id);
          if (!(change.apply(was) instanceof Checked.Good<BookEntry> good)) {
            throw new BookRejected(((Checked.Bad<BookEntry>) change.apply(was)).problem());
          }
          BookEntry is = good.value();
          if (is.kind() == EntryKind.POURED) {
            refuseUnknown(handle, is);
          }
          BookRows.change(handle, is);
          if (is.kind() == EntryKind.CARRIED_OVER) {
            BookEntry pair = BookRows.byId(handle, id + 1).orElseThrow();
            BookRows.change(handle, withVolume(pair, is.millilitres()));
            keeper.refresh(handle, pair.bathId());
          }
          kept(handle, now, was, "what", was.what(), is.what());
          kept(handle, now, was, "dilution", was.dilution(), is.dilution());
          kept(handle, now, was, "millilitres", ml(was), ml(is));
          kept(handle, now, was, "celsius", warmth(was), warmth(is));
          keeper.refresh(handle, bathId);
          return is;
        });
  }

  private static BookEntry withVolume(BookEntry e, double millilitres) {
    return new BookEntry(
        e.id(),
        e.bathId(),
        e.wall(),
        e.sessionS(),
        e.kind(),
        e.what(),
        e.dilution(),
        millilitres,
        e.other(),
        e.celsius(),
        e.doubtMl(),
        e.hotS());
  }

  /** Takes back a line that a person entered: it stays in the log and counts no more. */
  public Checked<BookEntry> takeBack(Now now, long bathId, long id) {
    return balanced(
        handle -> {
          BookEntry was = entered(handle, bathId, id);
          BookRows.takeBack(handle, id, now.wall());
          if (was.kind() == EntryKind.CARRIED_OVER) {
            BookRows.takeBack(handle, id + 1, now.wall());
            keeper.refresh(handle, was.other().orElseThrow());
          }
          kept(handle, now, was, was.kind().word(), ml(was) + " mL " + was.what(), "");
          keeper.refresh(handle, bathId);
          return was;
        });
  }

  private static BookEntry entered(Handle handle, long bathId, long id) {
    return BookRows.byId(handle, id)
        .filter(e -> e.bathId() == bathId && e.kind().entered())
        .orElseThrow(() -> bad("addition", id, "one that was entered for bath " + bathId));
  }

  private static void kept(
      Handle handle, Now now, BookEntry of, String field, String was, String became) {
    CorrectionRows.keep(
        handle,
        new Correction(
            now.wall(),
            Correction.Thing.BATH,
            of.bathId(),
            "addition " + of.id() + " " + field,
            was.strip(),
            became.strip()));
  }

  private static String ml(BookEntry e) {
    return Double.toString(e.millilitres());
  }

  private static String warmth(BookEntry e) {
    return e.celsius().isPresent() ? Double.toString(e.celsius().getAsDouble()) : "";
  }

  /** Changes name and note; what they were is kept. Empty where there is no such bath. */
  public Checked<Whole> rename(Now now, long id, Optional<String> name, Optional<String> note) {
    return balanced(
        handle -> {
          Bath was =
              BathRows.byId(handle, id)
                  .orElseThrow(() -> bad("bath", id, "a bath that is in the log"));
          String newName = name.orElse(was.name());
          String newNote = note.orElse(was.note());
          Checked<Bath> is = Bath.check(id, was.madeWall(), newName, was.litres(), newNote);
          if (is instanceof Checked.Bad<Bath> wrong) {
            throw new BookRejected(wrong.problem());
          }
          BathRows.setTexts(handle, id, newName, newNote);
          var thing = Correction.Thing.BATH;
          CorrectionRows.keep(
              handle, new Correction(now.wall(), thing, id, "name", was.name(), newName));
          CorrectionRows.keep(
              handle, new Correction(now.wall(), thing, id, "note", was.note(), newNote));
          return whole(handle, BathRows.byId(handle, id).orElseThrow());
        });
  }

  /** Puts a bath in the tray, or none. */
  public Checked<Optional<Bath>> putInTray(Now now, OptionalLong bath) {
    return balanced(
        handle -> {
          if (bath.isPresent() && BathRows.byId(handle, bath.getAsLong()).isEmpty()) {
            throw bad("bath", bath.getAsLong(), "a bath that is in the log, or null");
          }
          accountNow(handle, now);
          BathRows.putInTray(handle, bath, now.wall());
          return BathRows.inTray(handle);
        });
  }

  private void accountNow(Handle handle, Now now) {
    Optional<Session> session = SessionRows.open(handle);
    if (session.isPresent() && !Double.isNaN(now.sessionS())) {
      vapour.account(handle, session.get(), Cells.ms(now.sessionS()), now.wall());
    }
  }

  private static BookRejected bad(String field, Object found, String accepted) {
    return new BookRejected(new Problem(field, found.toString(), accepted));
  }

  private <T> Checked<T> balanced(Function<Handle, T> work) {
    try {
      return new Checked.Good<>(connection.write(work));
    } catch (BookRejected e) {
      return new Checked.Bad<>(e.problem());
    }
  }
}
