package trayward.host.store;

import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.jdbi.v3.core.Handle;
import trayward.host.bath.Balance;
import trayward.host.bath.Bath;
import trayward.host.bath.BookEntry;
import trayward.host.bath.Checked;
import trayward.host.session.Mark;
import trayward.host.session.MarkKind;
import trayward.host.session.Moment;
import trayward.host.session.Print;
import trayward.host.session.PrintField;
import trayward.host.session.Session;
import trayward.host.session.TraceSample;

/**
 * The log of the running program. Safe on any thread: one lock around one connection. What a call
 * that writes has answered is safe on the disk; one that throws {@link LogFailed} has changed
 * nothing and may be made again.
 */
public final class TrayLog extends LogReader {

  /** Longest word for where a mark came from; a longer one is cut. */
  public static final int BY_MAX = 16;

  /** Longest word for how a session ended; a longer one is cut. */
  public static final int ENDING_MAX = 80;

  /** Most additions to one bath: one a minute through a working day is half of it. */
  public static final int ADDITIONS_MAX = 1000;

  /** Events kept, the newest: years of ordinary use, some 20 MB; a flood drops the oldest. */
  public static final int EVENTS_MAX = 200_000;

  private final FolderLock folder;
  private final BookKeeper keeper;
  private final VapourRows vapour;
  private final Pictures pictures;

  TrayLog(LogConnection connection, FolderLock folder, BookModel model) {
    super(connection);
    this.folder = folder;
    this.keeper = new BookKeeper(model.use());
    this.vapour = new VapourRows(model.vapour());
    this.pictures = new Pictures(connection);
  }

  /** Starts a session. One still open is ended as {@code superseded} first. */
  public Session startSession(Instant wall, boolean simulated) {
    return connection()
        .write(
            handle -> {
              SessionRows.open(handle)
                  .ifPresent(
                      left ->
                          vapour.account(
                              handle, left, SessionRows.lastMs(handle, left.id()), wall));
              return SessionRows.start(handle, wall, simulated);
            });
  }

  /**
   * Ends an open session and leaves its print, if one is in progress, without a pull.
   *
   * @param ending how it ended, not empty, cut to {@value #ENDING_MAX} characters
   * @return the session as ended; empty where it is not open
   */
  public Optional<Session> endSession(long id, Instant wall, String ending) {
    if (ending.isBlank()) {
      throw new IllegalArgumentException("how a session ended is not blank");
    }
    return connection()
        .write(
            handle -> {
              Optional<Session> open = SessionRows.open(handle).filter(s -> s.id() == id);
              open.ifPresent(
                  session -> vapour.account(handle, session, SessionRows.lastMs(handle, id), wall));
              open.ifPresent(
                  session ->
                      SessionRows.end(
                          handle, session, wall.toEpochMilli(), Cells.cut(ending, ENDING_MAX)));
              return open.flatMap(session -> SessionRows.byId(handle, session.id()));
            });
  }

  /** Adds one sample; see {@link #addTrace(long, List)}. Gives whether it was kept. */
  public boolean addTrace(long sessionId, TraceSample sample) {
    return addTrace(sessionId, List.of(sample)) == 1;
  }

  /**
   * Adds samples to an open session in one go; one at a millisecond already there replaces it.
   * Temperatures are kept to 0.01 °C, times to 1 ms, duty to 0.001.
   *
   * @return how many were kept: none where the session is not open, and none after its 31st day
   */
  public int addTrace(long sessionId, List<TraceSample> samples) {
    return connection().write(handle -> TraceRows.add(handle, sessionId, samples));
  }

  /**
   * Marks a moment of a print. An in begins a print and leaves one in progress without a pull.
   *
   * @param sessionId the open session
   * @param by where it came from: page, pedal or api; cut to {@value #BY_MAX} characters
   * @param bathC bath temperature read at the mark, °C; empty where none was valid
   */
  public MarkResult mark(
      MarkKind kind, long sessionId, Moment at, String by, OptionalDouble bathC) {
    return connection()
        .write(
            handle -> {
              MarkResult result = MarkRows.make(handle, kind, sessionId, at, by, bathC);
              if (kind == MarkKind.IN && result instanceof MarkResult.Marked marked) {
                wentIn(handle, marked.print().number(), sessionId, at);
              }
              return result;
            });
  }

