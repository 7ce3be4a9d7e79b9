package trayward.host.store;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import trayward.host.session.Correction;
import trayward.host.session.Print;
import trayward.host.session.PrintEntries;
import trayward.host.session.PrintField;
import trayward.host.session.PrintPicture;
import trayward.host.session.PrintSummary;

/**
 * What is said of prints, to read: fields, steps, pictures, history, summaries, search. Safe on any
 * thread, like the log it comes from; each call may throw {@link LogFailed} and be made again.
 */
public final class PrintArchive {

  /** Most lines of history of one thing that are shown, the newest. */
  public static final int HISTORY_SHOWN_MAX = 200;

  /** Most values of a field that are offered again. */
  public static final int REMEMBERED_MAX = 50;

  private final LogConnection connection;

  PrintArchive(LogConnection connection) {
    this.connection = connection;
  }

  /** Prints looked for, newest first: at most {@code limit} after {@code offset}. */
  public List<Print> find(PrintQuery query, int limit, int offset) {
    return connection.read(
        h -> PrintSearch.newestFirst(h, query, Cells.limit(limit, LogReader.ROWS_MAX), offset));
  }

  /** The summary of each of at most {@link LogReader#ROWS_MAX} prints, in their order. */
  public List<PrintSummary> summaries(List<Print> prints) {
    return connection.read(
        handle -> {
          Map<Long, PrintSummary> kept =
              SummaryRows.kept(handle, prints.stream().map(Print::number).toList());
          List<PrintSummary> all = new ArrayList<>(prints.size());
          for (Print print : prints) {
            PrintSummary summary = kept.get(print.number());
            all.add(summary == null ? SummaryRows.workedOut(handle, print) : summary);
          }
          return all;
        });
  }

  /** What the fields of at most {@link LogReader#ROWS_MAX} prints say, by number. */
  public Map<Long, Map<PrintField, String>> fields(List<Print> prints) {
    return connection.read(
        handle -> PrintFieldRows.of(handle, prints.stream().map(Print::number).toList()));
  }

  /** Everything said of one print; nothing where there is none. */
  public PrintEntries entries(long number) {
    return connection.read(
        handle ->
            new PrintEntries(
                PrintFieldRows.of(handle, List.of(number)).getOrDefault(number, Map.of()),
                PrintStepRows.of(handle, number),
                PictureRows.of(handle, number),
                CorrectionRows.of(handle, Correction.Thing.PRINT, number, HISTORY_SHOWN_MAX),
                PrintBathRows.of(handle, number)));
  }

  /** What a field has said before, each once, newest print first. */
  public List<String> remembered(PrintField field) {
    return connection.read(h -> PrintFieldRows.remembered(h, field, REMEMBERED_MAX));
  }

  /** What was felt in these sessions, by id, in the person's words; empty texts are left out. */
  public Map<Long, String> symptoms(Collection<Long> sessions) {
    return connection.read(handle -> SessionRows.symptoms(handle, sessions));
  }

  /** What was said of a session before, oldest first. */
  public List<Correction> sessionHistory(long id) {
    return connection.read(
        h -> CorrectionRows.of(h, Correction.Thing.SESSION, id, HISTORY_SHOWN_MAX));
  }

  /** A picture that was not taken back. */
  public Optional<PrintPicture> picture(long id) {
    return connection.read(handle -> PictureRows.byId(handle, id));
  }

  /**
   * Where the original of a picture, or the small one beside it, lies; it may have been removed.
   */
  public Path file(PrintPicture picture, boolean small) {
    return PictureFiles.of(connection.file()).of(picture.file(), small);
  }
}
