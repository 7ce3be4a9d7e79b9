package trayward.host.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteOpenMode;

/** The one connection to the log file, and the one lock around it. Safe on any thread. */
final class LogConnection implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(LogConnection.class);

  /**
   * How long another program's lock is waited for, milliseconds: a viewer's short write passes
   * within it, and a person who marks a print does not wait longer.
   */
  private static final int BUSY_MS = 500;

  /**
   * Size the write-ahead file shrinks back to, bytes: what a thousand pages between two checkpoints
   * take.
   */
  private static final int WAL_BYTES = 4 << 20;

  /** What an open for reading, writing or creating is for. */
  enum Use {
    READ,
    WRITE,
    CREATE
  }

  private final Path file;
  private final Use use;
  private final Connection connection;
  private final Jdbi jdbi;
  private final ReentrantLock lock = new ReentrantLock();
  // Guarded by lock, both.
  private boolean closed;
  private boolean held;

  /** Opens {@code file}; only {@link Use#CREATE} ever makes one. */
  LogConnection(Path file, Use use) throws SQLException {
    this.file = file;
    this.use = use;
    SQLiteConfig config = new SQLiteConfig();
    config.setBusyTimeout(BUSY_MS);
    if (use == Use.READ) {
      config.setReadOnly(true);
    } else {
      config.enforceForeignKeys(true);
      config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
      config.setJournalSizeLimit(WAL_BYTES);
      if (use == Use.WRITE) {
        config.resetOpenMode(SQLiteOpenMode.CREATE);
      }
    }
    // As a URI, because a plain name with a question mark in it would be cut there.
    connection = config.createConnection("jdbc:sqlite:" + file.toUri());
    jdbi = Jdbi.create(connection);
  }

  /** The log file. */
  Path file() {
    return file;
  }

  /** Reads what was committed, as of one moment. */
  <R> R read(Function<Handle, R> work) {
    // A reader's statements would each see their own moment; a writer is alone with its own.
    lock.lock();
    try {
      return use == Use.READ && !held
          ? inTransaction("BEGIN", "read", work)
          : guarded("read", work);
    } finally {
      lock.unlock();
    }
  }

  /** Work of many reads on this thread, all of which see the log as of one moment. */
  void atOneMoment(Runnable reads) {
    lock.lock();
    try {
      inTransaction(
          "BEGIN",
          "read",
          handle -> {
            held = true;
            reads.run();
            return true;
          });
    } finally {
      held = false;
      lock.unlock();
    }
  }

  /** Does all of it or nothing, and returns once it is safe on the disk. */
  <R> R write(Function<Handle, R> work) {
    return inTransaction("BEGIN IMMEDIATE", "written", work);
  }

  /** Work outside a transaction, such as a pragma; what it throws stays as it is. */
  <R> R raw(Function<Handle, R> work) {
    lock.lock();
    try {
      return jdbi.withHandle(work::apply);
    } finally {
      lock.unlock();
    }
  }

  @Override
  public void close() {
    lock.lock();
    try {
      if (!closed) {
        closed = true;
        if (use == Use.WRITE) {
          gather();
        }
        connection.close();
      }
    } catch (SQLException e) {
      LOG.warn("{} did not close cleanly: {}", file, e.toString());
    } finally {
      lock.unlock();
    }
  }

  private void gather() {
    try {
      jdbi.useHandle(handle -> handle.execute("PRAGMA wal_checkpoint(TRUNCATE)"));
    } catch (JdbiException e) {
      // A reader may be in the way; the next opening gathers what is left.
      LOG.debug("{} was not gathered into one file: {}", file, e.toString());
    }
  }

  private <R> R inTransaction(String begin, String verb, Function<Handle, R> work) {
    return guarded(
        verb,
        handle -> {
          handle.execute(begin);
          boolean done = false;
          try {
            R result = work.apply(handle);
            handle.execute("COMMIT");
            done = true;
            return result;
          } finally {
            if (!done) {
              rollBack(handle);
            }
          }
        });
  }

  private <R> R guarded(String verb, Function<Handle, R> work) {
    lock.lock();
    try {
      if (closed) {
        throw new LogFailed(file + " is closed.");
      }
      return jdbi.withHandle(work::apply);
    } catch (JdbiException e) {
      throw new LogFailed(file + " could not be " + verb + ": " + SqliteTrouble.words(e) + ".", e);
    } finally {
      lock.unlock();
    }
  }

  private void rollBack(Handle handle) {
    try {
      handle.execute("ROLLBACK");
    } catch (JdbiException e) {
      // After some failures, a full disk among them, SQLite has rolled back by itself.
      LOG.debug("{} was rolled back already: {}", file, e.toString());
    }
  }
}
