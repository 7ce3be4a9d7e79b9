package trayward.host.bath;

import java.time.Instant;
import java.util.Optional;

/**
 * A bath as it was made up. Immutable.
 *
 * @param id id in the log, counts from 1
 * @param madeWall wall-clock time it was made
 * @param name what the person calls it, 1 to {@value #NAME_MAX} characters
 * @param litres volume of which nothing is told but that it was there at the beginning, 0 to
 *     {@value #LITRES_MAX} L; what was poured in by name stands in the book
 * @param note free text such as stock and dilution, at most {@value #NOTE_MAX} characters
 */
public record Bath(long id, Instant madeWall, String name, double litres, String note) {

  /** Longest name: one line of a page or card. */
  public static final int NAME_MAX = 80;

  /** Most litres: the largest trays hold some 15 L; more is a slip of the decimal point. */
  public static final int LITRES_MAX = 20;

  /** Longest note: a recipe with its steps. */
  public static final int NOTE_MAX = 2000;

  /** Refuses what {@link #check} would have found. */
  public Bath {
    Entries.insist(problem(name, litres, note));
  }

  /** A bath, or the first thing wrong with it. Parameters as of the record. */
  public static Checked<Bath> check(
      long id, Instant madeWall, String name, double litres, String note) {
    Optional<Problem> problem = problem(name, litres, note);
    return problem.isPresent()
        ? new Checked.Bad<>(problem.get())
        : new Checked.Good<>(new Bath(id, madeWall, name, litres, note));
  }

  private static Optional<Problem> problem(String name, double litres, String note) {
    return Entries.name("name", name, NAME_MAX)
        .or(() -> Entries.volumeOrNone("litres", litres, LITRES_MAX, "L"))
        .or(() -> Entries.freeText("note", note, NOTE_MAX));
  }
}
