package trayward.host.session;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One sheet's way through the developer. Immutable.
 *
 * @param number number in the whole log, counts from 1 and is never given twice
 * @param sessionId session it was made in
 * @param startedWall wall-clock time of its first mark, for the record only
 * @param marks its marks in time order, at most {@value #MARKS_MAX}
 * @param title free text, may be empty, at most {@value #TITLE_MAX} characters
 * @param notes free text, may be empty, at most {@value #NOTES_MAX} characters
 * @param closedS session time at which it was left without a pull because another began or the
 *     session ended, seconds; empty otherwise
 */
public record Print(
    long number,
    long sessionId,
    Instant startedWall,
    List<Mark> marks,
    String title,
    String notes,
    OptionalDouble closedS) {

  /** Most marks of one print: three kinds, and ten times as many taken back and made again. */
  public static final int MARKS_MAX = 32;

  /** Longest title: more does not fit on one line of a page. */
  public static final int TITLE_MAX = 200;

  /** Longest notes: a sheet of handwriting, and a list of prints stays quick to load. */
  public static final int NOTES_MAX = 2000;

  /** Copies the marks and refuses what goes beyond the bounds or stands out of order. */
  public Print {
    marks = List.copyOf(marks);
    if (marks.size() > MARKS_MAX || title.length() > TITLE_MAX || notes.length() > NOTES_MAX) {
      throw new IllegalArgumentException("a print's marks, title and notes are bounded");
    }
    for (int i = 1; i < marks.size(); i++) {
      if (marks.get(i).sessionS() < marks.get(i - 1).sessionS()) {
        throw new IllegalArgumentException("marks stand in time order");
      }
    }
  }

  /** When the sheet went in. */
  public Optional<Mark> inAt() {
    return at(MarkKind.IN);
  }

  /** When the first blacks showed. */
  public Optional<Mark> emergenceAt() {
    return at(MarkKind.EMERGENCE);
  }

  /** When it was pulled. */
  public Optional<Mark> pullAt() {
    return at(MarkKind.PULL);
  }

  /** The mark of this kind, empty where it was not made. */
  public Optional<Mark> at(MarkKind kind) {
    return marks.stream().filter(mark -> mark.kind() == kind).findFirst();
  }

  /** Whether it was left without a pull when another print began or the session ended. */
  public boolean closed() {
    return closedS.isPresent();
  }

  /** Whether the sheet is in the developer: in, not pulled, not closed. */
  public boolean inProgress() {
    return inAt().isPresent() && pullAt().isEmpty() && !closed();
  }

  /**
   * Session time at which its development ended: the pull, or where it was left; seconds. Empty
   * while in progress.
   */
  public OptionalDouble endS() {
    Optional<Mark> pull = pullAt();
    return pull.isPresent() ? OptionalDouble.of(pull.get().sessionS()) : closedS;
  }

  /** Seconds from in to the mark of this kind, 0 or more; empty where either is missing. */
  public OptionalDouble elapsedS(MarkKind kind) {
    Optional<Mark> in = inAt();
    Optional<Mark> mark = at(kind);
    return in.isPresent() && mark.isPresent()
        ? OptionalDouble.of(mark.get().sessionS() - in.get().sessionS())
        : OptionalDouble.empty();
  }
}
