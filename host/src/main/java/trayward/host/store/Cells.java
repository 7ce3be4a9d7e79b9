package trayward.host.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.jdbi.v3.core.statement.SqlStatement;

/** Between values with their units and the whole numbers the log keeps. */
final class Cells {

  /**
   * Latest session time kept, seconds: 31 days. No sitting lasts as long, so a later one is a fault
   * somewhere else, and the numbers stay small on the disk.
   */
  static final double SESSION_MAX_S = 31 * 86_400.0;

  /**
   * Temperatures are kept from -327.67 to 327.67 °C: what 16 bits hold in hundredths, beyond any
   * probe.
   */
  static final long CENTI_MAX = 32_767;

  private Cells() {}

  /** Whole milliseconds, nearest; NaN gives 0 and what lies outside 0 to 31 days the nearer end. */
  static long ms(double seconds) {
    return Math.round(Math.max(0, Math.min(SESSION_MAX_S, seconds)) * 1000);
  }

  /** Seconds of whole milliseconds. */
  static double seconds(long ms) {
    return ms / 1000.0;
  }

  /** Whole hundredths of a degree, nearest; empty for what is not finite. */
  static OptionalLong centi(double celsius) {
    return Double.isFinite(celsius)
        ? OptionalLong.of(Math.max(-CENTI_MAX, Math.min(CENTI_MAX, Math.round(celsius * 100))))
        : OptionalLong.empty();
  }

  /** Whole hundredths of a degree; empty for none. */
  static OptionalLong centi(OptionalDouble celsius) {
    return centi(celsius.orElse(Double.NaN));
  }

  /** At most {@code max} characters of a text that may come from anywhere. */
  static String cut(String text, int max) {
    return text.length() <= max ? text : text.substring(0, max);
  }

  /** How many rows to give for a limit asked for: 0 to {@code max}. */
  static int limit(int asked, int max) {
    return Math.max(0, Math.min(max, asked));
  }

  /** Binds a number or NULL, both as one type: a batch takes every row as it took its first. */
  static <S extends SqlStatement<S>> S bind(S statement, String name, OptionalLong value) {
    Long bound = value.isPresent() ? value.getAsLong() : null;
    return statement.bindByType(name, bound, Long.class);
  }

  /** A number or NULL. */
  static OptionalLong whole(ResultSet row, String column) throws SQLException {
    long value = row.getLong(column);
    return row.wasNull() ? OptionalLong.empty() : OptionalLong.of(value);
  }

  /** Seconds of a column of milliseconds, or NULL. */
  static OptionalDouble secondsOf(ResultSet row, String column) throws SQLException {
    OptionalLong ms = whole(row, column);
    return ms.isPresent() ? OptionalDouble.of(seconds(ms.getAsLong())) : OptionalDouble.empty();
  }

  /** Degrees Celsius of a column of hundredths, or NULL. */
  static OptionalDouble celsius(ResultSet row, String column) throws SQLException {
    OptionalLong centi = whole(row, column);
    return centi.isPresent()
        ? OptionalDouble.of(centi.getAsLong() / 100.0)
        : OptionalDouble.empty();
  }

  /** Wall-clock time of a column that is never NULL. */
  static Instant wall(ResultSet row, String column) throws SQLException {
    return Instant.ofEpochMilli(row.getLong(column));
  }

  /** Wall-clock time, or NULL. */
  static Optional<Instant> wallIfAny(ResultSet row, String column) throws SQLException {
    OptionalLong ms = whole(row, column);
    return ms.isPresent() ? Optional.of(Instant.ofEpochMilli(ms.getAsLong())) : Optional.empty();
  }
}
