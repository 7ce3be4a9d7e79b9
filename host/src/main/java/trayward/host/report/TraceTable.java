package trayward.host.report;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;

/**
 * The columns of a trace that a controller could know: time, probes, set temperature, commands.
 * Temperatures are NaN where the field is empty. Immutable once read; the arrays are its own.
 */
public final class TraceTable {

  /** What must be there, in the order of the arrays. */
  private static final List<String> COLUMNS =
      List.of("t_s", "bath_c", "plate_c", "set_c", "heater_command", "safety_relay");

  private static final int TIME = 0;
  private static final int SET = 3;
  private static final int HEATER = 4;
  private static final int SAFETY = 5;

  /** A day of rows: a warm-up is found in it, or was not recorded. The rest is not read. */
  private static final int MAX_ROWS = 864_000;

  /** A line longer than this is no row of ours, characters. */
  private static final int MAX_LINE = 4096;

  /** No probe of ours reads beyond this, °C, nor any time of a trace beyond a year, s. */
  private static final double MOST = 4e7;

  private final double[][] columns;
  private final int rows;

  private TraceTable(double[][] columns, int rows) {
    this.columns = columns;
    this.rows = rows;
  }

  /** Reads it. */
  public static TraceTable read(Path file) throws TraceRefused {
    try (BufferedReader in = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
      return read(file.toString(), in);
    } catch (CharacterCodingException e) {
      throw new TraceRefused(file.toString(), "bytes", "no UTF-8 text", "a trace.csv");
    } catch (NoSuchFileException e) {
      throw new TraceRefused(file.toString(), "file", "nothing", "a trace.csv that is there");
    } catch (IOException e) {
      throw new TraceRefused(file.toString(), "file", "nothing readable", "a trace.csv");
    }
  }

  private static TraceTable read(String file, BufferedReader in) throws IOException, TraceRefused {
    String head = in.readLine();
    int[] at = places(file, head == null ? "" : head);
    double[][] columns = new double[COLUMNS.size()][1024];
    int rows = 0;
    for (String line = in.readLine(); line != null && rows < MAX_ROWS; line = in.readLine()) {
      if (rows == columns[0].length) {
        for (int c = 0; c < columns.length; c++) {
          columns[c] = Arrays.copyOf(columns[c], 2 * rows);
        }
      }
      row(file, line, rows, at, columns);
      rows++;
    }
    if (rows < 2) {
      throw new TraceRefused(file, "rows", Integer.toString(rows), "a row for each scan");
    }
    return new TraceTable(columns, rows);
  }

  private static int[] places(String file, String head) throws TraceRefused {
    List<String> names = List.of(head.split(",", -1));
    int[] at = new int[COLUMNS.size()];
    for (int c = 0; c < at.length; c++) {
      at[c] = names.indexOf(COLUMNS.get(c));
      if (at[c] < 0) {
        String found = head.isBlank() ? "nothing" : "no column " + COLUMNS.get(c);
        throw new TraceRefused(
            file, "line 1", found, "a header with " + String.join(", ", COLUMNS));
      }
    }
    return at;
  }

  private static void row(String file, String line, int row, int[] at, double[][] columns)
      throws TraceRefused {
    String where = "line " + (row + 2);
    String[] fields = line.length() > MAX_LINE ? new String[0] : line.split(",", -1);
    for (int c = 0; c < at.length; c++) {
      if (at[c] >= fields.length) {
        throw new TraceRefused(file, where, fields.length + " fields", "as many as the header has");
      }
      boolean mayBeEmpty = c != TIME && c != SET && c != HEATER && c != SAFETY;
      double value = number(fields[at[c]], mayBeEmpty);
      boolean flag = c == HEATER || c == SAFETY;
      boolean wrong = flag ? value != 0 && value != 1 : Math.abs(value) > MOST;
      if (wrong) {
        String accepted = flag ? "0 or 1" : mayBeEmpty ? "a number or nothing" : "a number";
        String found = "'" + fields[at[c]].substring(0, Math.min(20, fields[at[c]].length())) + "'";
        throw new TraceRefused(file, where + ", " + COLUMNS.get(c), found, accepted);
      }
      columns[c][row] = value;
    }
    if (row > 0 && !(columns[TIME][row] > columns[TIME][row - 1])) {
      throw new TraceRefused(
          file, where + ", t_s", fields[at[TIME]], "a time later than the row before");
    }
  }

  /** Infinite where it is none. */
  private static double number(String field, boolean mayBeEmpty) {
    if (field.isEmpty() && mayBeEmpty) {
      return Double.NaN;
    }
    try {
      double value = Double.parseDouble(field);
      return Double.isNaN(value) ? Double.POSITIVE_INFINITY : value;
    } catch (NumberFormatException e) {
      return Double.POSITIVE_INFINITY;
    }
  }

  /** Number of rows. */
  public int rows() {
    return rows;
  }

  /** Time, s. */
  public double timeS(int row) {
    return columns[TIME][row];
  }

  /** Bath as read, °C. */
  public double bathC(int row) {
    return columns[1][row];
  }

  /** Plate as read, °C. */
  public double plateC(int row) {
    return columns[2][row];
  }

  /** Set temperature, °C. */
  public double setC(int row) {
    return columns[SET][row];
  }

  /** Whether heat was commanded: both relays. */
  public boolean heat(int row) {
    return columns[HEATER][row] == 1 && columns[SAFETY][row] == 1;
  }
}
