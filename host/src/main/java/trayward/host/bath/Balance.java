package trayward.host.bath;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.LongFunction;

/**
 * What a bath holds after each line of its book. Pure.
 *
 * @param bottles what the names of what was poured stand for
 * @param use what printing does to it
 * @param areaM2 area of a print by its number, m²; empty where its size is not told
 * @param carried what was carried over, as it was in the bath it came from, by the line's id
 */
public record Balance(
    Bottles bottles,
    PrintUse use,
    LongFunction<OptionalDouble> areaM2,
    LongFunction<BathContents> carried) {

  /**
   * A line and what the bath holds after it.
   *
   * @param entry the line
   * @param after what the bath holds
   * @param counted whether the line changed it; a print whose size is not told does not
   */
  public record Line(BookEntry entry, BathContents after, boolean counted) {}

  /** What a bath was made with, of which nothing but the volume is told. */
  public static BathContents beginning(Bath bath) {
    BathContents empty = BathContents.empty(bath.id());
    if (bath.litres() <= 0) {
      return empty;
    }
    Amount ml = Amount.within(1000 * bath.litres(), BathChange.JUG_SHARE);
    return ((Checked.Good<BathContents>) empty.after(new BathChange.LevelRead(ml.times(1e-3))))
        .value();
  }

  /** Every line in order, or what is wrong with the first that cannot be. */
  public Checked<List<Line>> lines(Bath bath, List<BookEntry> entries) {
    List<Line> lines = new ArrayList<>(entries.size());
    BathContents now = beginning(bath);
    for (BookEntry entry : entries) {
      Checked<BathContents> next = after(now, entry);
      if (next instanceof Checked.Bad<BathContents> bad) {
        return new Checked.Bad<>(bad.problem());
      }
      BathContents after = ((Checked.Good<BathContents>) next).value();
      lines.add(new Line(entry, after, !after.equals(now)));
      now = after;
    }
    return new Checked.Good<>(List.copyOf(lines));
  }

  /** What the bath holds at the end. */
  public static BathContents last(Bath bath, List<Line> lines) {
    return lines.isEmpty() ? beginning(bath) : lines.get(lines.size() - 1).after();
  }

  private Checked<BathContents> after(BathContents now, BookEntry e) {
    double ml = e.millilitres();
    return switch (e.kind()) {
      case POURED -> poured(now, e);
      case CARRIED_OVER -> now.after(new BathChange.CarriedOver(carried.apply(e.id()), ml));
      case TAKEN_OVER, POURED_AWAY -> now.after(new BathChange.PouredAway(ml));
      case LEVEL_READ ->
          now.after(new BathChange.LevelRead(new Amount(ml, e.doubtMl()).times(1e-3)));
      case EVAPORATED ->
          now.after(new BathChange.Evaporated(new Amount(ml, e.doubtMl()), e.hotS()));
      case PRINTED -> printed(now, e);
    };
  }

  private Checked<BathContents> poured(BathContents now, BookEntry e) {
    return bottles
        .find("what", e.what(), e.dilution())
        .then(what -> now.after(new BathChange.Poured(what, e.millilitres())));
  }

  /** A sheet that carries out more than there is leaves the book as it was. */
  private Checked<BathContents> printed(BathContents now, BookEntry e) {
    OptionalDouble area = areaM2.apply(e.other().orElse(0));
    if (area.isEmpty()) {
      return new Checked.Good<>(now);
    }
    Checked<BathContents> next = now.after(new BathChange.Printed(area.getAsDouble(), use));
    return next instanceof Checked.Good<BathContents> ? next : new Checked.Good<>(now);
  }
}
