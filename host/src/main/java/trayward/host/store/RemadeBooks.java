package trayward.host.store;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
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
 * What every book amounts to, worked out from its lines alone. A part carried over depends on lines
 * before it only, so in order of time each is known when it is needed.
 *
 * @param carried what each part carried over was, by the id of its line
 * @param prints what the bath was when each print went in, by its number
 * @param findings books that do not balance
 */
record RemadeBooks(
    Map<Long, BathContents> carried, Map<Long, BathContents> prints, List<LogFinding> findings) {

  /** Works them out. */
  static RemadeBooks of(Handle handle, PrintUse use) {
    RemadeBooks made = new RemadeBooks(new HashMap<>(), new HashMap<>(), new ArrayList<>());
    Balance balance =
        new Balance(
            new Bottles(ShelfRows.solutions(handle)),
            use,
            print -> BookKeeper.area(handle, print),
            id -> made.carried.getOrDefault(id, BathContents.empty(0)));
    Map<Long, Bath> baths = new HashMap<>();
    BathRows.all(handle).forEach(bath -> baths.put(bath.id(), bath));
    for (BookEntry part : BookRows.carried(handle)) {
      Bath from = baths.get(part.other().orElse(0));
      if (from != null) {
        List<BookEntry> before =
            BookRows.of(handle, from.id()).stream().filter(e -> earlier(e, part)).toList();
        if (balance.lines(from, before) instanceof Checked.Good<List<Balance.Line>> good) {
          made.carried.put(part.id(), Balance.last(from, good.value()));
        }
      }
    }
    BathRows.all(handle).forEach(bath -> made.book(handle, balance, bath));
    return made;
  }

  private static boolean earlier(BookEntry e, BookEntry than) {
    int order = e.wall().compareTo(than.wall());
    return order < 0 || (order == 0 && e.id() < than.id());
  }

  private void book(Handle handle, Balance balance, Bath bath) {
    Checked<List<Balance.Line>> lines = balance.lines(bath, BookRows.of(handle, bath.id()));
    if (lines instanceof Checked.Bad<List<Balance.Line>> bad) {
      findings.add(new LogFinding("baths", Long.toString(bath.id()), bad.problem()));
    }
    if (lines instanceof Checked.Good<List<Balance.Line>> good) {
      BathContents before = Balance.beginning(bath);
      for (Balance.Line line : good.value()) {
        if (line.entry().kind() == EntryKind.PRINTED) {
          prints.put(line.entry().other().orElse(0), before);
        }
        before = line.after();
      }
    }
  }
}
