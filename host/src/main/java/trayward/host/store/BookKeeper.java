package trayward.host.store;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.OptionalDouble;
import org.jdbi.v3.core.Handle;
import trayward.host.bath.Balance;
import trayward.host.bath.Bath;
import trayward.host.bath.BathContents;
import trayward.host.bath.BookEntry;
import trayward.host.bath.Bottles;
import trayward.host.bath.Checked;
import trayward.host.bath.EntryKind;
import trayward.host.bath.PrintUse;

/**
 * Balances books in a transaction, and keeps what is worked out of them beside each print and each
 * carried-over part. Stateless.
 */
record BookKeeper(PrintUse use) {

  private static final ObjectMapper JSON = new ObjectMapper();

  /** Most baths that one correction may change: those made of it, and of these, for ten years. */
  private static final int BATHS_MAX = 10_000;

  /** Every line of a bath's book with what it left. */
  Checked<List<Balance.Line>> lines(Handle handle, Bath bath) {
    return balance(handle).lines(bath, BookRows.of(handle, bath.id()));
  }

  /**
   * Works out anew what depends on a bath's book: its prints, and the baths made of it.
   *
   * @throws BookRejected where one of the books no longer balances
   */
  void refresh(Handle handle, long bathId) {
    Deque<Long> waiting = new ArrayDeque<>(List.of(bathId));
    for (int i = 0; i < BATHS_MAX && !waiting.isEmpty(); i++) {
      Bath bath = BathRows.byId(handle, waiting.removeFirst()).orElseThrow();
      List<Balance.Line> lines = BookRejected.insist(lines(handle, bath));
      BathContents before = Balance.beginning(bath);
      for (Balance.Line line : lines) {
        if (line.entry().kind() == EntryKind.PRINTED) {
          PrintBathRows.keep(handle, line.entry().other().orElseThrow(), before);
        }
        before = line.after();
      }
      for (BookEntry carried : BookRows.carriedFrom(handle, bath.id())) {
        if (keep(handle, carried.id(), before(bath, lines, carried))) {
          waiting.addLast(carried.bathId());
        }
      }
    }
  }

  /** Keeps what a part was that is carried over now. */
  void keepCarried(Handle handle, BookEntry carried) {
    Bath from = BathRows.byId(handle, carried.other().orElseThrow()).orElseThrow();
    keep(handle, carried.id(), before(from, BookRejected.insist(lines(handle, from)), carried));
  }

  /** What a bath held just before a line of another book. */
  private static BathContents before(Bath bath, List<Balance.Line> lines, BookEntry moment) {
    BathContents now = Balance.beginning(bath);
    for (Balance.Line line : lines) {
      int order = line.entry().wall().compareTo(moment.wall());
      if (order > 0 || (order == 0 && line.entry().id() > moment.id())) {
        break;
      }
      now = line.after();
    }
    return now;
  }

  /** Keeps what a part carried over was; gives whether that is another than before. */
  static boolean keep(Handle handle, long id, BathContents contents) {
    return handle
            .createUpdate(
                """
                UPDATE additions SET contents = :contents
                  WHERE id = :id AND contents IS NOT :contents
                """)
            .bind("contents", text(contents))
            .bind("id", id)
            .execute()
        == 1;
  }

  private Balance balance(Handle handle) {
    return new Balance(
        new Bottles(ShelfRows.solutions(handle)),
        use,
        print -> area(handle, print),
        entry -> carried(handle, entry));
  }

  /** Area of a print, m²; empty where its size is not told. */
  static OptionalDouble area(Handle handle, long print) {
    return handle
        .createQuery(
            """
            SELECT w.value AS w, h.value AS h FROM print_fields w JOIN print_fields h
              ON h.print = w.print AND h.field = 'height_mm'
              WHERE w.print = :print AND w.field = 'width_mm'
            """)
        .bind("print", print)
        .map((row, context) -> row.getDouble("w") * row.getDouble("h") * 1e-6)
        .findOne()
        .map(OptionalDouble::of)
        .orElse(OptionalDouble.empty());
  }

  /** What is kept of a part carried over. */
  static BathContents carried(Handle handle, long entry) {
    return handle
        .createQuery("SELECT contents FROM additions WHERE id = :id")
        .bind("id", entry)
        .mapTo(String.class)
        .findOne()
        .map(BookKeeper::contents)
        .orElseThrow();
  }

  private static String text(BathContents contents) {
    try {
      return JSON.writeValueAsString(contents);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("numbers by name can always be written", e);
    }
  }

  private static BathContents contents(String text) {
    try {
      return JSON.readValue(text, BathContents.class);
    } catch (JsonProcessingException e) {
      throw new LogFailed("the bath book holds something that cannot be read.", e);
    }
  }
}
