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
import trayward.host.bath.Checked;
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
  private final BookPouring pouring;
  private final BookCorrections corrections;

  BathBook(LogConnection connection, BookKeeper keeper, VapourRows vapour) {
    this.connection = connection;
    this.keeper = keeper;
    this.vapour = vapour;
    this.pouring = new BookPouring(keeper, vapour);
    this.corrections = new BookCorrections(keeper);
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
        handle -> BathRows.inTray(handle).map(b -> now(handle, Balance.last(b, lines(handle, b)))));
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
    List<Balance.Line> lines = lines(handle, bath);
    boolean inTray = BathRows.inTray(handle).filter(b -> b.id() == bath.id()).isPresent();
    BathContents last = Balance.last(bath, lines);
    return new Whole(
        bath,
        lines,
        inTray ? now(handle, last) : last,
        inTray,
        CorrectionRows.of(handle, Correction.Thing.BATH, bath.id(), CORRECTIONS_MAX));
  }

  private List<Balance.Line> lines(Handle handle, Bath bath) {
    if (keeper.lines(handle, bath) instanceof Checked.Good<List<Balance.Line>> good) {
      return good.value();
    }
    throw new LogFailed("the book of bath " + bath.id() + " does not balance.");
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
        .then(bath -> balanced(handle -> whole(handle, pouring.make(handle, now, bath, parts))));
  }

  /** Enters a line; its wall-clock time may be earlier than now, not later. */
  public Checked<BookEntry> enter(Now now, BookEntry entry) {
    return balanced(handle -> pouring.enter(handle, now, entry));
  }

  /**
   * Corrects a line that a person entered; what it was is kept.
   *
   * @param change makes the line as it should be of the line as it is
   */
  public Checked<BookEntry> correct(
      Now now, long bathId, long id, Function<BookEntry, Checked<BookEntry>> change) {
    return balanced(handle -> corrections.correct(handle, now, bathId, id, change));
  }

  /** Takes back a line that a person entered: it stays in the log and counts no more. */
  public Checked<BookEntry> takeBack(Now now, long bathId, long id) {
    return balanced(handle -> corrections.takeBack(handle, now, bathId, id));
  }

  /** Changes name and note; what they were is kept. */
  public Checked<Whole> rename(Now now, long id, Optional<String> name, Optional<String> note) {
    return balanced(handle -> whole(handle, corrections.rename(handle, now, id, name, note)));
  }

  /** Puts a bath in the tray, or none. */
  public Checked<Optional<Bath>> putInTray(Now now, OptionalLong bath) {
    return balanced(
        handle -> {
          if (bath.isPresent()) {
            BookPouring.known(handle, bath.getAsLong());
          }
          pouring.account(handle, now);
          BathRows.putInTray(handle, bath, now.wall());
          return BathRows.inTray(handle);
        });
  }

  private <T> Checked<T> balanced(Function<Handle, T> work) {
    return BookRejected.caught(() -> connection.write(work));
  }
}
