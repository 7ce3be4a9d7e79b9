package trayward.host.store;

import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;

/** Everything that is in a log, table by table. Safe on any thread. */
public final class WholeLog {

  private final LogConnection connection;

  WholeLog(LogConnection connection) {
    this.connection = connection;
  }

  /** Every table but the trace, those referred to first. */
  public static List<LogTable> tables() {
    return LogTables.ALL;
  }

  /** The table of pictures, one of {@link #tables}. */
  public static LogTable pictures() {
    return LogTables.PICTURES;
  }

  /** The trace of one session. */
  public static LogTable trace() {
    return LogTables.TRACE;
  }

  /** Work of many reads on this thread, all of which see the log as of one moment. */
  public void atOneMoment(Runnable reads) {
    connection.atOneMoment(reads);
  }

  /** Hands on each row of a table, in its order. */
  public void each(LogTable table, Consumer<LogRow> sink) {
    connection.read(
        handle -> {
          TableRows.each(handle, table, sink);
          return true;
        });
  }

  /** Sessions that have a trace. */
  public List<Long> traced() {
    return connection.read(TableRows::traced);
  }

  /** Hands on each sample of a session, in order of time. */
  public void eachSample(long session, Consumer<LogRow> sink) {
    connection.read(
        handle -> {
          TableRows.eachSample(handle, session, sink);
          return true;
        });
  }

  /** Where the original of a picture lies; it may have been removed. */
  public Path picture(LogRow row) {
    return PictureFiles.of(connection.file()).of(row.text("file"), false);
  }
}
