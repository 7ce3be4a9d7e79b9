package trayward.host.store;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import trayward.host.bath.Bath;
import trayward.host.bath.BookEntry;
import trayward.host.session.Print;
import trayward.host.session.PrintSummary;
import trayward.host.session.Session;
import trayward.host.session.TraceSample;

/**
 * What can be read from the log. Safe on any thread: one lock around one connection. Each call sees
 * the log as of one moment; each may throw {@link LogFailed} and be made again.
 */
public sealed class LogReader implements AutoCloseable permits TrayLog {

  /** Most rows of one list: a page shows fewer, and an export asks again with an offset. */
  public static final int ROWS_MAX = 1000;

  /** Most samples of one {@link #trace}: a day at one a second, a few megabytes in memory. */
  public static final int TRACE_MAX = 86_400;

  /** Most samples of one print, and the seconds they span: 6 h, longer than any print develops. */
  public static final int PRINT_TRACE_MAX = 21_600;

  /** How sessions ended that never took place: those of an invented season. */
  public static final String INVENTED = "invented season";

  private final LogConnection connection;

  LogReader(LogConnection connection) {
    this.connection = connection;
  }

  LogConnection connection() {
    return connection;
  }

  /** The log file. */
  public Path file() {
    return connection.file();
  }

  /** The session that has not ended, if there is one. */
  public Optional<Session> openSession() {
    return connection.read(SessionRows::open);
  }

  /** A session by its id. */
  public Optional<Session> session(long id) {
    return connection.read(handle -> SessionRows.byId(handle, id));
  }

  /** Whether an invented season was written into it: then nothing in it counts as real. */
  public boolean invented() {
    return connection.read(
        handle ->
            handle
                .createQuery("SELECT EXISTS (SELECT 1 FROM sessions WHERE ending = :ending)")
                .bind("ending", INVENTED)
                .mapTo(Boolean.class)
                .one());
  }

  /** Sessions, newest first: at most {@code limit} and {@link #ROWS_MAX} after {@code offset}. */
  public List<Session> sessions(int limit, int offset) {
    return connection.read(
        handle -> SessionRows.newestFirst(handle, Cells.limit(limit, ROWS_MAX), offset));
  }

  /**
   * A session's trace in time order, both ends included; the first {@link #TRACE_MAX} samples.
   *
   * @param fromS session time, seconds; what lies outside 0 to 31 days is brought to the nearer end
   * @param toS session time, seconds, likewise
   */
  public List<TraceSample> trace(long sessionId, double fromS, double toS) {
    return connection.read(handle -> TraceRows.between(handle, sessionId, fromS, toS, TRACE_MAX));
  }

  /** The print in the developer, if there is one. */
  public Optional<Print> currentPrint() {
    return connection.read(
        handle ->
            SessionRows.open(handle)
                .flatMap(session -> PrintRows.latest(handle, session.id()))
                .filter(Print::inProgress));
  }

  /** The newest print of a session, in progress or not: what the next mark follows on. */
  public Optional<Print> latestPrint(long sessionId) {
    return connection.read(handle -> PrintRows.latest(handle, sessionId));
  }

  /** A print by its number; empty also where its every mark was taken back. */
  public Optional<Print> print(long number) {
    return connection.read(handle -> PrintRows.byNumber(handle, number));
  }

  /** Prints, newest first: at most {@code limit} and {@link #ROWS_MAX} after {@code offset}. */
  public List<Print> prints(int limit, int offset) {
    return connection.read(
        handle -> PrintRows.newestFirst(handle, Cells.limit(limit, ROWS_MAX), offset));
  }

  /**
   * The trace from in to pull, both included, or to where the print was left, or to the last sample
   * while it is in progress; at most the first 6 h and {@link #PRINT_TRACE_MAX} samples.
   */
  public List<TraceSample> traceOf(Print print) {
    return connection.read(handle -> SummaryRows.traceAround(handle, print, 0));
  }

  /** What the print's trace amounts to: as kept, or worked out while it may still change. */
  public PrintSummary summaryOf(Print print) {
    return archive().summaries(List.of(print)).get(0);
  }

  /** What is said of prints, and the search for them. */
  public PrintArchive archive() {
    return new PrintArchive(connection);
  }

  /** A bath by its id. */
  public Optional<Bath> bath(long id) {
    return connection.read(handle -> BathRows.byId(handle, id));
  }

  /** Baths, newest first: at most {@code limit} and {@link #ROWS_MAX} after {@code offset}. */
  public List<Bath> baths(int limit, int offset) {
    return connection.read(
        handle -> BathRows.newestFirst(handle, Cells.limit(limit, ROWS_MAX), offset));
  }

  /** Baths with their lines, and the shelf, as they stand. */
  public BookArchive books() {
    return new BookArchive(connection);
  }

  /** Everything entered for a bath, oldest first; at most {@link TrayLog#ADDITIONS_MAX}. */
  public List<BookEntry> additions(long bathId) {
    return connection.read(handle -> BookRows.entered(handle, bathId));
  }

  /**
   * Events, newest first: at most {@code limit} and {@link #ROWS_MAX}.
   *
   * @param sessionId of this session; empty for all there are
   */
  public List<LogEvent> events(OptionalLong sessionId, int limit) {
    return connection.read(
        handle -> EventRows.newestFirst(handle, sessionId, Cells.limit(limit, ROWS_MAX)));
  }

  /** All of it, table by table: for an export. */
  public WholeLog whole() {
    return new WholeLog(connection);
  }

  /** How much is in the log. Counts every row: for a check, not for every page. */
  public LogCounts counts() {
    return connection.read(CountRows::all);
  }

  /** Closes the file. A later call fails; closing again does nothing. */
  @Override
  public void close() {
    connection.close();
  }
}
