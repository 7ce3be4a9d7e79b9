package trayward.host.store;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.JdbiException;

/**
 * Opens the log in a data folder. A file that stands there is opened or refused; a new one is made
 * only where there is none. An older log is brought up to date when it is opened to be written,
 * whole or not at all.
 */
public final class LogFile {

  /** Name of the log file in its folder. */
  public static final String NAME = "trayward-log.db";

  private LogFile() {}

  /**
   * Opens the log for the running program, which then has the folder to itself. Folder and file are
   * made where there are none. A session still open from a process that was killed is ended as
   * {@code interrupted}, and its print left without a pull.
   *
   * @throws LogRefused where the log is in use, damaged, newer, another program's or out of reach;
   *     the file is then as it was
   */
  public static TrayLog open(Path folder) throws LogRefused {
    return open(folder, BookModel.STANDARD);
  }

  /** The same with what its bath book reckons with. */
  public static TrayLog open(Path folder, BookModel model) throws LogRefused {
    Path whole = folder.toAbsolutePath();
    FolderLock lock = FolderLock.hold(whole);
    try {
      Path file = whole.resolve(NAME);
      if (Files.notExists(file)) {
        create(file);
      }
      checkWhole(file);
      return new TrayLog(openToWrite(file, model), lock, model);
    } catch (LogRefused e) {
      lock.close();
      throw e;
    }
  }

  /**
   * Opens the log to read, also while a running program has it open. Takes no lock and writes
   * nothing to it.
   *
   * @throws LogRefused where there is no log, or one that is in use by another program, damaged,
   *     newer or not a log
   */
  public static LogReader openToRead(Path folder) throws LogRefused {
    Path file = folder.toAbsolutePath().resolve(NAME);
    if (Files.notExists(file)) {
      throw new LogRefused(LogRefused.Reason.MISSING, "There is no log: " + file + " is missing.");
    }
    LogCheck.standing(file);
    return new LogReader(
        connect(
            file,
            LogConnection.Use.READ,
            log -> {
              LogCheck.headerAndSchema(log);
              LogCheck.upToDate(log);
            }));
  }

  private static void checkWhole(Path file) throws LogRefused {
    LogCheck.standing(file);
    connect(
            file,
            LogConnection.Use.READ,
            log -> {
              LogCheck.headerAndSchema(log);
              LogCheck.pages(log, LogCheck.WHOLE_BYTES);
            })
        .close();
  }

  private static LogConnection openToWrite(Path file, BookModel model) throws LogRefused {
    return connect(
        file,
        LogConnection.Use.WRITE,
        log -> {
          // Shows at once whether another program holds the file.
          log.raw(handle -> handle.execute("BEGIN IMMEDIATE"));
          log.raw(handle -> handle.execute("ROLLBACK"));
          String mode =
              log.raw(
                  handle ->
                      handle.createQuery("PRAGMA journal_mode = WAL").mapTo(String.class).one());
          if (!mode.equals("wal")) {
            throw new LogRefused(
                LogRefused.Reason.UNREACHABLE,
                file + " lies on a file system without shared memory; use a local disk.");
          }
          log.write(handle -> LogSchema.upgrade(handle, LogCheck.version(handle)));
          VapourRows vapour = new VapourRows(model.vapour());
          log.write(handle -> SessionRows.interruptOpen(handle, vapour));
        });
  }

  /**
   * Makes a log of what was exported, where there is none or one that holds nothing: all of it or,
   * where anything is wrong, none.
   *
   * @throws RowRefused where something in it is wrong, or the log holds anything already
   * @throws LogRefused where the log is in use or cannot be made
   * @throws IOException where a file of it cannot be read
   */
  public static LogCounts takeIn(Path folder, BookModel model, LogSource source)
      throws LogRefused, IOException {
    Path file = folder.toAbsolutePath().resolve(NAME);
    List<Path> made = new ArrayList<>();
    boolean done = false;
    FolderLock lock = FolderLock.hold(folder.toAbsolutePath());
    try {
      if (Files.exists(file)) {
        checkWhole(file);
        emptied(file, model);
      }
      LogImport.pictures(file, source, made);
      create(file, handle -> LogImport.fill(handle, source, model));
      done = true;
    } catch (UncheckedIOException e) {
      throw e.getCause();
    } finally {
      if (!done) {
        for (Path picture : made) {
          Files.deleteIfExists(picture);
        }
      }
      lock.close();
    }
    try (LogReader reader = openToRead(folder)) {
      return reader.counts();
    }
  }

  /** Refuses a log that holds anything, and closes one that does not to a single file. */
  private static void emptied(Path file, BookModel model) throws LogRefused {
    try (LogConnection log = openToWrite(file, model)) {
      for (LogTable table : LogTables.ALL) {
        if (log.read(handle -> TableRows.count(handle, table.name())) > 0) {
          throw new RowRefused(
              file
                  + ": found a log with "
                  + table.name()
                  + " in it, accepted is none or an empty one");
        }
      }
    }
  }

  private static void create(Path file) throws LogRefused {
    create(file, handle -> {});
  }

  /** Makes the log beside its place and moves it there whole, so that a crash leaves no half. */
  private static void create(Path file, Consumer<Handle> filling) throws LogRefused {
    Path wal = file.resolveSibling(NAME + "-wal");
    Path beside = file.resolveSibling(NAME + ".new");
    try {
      if (Files.exists(wal) && Files.size(wal) > 0) {
        // SQLite would pour it into the new file.
        throw new LogRefused(
            LogRefused.Reason.DAMAGED,
            file + " is missing and " + wal + ", which belongs to it, is there: put it back.");
      }
      Files.deleteIfExists(wal);
      Files.deleteIfExists(beside);
      Files.deleteIfExists(beside.resolveSibling(beside.getFileName() + "-journal"));
      connect(
              beside,
              LogConnection.Use.CREATE,
              log ->
                  log.write(
                      handle -> {
                        LogSchema.upgrade(handle, 0);
                        filling.accept(handle);
                        return true;
                      }))
          .close();
      Files.move(beside, file, StandardCopyOption.ATOMIC_MOVE);
    } catch (IOException e) {
      throw new LogRefused(
          LogRefused.Reason.UNREACHABLE, file + " cannot be made: " + e.getMessage() + ".");
    }
  }

  /** A first use of a connection that may find the file wanting. */
  private interface FirstUse {
    void of(LogConnection log) throws LogRefused;
  }

  private static LogConnection connect(Path file, LogConnection.Use use, FirstUse first)
      throws LogRefused {
    try {
      LogConnection log = new LogConnection(file, use);
      boolean kept = false;
      try {
        first.of(log);
        kept = true;
        return log;
      } finally {
        if (!kept) {
          log.close();
        }
      }
    } catch (SQLException | JdbiException | LogFailed e) {
      throw SqliteTrouble.refusal(file.toString(), e);
    }
  }
}
