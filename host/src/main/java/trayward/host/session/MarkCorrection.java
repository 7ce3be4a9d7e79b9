package trayward.host.session;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Where a mark may be put afterwards. Pure: no clock, no store. */
public final class MarkCorrection {

  /** Longest time between in and another mark, seconds: 6 h, longer than any print develops. */
  public static final double ELAPSED_MAX_S = 21_600;

  private MarkCorrection() {}

  /**
   * What stands around the mark.
   *
   * @param print the print
   * @param before the print before it in the session
   * @param next the print after it in the session
   * @param untilS the latest moment of the session there can be a mark at: now, or its end; seconds
   * @param open whether the session is still open
   */
  public record Around(
      Print print, Optional<Print> before, Optional<Print> next, double untilS, boolean open) {}

  /**
   * Why a mark may not be put there, as one clause for the person; empty where it may.
   *
   * @param kind which mark
   * @param atS where, on the session's time line, seconds
   */
  public static Optional<String> refusal(Around around, MarkKind kind, double atS) {
    return first(
        List.of(
            later(around, atS),
            kind == MarkKind.IN ? beforeIts(around, atS) : Optional.empty(),
            order(around.print(), kind, atS)));
  }

  private static Optional<String> first(List<Optional<String>> reasons) {
    return reasons.stream().flatMap(Optional::stream).findFirst();
  }

  private static Optional<String> later(Around around, double atS) {
    Optional<Print> next = around.next();
    if (next.flatMap(Print::inAt).filter(in -> atS > in.sessionS()).isPresent()) {
      return Optional.of("print " + next.get().number() + " had gone in by then");
    }
    if (atS > around.untilS()) {
      return Optional.of(
          around.open() ? "that moment has not come yet" : "the session had ended by then");
    }
    return Optional.empty();
  }

  private static Optional<String> beforeIts(Around around, double atS) {
    if (atS < 0) {
      return Optional.of("the session had not begun by then");
    }
    return around
        .before()
        .filter(b -> b.marks().stream().anyMatch(m -> atS < m.sessionS()))
        .map(b -> "print " + b.number() + " was still in the developer then");
  }

  private static Optional<String> order(Print print, MarkKind kind, double atS) {
    for (Mark mark : print.marks()) {
      int way = mark.kind().compareTo(kind);
      if ((way < 0 && atS < mark.sessionS()) || (way > 0 && atS > mark.sessionS())) {
        return Optional.of(
            String.format(
                Locale.ROOT,
                "%s comes %s %s, which stands at %.1f s",
                kind.word(),
                way < 0 ? "after" : "before",
                mark.kind().word(),
                print.elapsedS(mark.kind()).orElse(0)));
      }
    }
    return Optional.empty();
  }
}
