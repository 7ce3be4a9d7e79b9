package trayward.host.bath;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * One line of the bath book. Immutable.
 *
 * @param id id in the log, counts from 1
 * @param bathId bath it is of
 * @param wall wall-clock time, for the record and the order of lines
 * @param sessionS seconds on the session's monotonic time line, 0 or more; NaN where no session was
 *     open
 * @param kind what it tells of
 * @param what what it was, up to {@value #WHAT_MAX} characters; 1 or more where poured in
 * @param dilution at what dilution it was poured in, such as 1+9; empty for as it is
 * @param millilitres how much, 0 to {@value #LEVEL_MAX} mL
 * @param other the bath it came from or went to, the number of the print; empty otherwise
 * @param celsius temperature of what was poured in, °C; empty where not told
 * @param doubtMl standard uncertainty of a level read or of a vapour, mL
 * @param hotS how long the bath was hot, seconds, of a line that tells of vapour
 */
public record BookEntry(
    long id,
    long bathId,
    Instant wall,
    double sessionS,
    EntryKind kind,
    String what,
    String dilution,
    double millilitres,
    OptionalLong other,
    OptionalDouble celsius,
    double doubtMl,
    double hotS) {

  /** Longest description: one line of a page or card. */
  public static final int WHAT_MAX = 80;

  /** Most poured at once, mL: a full large jug; more than that is a new bath. */
  public static final int MILLILITRES_MAX = 5000;

  /** Most a tray holds, mL. */
  public static final int LEVEL_MAX = 1000 * Bath.LITRES_MAX;

  /** Temperatures of what is poured: from ice to boiling, °C. */
  private static final double CELSIUS_MAX = 100;

  /** A level is read on the tray's own marks to some 3 %: common practice. */
  private static final double LEVEL_SHARE = 0.03;

  /** Refuses what {@link #problem} would have found. */
  public BookEntry {
    Entries.insist(problem(kind, sessionS, what, dilution, millilitres, celsius));
  }

  /** Something of a name poured into a bath; the rest empty. */
  public static BookEntry poured(
      long id, long bathId, Instant wall, double sessionS, String what, double millilitres) {
    return new BookEntry(
        id,
        bathId,
        wall,
        sessionS,
        EntryKind.POURED,
        what,
        "",
        millilitres,
        OptionalLong.empty(),
        OptionalDouble.empty(),
        0,
        0);
  }

  /** The same in another kind, with another bath or a print. */
  public BookEntry as(EntryKind other, OptionalLong whose) {
    double doubt = other == EntryKind.LEVEL_READ ? millilitres * LEVEL_SHARE : doubtMl;
    return new BookEntry(
        id,
        bathId,
        wall,
        sessionS,
        other,
        what,
        dilution,
        millilitres,
        whose,
        celsius,
        doubt,
        hotS);
  }

  /** The same with a dilution and a temperature. */
  public BookEntry with(String atDilution, OptionalDouble atC) {
    return new BookEntry(
        id, bathId, wall, sessionS, kind, what, atDilution, millilitres, other, atC, doubtMl, hotS);
  }

  /** The same line in the book of a bath, at a moment. */
  public BookEntry in(long bath, Instant at, double atS) {
    return new BookEntry(
        id, bath, at, atS, kind, what, dilution, millilitres, other, celsius, doubtMl, hotS);
  }

  /** The same of something else. */
  public BookEntry of(String something) {
    return new BookEntry(
        id,
        bathId,
        wall,
        sessionS,
        kind,
        something,
        dilution,
        millilitres,
        other,
        celsius,
        doubtMl,
        hotS);
  }

  /** The same of another volume, mL. */
  public BookEntry holding(double ml) {
    return new BookEntry(
        id, bathId, wall, sessionS, kind, what, dilution, ml, other, celsius, doubtMl, hotS);
  }

  /** A bath that stood for a while: so much vapour, with its doubt, so long hot. */
  public static BookEntry stood(
      long bathId, Instant wall, double sessionS, Amount vapourMl, double hotS) {
    return new BookEntry(
        0,
        bathId,
        wall,
        sessionS,
        EntryKind.EVAPORATED,
        "",
        "",
        vapourMl.value(),
        OptionalLong.empty(),
        OptionalDouble.empty(),
        vapourMl.standard(),
        hotS);
  }

  /** A sheet of this print went in. */
  public static BookEntry printed(long bathId, Instant wall, double sessionS, long print) {
    return new BookEntry(
        0,
        bathId,
        wall,
        sessionS,
        EntryKind.PRINTED,
        "",
        "",
        0,
        OptionalLong.of(print),
        OptionalDouble.empty(),
        0,
        0);
  }

  /** The first thing wrong with what a person entered; parameters as of the record. */
  public static Optional<Problem> problem(
      EntryKind kind,
      double sessionS,
      String what,
      String dilution,
      double millilitres,
      OptionalDouble celsius) {
    Optional<Problem> text =
        kind == EntryKind.POURED
            ? Entries.name("what", what, WHAT_MAX)
            : Entries.freeText("what", what, WHAT_MAX);
    return text.or(() -> volume(kind, millilitres))
        .or(() -> time(sessionS))
        .or(() -> warmth(celsius))
        .or(() -> diluted(dilution));
  }

  private static Optional<Problem> volume(EntryKind kind, double ml) {
    return switch (kind) {
      case POURED, CARRIED_OVER, TAKEN_OVER ->
          Entries.volume("millilitres", ml, MILLILITRES_MAX, "mL");
      case POURED_AWAY, LEVEL_READ -> Entries.volume("millilitres", ml, LEVEL_MAX, "mL");
      case EVAPORATED, PRINTED -> Entries.volumeOrNone("millilitres", ml, LEVEL_MAX, "mL");
    };
  }

  private static Optional<Problem> time(double sessionS) {
    return Double.isNaN(sessionS) || (Double.isFinite(sessionS) && sessionS >= 0)
        ? Optional.empty()
        : Optional.of(
            new Problem("session_s", Double.toString(sessionS), "0 or more, or no number"));
  }

  private static Optional<Problem> warmth(OptionalDouble celsius) {
    double c = celsius.orElse(0);
    return c >= 0 && c <= CELSIUS_MAX
        ? Optional.empty()
        : Optional.of(new Problem("celsius", Double.toString(c), "0 to 100 °C"));
  }

  private static Optional<Problem> diluted(String dilution) {
    return dilution.isEmpty() || !(Dilution.read("dilution", dilution) instanceof Checked.Bad<?> b)
        ? Optional.empty()
        : Optional.of(b.problem());
  }
}
