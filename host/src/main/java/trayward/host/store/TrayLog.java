package trayward.host.store;

import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import trayward.host.bath.Addition;
import trayward.host.bath.Bath;
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
  private final Pictures pictures;

  TrayLog(LogConnection connection, FolderLock folder) {
    super(connection);
    this.folder = folder;
    this.pictures = new Pictures(connection);
  }

  /** Starts a session. One still open is ended as {@code superseded} first. */
  public Session startSession(Instant wall, boolean simulated) {
    return connection().write(handle -> SessionRows.start(handle, wall, simulated));
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
    return connection().write(handle -> MarkRows.make(handle, kind, sessionId, at, by, bathC));
  }

  /**
   * Takes back the newest mark of an open session; the log keeps it, flagged. With an in goes the
   * print it began, and a print that it left without a pull is in progress again.
   *
   * @param wall wall-clock time of taking it back, for the record only
   * @return the mark taken back; empty where there is none or the session is not open
   */
  public Optional<Mark> undoLastMark(long sessionId, Instant wall) {
    return connection().write(handle -> MarkRows.undoLast(handle, sessionId, wall));
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
    return new PrintRecord(connection());
  }

  /** The pictures of prints. */
  public Pictures pictures() {
    return pictures;
  }

  /** Enters a bath; the ranges are those of {@link Bath}. */
  public Checked<Bath> addBath(Instant madeWall, String name, double litres, String note) {
    Checked<Bath> checked = Bath.check(0, madeWall, name, litres, note);
    return checked instanceof Checked.Good<Bath> good
        ? new Checked.Good<>(connection().write(handle -> BathRows.add(handle, good.value())))
        : checked;
  }

  /**
   * Enters an addition; the ranges are those of {@link Addition}.
   *
   * @param sessionS time on the open session's line, seconds; NaN where none is open
   */
  public Checked<Addition> addAddition(
      long bathId, Instant wall, double sessionS, String what, double millilitres) {
    Checked<Addition> checked = Addition.check(0, bathId, wall, sessionS, what, millilitres);
    return checked instanceof Checked.Good<Addition> good
        ? connection().write(handle -> BathRows.addIfKnown(handle, good.value()))
        : checked;
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
