package trayward.host.session;

import java.util.Locale;
import java.util.Optional;

/** Which mark may follow which. Pure: no clock, no store. */
public final class MarkRule {

  /**
   * Two marks of one kind this close are one, seconds: a foot that bounces, a double tap with wet
   * hands, a page and a pedal pressed together. No print develops as fast.
   */
  public static final double SAME_S = 1.0;

  /** What becomes of a mark. */
  public sealed interface Outcome {}

  /** It may be made. */
  public record Accepted() implements Outcome {}

  /**
   * It is one already made.
   *
   * @param existing that one
   */
  public record Duplicate(Mark existing) implements Outcome {}

  /**
   * It may not be made.
   *
   * @param why one clause for the person
   */
  public record Refused(String why) implements Outcome {}

  private MarkRule() {}

  /**
   * Judges a mark.
   *
   * @param latest the newest print of the session, in progress or not; empty where there is none
   * @param kind the mark wanted
   * @param sessionS its time on the session's time line, seconds
   */
  public static Outcome judge(Optional<Print> latest, MarkKind kind, double sessionS) {
    Optional<Mark> same = latest.flatMap(print -> print.at(kind));
    if (same.isPresent() && Math.abs(sessionS - same.get().sessionS()) <= SAME_S) {
      return new Duplicate(same.get());
    }
    if (lastMark(latest).filter(last -> sessionS < last.sessionS()).isPresent()) {
      return new Refused("a later mark has been made already");
    }
    return kind == MarkKind.IN ? new Accepted() : judgeFollowing(latest, kind, same);
  }

  private static Outcome judgeFollowing(
      Optional<Print> latest, MarkKind kind, Optional<Mark> same) {
    if (latest.isEmpty() || !latest.get().inProgress()) {
      return new Refused(
          latest
              .filter(print -> print.pullAt().isPresent())
              .map(print -> "print " + print.number() + " has been pulled already")
              .orElse("no print is in the developer"));
    }
    if (same.isPresent()) {
      return new Refused(
          String.format(
              Locale.ROOT,
              "%s of print %d is marked already, at %.1f s",
              kind.word(),
              latest.get().number(),
              latest.get().elapsedS(kind).orElse(0)));
    }
    return new Accepted();
  }

  /**
   * The mark that makes sense next: in, then emergence, then pull, then in again.
   *
   * @param latest the newest print of the session
   */
  public static MarkKind next(Optional<Print> latest) {
    if (latest.isEmpty() || !latest.get().inProgress()) {
      return MarkKind.IN;
    }
    return latest.get().emergenceAt().isEmpty() ? MarkKind.EMERGENCE : MarkKind.PULL;
  }

  /**
   * The mark that one press of a pedal means, which knows only "next": within {@link #SAME_S} of
   * the last mark it means that mark again, so that a foot that bounces makes one mark, not two.
   *
   * @param latest the newest print of the session
   * @param sessionS time of the press on the session's time line, seconds
   */
  public static MarkKind pressed(Optional<Print> latest, double sessionS) {
    return lastMark(latest)
        .filter(last -> Math.abs(sessionS - last.sessionS()) <= SAME_S)
        .map(Mark::kind)
        .orElseGet(() -> next(latest));
  }

  private static Optional<Mark> lastMark(Optional<Print> latest) {
    return latest
        .filter(print -> !print.marks().isEmpty())
        .map(print -> print.marks().get(print.marks().size() - 1));
  }
}
