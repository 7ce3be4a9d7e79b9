package trayward.host.report.card;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.LongFunction;
import java.util.stream.Collectors;
import trayward.host.bath.BathContents;
import trayward.host.bath.BookEntry;
import trayward.host.session.PrintBath;
import trayward.host.store.BookArchive;

/** Baths and lines of their books in words. Stateless. */
final class BathWords {

  private BathWords() {}

  /** What a bath was made with, poured in the moment it was made. */
  static String made(BookArchive.Pages pages) {
    String parts =
        pages.entries().stream()
            .filter(e -> e.wall().equals(pages.bath().madeWall()) && e.kind().entered())
            .map(BathWords::line)
            .collect(Collectors.joining(", "));
    String before =
        pages.bath().litres() > 0
            ? String.format(Locale.ROOT, "%.2f L of which nothing is told", pages.bath().litres())
            : "";
    return before + (before.isEmpty() || parts.isEmpty() ? "" : ", ") + parts;
  }

  /** A bath as it stood when it had been made. */
  static String contents(BathContents c) {
    return String.format(
        Locale.ROOT,
        "%.2f ± %.2f L, strength %.3f, bromide %.2f ± %.2f g/L, sulfite %.1f ± %.1f g/L",
        c.litres().value(),
        c.litres().expanded(),
        c.strength().value(),
        c.bromideGPerL().value(),
        c.bromideGPerL().expanded(),
        c.sulfiteGPerL().value(),
        c.sulfiteGPerL().expanded());
  }

  /** A bath as it was when a sheet went in. */
  static String asItWas(PrintBath b) {
    return String.format(
        Locale.ROOT,
        "%.2f L, strength %.3f, bromide %.2f ± %.2f g/L, sulfite %.1f ± %.1f g/L;"
            + " %.2f m² a litre developed before, %.1f h hot",
        b.litres(),
        b.strength(),
        b.bromideGPerL(),
        2 * b.bromideDoubtGPerL(),
        b.sulfiteGPerL(),
        2 * b.sulfiteDoubtGPerL(),
        b.areaM2PerL(),
        b.hotS() / 3600);
  }

  /** Which baths go on in it, the greatest share first; empty where it is all its own. */
  static String lineage(BathContents c, LongFunction<Optional<String>> names) {
    return c.shares().entrySet().stream()
        .filter(share -> share.getKey() != c.bathId())
        .sorted(Map.Entry.<Long, Double>comparingByValue().reversed())
        .map(
            share ->
                String.format(
                    Locale.ROOT,
                    "%.0f %% of bath %d%s",
                    100 * share.getValue(),
                    share.getKey(),
                    names.apply(share.getKey()).map(n -> " (" + n + ")").orElse("")))
        .collect(Collectors.joining(", "));
  }

  /** A line of a book. */
  static String line(BookEntry e) {
    String ml = String.format(Locale.ROOT, "%.0f mL", e.millilitres());
    return switch (e.kind()) {
      case POURED -> e.what() + (e.dilution().isEmpty() ? " " : " " + e.dilution() + " ") + ml;
      case CARRIED_OVER -> ml + " of bath " + e.other().orElse(0);
      case TAKEN_OVER -> ml + " went into bath " + e.other().orElse(0);
      case POURED_AWAY -> ml + " poured away";
      case LEVEL_READ -> "level read: " + ml;
      case EVAPORATED ->
          String.format(
              Locale.ROOT,
              "vapour: %s ± %.0f mL, %.2f h hot",
              ml,
              2 * e.doubtMl(),
              e.hotS() / 3600);
      case PRINTED -> "print " + e.other().orElse(0) + " went in";
    };
  }
}
