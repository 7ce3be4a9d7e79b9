package trayward.host.report;

import java.io.IOException;
import java.io.PushbackReader;
import java.io.Reader;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Reads CSV as RFC 4180 has it, row by row. An empty field without quotes says nothing; one in
 * quotes is a text without characters. One thread.
 */
final class CsvReader {

  /** Longest field, characters: far more than any the log keeps. */
  private static final int FIELD_MAX = 100_000;

  private static final int COLUMNS_MAX = 100;

  private final PushbackReader in;
  private int stopped = '\n';

  CsvReader(Reader in) {
    this.in = new PushbackReader(in);
  }

  /** The next row; empty at the end. */
  Optional<List<Optional<String>>> row() throws IOException {
    int first = in.read();
    if (first < 0) {
      return Optional.empty();
    }
    in.unread(first);
    List<Optional<String>> fields = new ArrayList<>();
    do {
      fields.add(field());
      if (fields.size() > COLUMNS_MAX) {
        throw new IOException("a row of more than " + COLUMNS_MAX + " fields");
      }
    } while (stopped == ',');
    return Optional.of(fields);
  }

  private Optional<String> field() throws IOException {
    StringBuilder out = new StringBuilder();
    int c = in.read();
    boolean quoted = c == '"';
    if (quoted) {
      quoted(out);
      c = in.read();
    }
    while (c >= 0 && c != ',' && c != '\n') {
      if (c != '\r') {
        add(out, c);
      }
      c = in.read();
    }
    stopped = c;
    return quoted || !out.isEmpty() ? Optional.of(out.toString()) : Optional.empty();
  }

  private void quoted(StringBuilder out) throws IOException {
    int c = in.read();
    while (true) {
      if (c < 0) {
        throw new IOException("a quote that is never closed");
      }
      if (c == '"') {
        int next = in.read();
        if (next != '"') {
          if (next >= 0) {
            in.unread(next);
          }
          return;
        }
      }
      add(out, c);
      c = in.read();
    }
  }

  private static void add(StringBuilder out, int c) throws IOException {
    if (out.length() >= FIELD_MAX) {
      throw new IOException("a field of more than " + FIELD_MAX + " characters");
    }
    out.append((char) c);
  }
}