  /**
   * Takes back the newest mark of an open session; the log keeps it, flagged. With an in goes the
   * print it began, and a print that it left without a pull is in progress again.
   *
   * @param wall wall-clock time of taking it back, for the record only
   * @return the mark taken back; empty where there is none or the session is not open
   */
  public Optional<Mark> undoLastMark(long sessionId, Instant wall) {
    return connection()
        .write(
            handle -> {
              Optional<Print> print = PrintRows.latest(handle, sessionId);
              Optional<Mark> gone = MarkRows.undoLast(handle, sessionId, wall);
              if (gone.filter(mark -> mark.kind() == MarkKind.IN).isPresent()) {
                wentNot(handle, print.orElseThrow().number(), wall);
              }
              return gone;
            });
  }

  /** A sheet is a line in the book of the bath in the tray, and the print keeps what it was. */
  private void wentIn(Handle handle, long print, long sessionId, Moment at) {
    SessionRows.open(handle)
        .ifPresent(session -> vapour.account(handle, session, Cells.ms(at.sessionS()), at.wall()));
    Optional<Bath> bath = BathRows.inTray(handle);
    if (bath.isPresent()) {
      long id = bath.get().id();
      // A book that does not balance, whatever spoilt it, loses no mark.
      if (keeper.lines(handle, bath.get()) instanceof Checked.Good<List<Balance.Line>> good) {
        PrintBathRows.keep(handle, print, Balance.last(bath.get(), good.value()));
      }
      Instant wall = BookRows.newest(handle, id, at.wall());
      BookRows.add(
          handle, BookEntry.printed(id, wall, at.sessionS(), print), OptionalLong.of(sessionId));
    }
  }

  private static void wentNot(Handle handle, long print, Instant wall) {
    BookRows.ofPrint(handle, print).ifPresent(e -> BookRows.takeBack(handle, e.id(), wall));
    PrintBathRows.forget(handle, print);
  }

  /**
   * Changes a print's title, notes or both.
   *
   * @param title up to {@link Print#TITLE_MAX} characters; empty leaves it as it is
   * @param notes up to {@link Print#NOTES_MAX} characters; empty leaves them as they are
   */
  public PrintUpdate updatePrint(long number, Optional<String> title, Optional<String> notes) {
    Map<String, String> changes = new HashMap<>();
    title.ifPresent(text -> changes.put(PrintField.TITLE.name(), text));
    notes.ifPresent(text -> changes.put(PrintField.NOTES.name(), text));
    return record().change(number, changes, Instant.now());
  }

  /** What a person says of a print, enters and puts right. */
  public PrintRecord record() {
    return new PrintRecord(connection(), keeper);
  }

  /** The pictures of prints. */
  public Pictures pictures() {
    return pictures;
  }

  /** Bath by bath what is in it. */
  public BathBook baths() {
    return new BathBook(connection(), keeper, vapour);
  }

  /** What the forecast learns from. */
  public PastPrints pastPrints() {
    return new PastPrints(connection());
  }

  /** What the person has and uses again. */
  public Shelf shelf() {
    return new Shelf(connection(), keeper);
  }

  /**
   * Keeps an event. Texts are cut to the lengths of {@link LogEvent}; of all events the newest
   * {@value #EVENTS_MAX} stay.
   *
   * @param sessionId session it fell into; empty, or one not in the log, for none
   * @param uptimeS seconds since the program's start
   */
  public void addEvent(
      OptionalLong sessionId,
      Instant wall,
      double uptimeS,
      String kind,
      String subject,
      String detail) {
    connection()
        .write(
            handle -> {
              EventRows.add(handle, sessionId, wall, uptimeS, kind, subject, detail, EVENTS_MAX);
              return true;
            });
  }

  /** Gathers the log into its one file, closes it and gives the folder free. */
  @Override
  public void close() {
    super.close();
    folder.close();
  }
}
