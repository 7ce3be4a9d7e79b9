package trayward.host.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jdbi.v3.core.Handle;

/**
 * Whether a file is a log this program may open. It reads through SQLite alone and never writes:
 * reading the file by other means in one process would drop SQLite's own locks on it.
 */
final class LogCheck {

  /**
   * Largest file whose every page is checked at opening, bytes: some hundred long sessions, well
   * under a second on a desk computer. A larger one would hold up the start for a long time on a
   * slow card, so there only header and schema are read.
   */
  static final long WHOLE_BYTES = 64L << 20;

  /** Smallest page SQLite knows, bytes. It takes some shorter files for new ones. */
  private static final int PAGE_MIN_BYTES = 512;

  private LogCheck() {}

  /** Refuses what stands there but is no file, or one too short to be a log. */
  static void standing(Path file) throws LogRefused {
    try {
      if (!Files.isRegularFile(file)) {
        throw new LogRefused(LogRefused.Reason.DAMAGED, file + " is not a file.");
      }
      long bytes = Files.size(file);
      if (bytes < PAGE_MIN_BYTES) {
        throw new LogRefused(
            LogRefused.Reason.DAMAGED,
            file + " is damaged: it has " + bytes + " bytes; it was left as it is.");
      }
    } catch (IOException e) {
      throw new LogRefused(
          LogRefused.Reason.UNREACHABLE, file + " cannot be read: " + e.getMessage() + ".");
    }
  }

  /** Refuses another program's file, a newer log, and one without its tables. */
  static void headerAndSchema(LogConnection log) throws LogRefused {
    Path file = log.file();
    int application = log.raw(handle -> number(handle, "PRAGMA application_id"));
    int version = log.raw(LogCheck::version);
    List<String> missing = new ArrayList<>(LogSchema.tables(version));
    missing.removeAll(log.raw(LogCheck::tables));
    if (application != LogSchema.APPLICATION_ID) {
      throw new LogRefused(
          LogRefused.Reason.FOREIGN,
          file + " is another program's file, not a log; it was left as it is.");
    }
    if (version > LogSchema.VERSION) {
      throw new LogRefused(
          LogRefused.Reason.NEWER,
          String.format(
              "%s is of log version %d and this program reads version %d; use a newer program.",
              file, version, LogSchema.VERSION));
    }
    if (version < 1 || !missing.isEmpty()) {
      throw new LogRefused(
          LogRefused.Reason.DAMAGED,
          file + " is damaged: it lacks parts of a log; it was left as it is.");
    }
  }

  /** Refuses, for one who only reads, a log of an older version. */
  static void upToDate(LogConnection log) throws LogRefused {
    int version = log.raw(LogCheck::version);
    if (version < LogSchema.VERSION) {
      throw new LogRefused(
          LogRefused.Reason.OLDER,
          String.format(
              "%s is of log version %d and this program reads version %d; `run` or `host` brings"
                  + " it up to date.",
              log.file(), version, LogSchema.VERSION));
    }
  }

  /** The version a log says it has. */
  static int version(Handle handle) {
    return number(handle, "PRAGMA user_version");
  }

  /** Refuses a file of at most {@code wholeBytes} in which a page does not hang together. */
  static void pages(LogConnection log, long wholeBytes) throws LogRefused {
    Path file = log.file();
    boolean small;
    try {
      small = Files.size(file) <= wholeBytes;
    } catch (IOException e) {
      throw new LogRefused(
          LogRefused.Reason.UNREACHABLE, file + " cannot be read: " + e.getMessage() + ".");
    }
    if (small && !log.raw(LogCheck::sound)) {
      throw new LogRefused(
          LogRefused.Reason.DAMAGED,
          file + " is damaged: its pages do not hang together; it was left as it is.");
    }
  }

  private static boolean sound(Handle handle) {
    return handle
        .createQuery("PRAGMA quick_check(1)")
        .mapTo(String.class)
        .list()
        .equals(List.of("ok"));
  }

  private static List<String> tables(Handle handle) {
    return handle
        .createQuery("SELECT name FROM sqlite_schema WHERE type = 'table'")
        .mapTo(String.class)
        .list();
  }

  private static int number(Handle handle, String pragma) {
    return handle.createQuery(pragma).mapTo(Integer.class).one();
  }
}
