package trayward.host.store;

import java.util.Optional;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** What SQLite meant by an exception, in the words of this program. */
final class SqliteTrouble {

  /** The low byte of an extended result code is the primary one. */
  private static final int PRIMARY = 0xff;

  /** Deepest chain of causes looked through: the library below wraps twice. */
  private static final int DEPTH_MAX = 10;

  private SqliteTrouble() {}

  /** A clause saying what went wrong. */
  static String words(Throwable thrown) {
    Optional<SQLiteException> found = sqlite(thrown);
    if (found.isEmpty()) {
      return String.valueOf(thrown.getMessage());
    }
    return switch (primary(found.get())) {
      case SQLITE_FULL -> "the disk is full";
      case SQLITE_BUSY, SQLITE_LOCKED -> "another program holds it";
      case SQLITE_READONLY, SQLITE_PERM, SQLITE_AUTH -> "it may not be written";
      case SQLITE_CANTOPEN -> "it cannot be opened";
      case SQLITE_IOERR -> "the disk gave an error";
      case SQLITE_CORRUPT, SQLITE_NOTADB -> "it is damaged";
      default -> String.valueOf(found.get().getMessage());
    };
  }

  /** The refusal that this failure to open {@code name} amounts to. */
  static LogRefused refusal(String name, Throwable thrown) {
    return switch (sqlite(thrown)
        .map(SqliteTrouble::primary)
        .orElse(SQLiteErrorCode.SQLITE_ERROR)) {
      case SQLITE_BUSY, SQLITE_LOCKED ->
          new LogRefused(LogRefused.Reason.IN_USE, name + " is in use by another program.");
      case SQLITE_CORRUPT, SQLITE_NOTADB ->
          new LogRefused(
              LogRefused.Reason.DAMAGED,
              name + " is damaged or is not a log; it was left as it is.");
      default ->
          new LogRefused(
              LogRefused.Reason.UNREACHABLE, name + " cannot be opened: " + words(thrown) + ".");
    };
  }

  private static Optional<SQLiteException> sqlite(Throwable thrown) {
    Throwable cause = thrown;
    for (int i = 0; i < DEPTH_MAX && cause != null; i++) {
      if (cause instanceof SQLiteException found) {
        return Optional.of(found);
      }
      cause = cause.getCause();
    }
    return Optional.empty();
  }

  private static SQLiteErrorCode primary(SQLiteException e) {
    return SQLiteErrorCode.getErrorCode(e.getResultCode().code & PRIMARY);
  }
}
