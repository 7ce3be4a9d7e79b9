package trayward.host.forecast;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What may be changed for the next print, after what the last one was. The one table. All of it is
 * common practice of the trade, from memory: directions, not promises; only how a change moves the
 * time to emergence can be told from a person's own prints.
 */
public enum Advice {
  /** Contrast too high: empty lights, blacks that jump. */
  TOO_HARD("too-hard"),
  /** Contrast too low: grey blacks, veiled lights. */
  TOO_FLAT("too-flat"),
  /** The tone is neutral where colour was wanted. */
  NO_COLOUR("no-colour"),
  /** Blacks stay weak. */
  BLACKS_WEAK("blacks-weak"),
  /** Coarse, peppered tones. */
  GRITTY("gritty");

  private final String word;

  Advice(String word) {
    this.word = word;
  }

  /** The word for it in JSON. */
  public String word() {
    return word;
  }

  /** The verdict of exactly this word; empty where there is none. */
  public static Optional<Advice> of(String word) {
    return Arrays.stream(values()).filter(a -> a.word.equals(word)).findFirst();
  }

  /**
   * One thing that may be changed. Immutable.
   *
   * @param what what to change
   * @param how in which direction, and by how little at first
   * @param sideEffect what else it does
   * @param term the term of the forecast that it moves; empty where none does
   * @param step by how much the term moves, in the term's own measure
   */
  public record Option(
      String what, String how, String sideEffect, Optional<Term> term, double step) {}

  private static final Option MORE_EXPOSURE =
      new Option(
          "exposure",
          "half a stop to a stop more, and pull earlier",
          "emergence comes sooner, and the seconds to pull in are fewer",
          Optional.of(Term.STOPS),
          0.5);
  private static final Option LESS_EXPOSURE =
      new Option(
          "exposure",
          "half a stop less, and let the blacks run further",
          "the wait is longer, and lights may stay empty",
          Optional.of(Term.STOPS),
          -0.5);
  private static final Option MORE_SULFITE =
      new Option(
          "sulfite",
          "a little more: 10 mL of 10 % in a litre",
          "calms the run of the blacks; too much takes the colour and ends it altogether",
          Optional.empty(),
          0);
  private static final Option MORE_BROMIDE =
      new Option(
          "bromide",
          "a little more: 2 mL of 10 % in a litre",
          "the wait is longer, lights stay cleaner",
          Optional.of(Term.BROMIDE),
          0.2);
  private static final Option THINNER =
      new Option(
          "dilution",
          "thinner by a third",
          "the wait is longer, and the bath is used up by fewer prints",
          Optional.of(Term.STRENGTH),
          -0.405);
  private static final Option STRONGER =
      new Option(
          "dilution",
          "stronger by a third, or fresh developer added",
          "the wait is shorter, tones are colder",
          Optional.of(Term.STRENGTH),
          0.288);
  private static final Option HOTTER =
      new Option(
          "temperature",
          "2 K hotter",
          "the wait and the seconds to pull in are shorter; more vapour",
          Optional.of(Term.TEMPERATURE),
          2);
  private static final Option COOLER =
      new Option(
          "temperature",
          "2 K cooler",
          "the wait is longer, and the pull is easier to hit",
          Optional.of(Term.TEMPERATURE),
          -2);
  private static final Option RIPER =
      new Option(
          "ripening",
          "two or three sheets more through it first, or a third of it kept from an old bath",
          "the wait is longer, and from print to print it grows",
          Optional.of(Term.EXHAUSTION),
          0.1);

  /** What may be changed, what is tried first in front. */
  public List<Option> options() {
    return switch (this) {
      case TOO_HARD -> List.of(MORE_EXPOSURE, MORE_SULFITE, COOLER);
      case TOO_FLAT -> List.of(LESS_EXPOSURE, MORE_BROMIDE, STRONGER);
      case NO_COLOUR -> List.of(THINNER, RIPER, MORE_EXPOSURE, MORE_BROMIDE);
      case BLACKS_WEAK -> List.of(LESS_EXPOSURE, STRONGER, HOTTER);
      case GRITTY -> List.of(MORE_SULFITE, RIPER, COOLER);
    };
  }

  /**
   * What a change does to the time to emergence by a person's own prints, in a clause; empty where
   * it moves no term or no print was learned from.
   *
   * @param bathC the bath now, °C, of which a change of temperature is reckoned
   */
  public static Optional<String> ownPrints(Option option, Forecaster forecaster, double bathC) {
    if (option.term().isEmpty() || forecaster.prints().isEmpty()) {
      return Optional.empty();
    }
    Term term = option.term().get();
    double step =
        term == Term.TEMPERATURE
            ? Arrhenius.entry(bathC + option.step()) - Arrhenius.entry(bathC)
            : option.step();
    return forecaster.emergenceCoefficients().stream()
        .filter(c -> c.term() == term && Double.isFinite(step))
        .findFirst()
        .map(c -> clause(c, step, forecaster.prints().size()));
  }

  /** A factor on the time, with the ends of a give or take of 2. */
  private static String clause(Coefficient c, double step, int prints) {
    double a = percent(step * c.value() - 2 * Math.abs(step) * c.standardError());
    double b = percent(step * c.value() + 2 * Math.abs(step) * c.standardError());
    return String.format(
        Locale.ROOT,
        "emergence by %+.0f %% (%+.0f to %+.0f %%), from %d %s",
        percent(step * c.value()),
        Math.min(a, b),
        Math.max(a, b),
        prints,
        prints == 1 ? "print" : "prints");
  }

  private static double percent(double log) {
    return 100 * Math.expm1(log);
  }
}
