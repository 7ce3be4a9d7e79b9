package trayward.host.forecast;

import static trayward.host.forecast.Belief.Basis.COMMON_PRACTICE;
import static trayward.host.forecast.Belief.Basis.JUDGEMENT;

import java.util.List;

/**
 * What is believed before a person's own prints: the only place where these numbers stand. Pure.
 *
 * <p>They are meant to be outvoted: about five to ten prints that vary do it. A doubt is one
 * standard deviation, and was taken wide where nothing better than hearsay is known.
 */
public final class Priors {

  /** Temperature at which the constant is told, °C: the middle of the hot baths, judgement. */
  public static final double REFERENCE_C = 35;

  /**
   * Apparent activation energy, kJ/mol: 60 shortens the time by 2.25 from 20 to 30 °C and by 2.1
   * from 35 to 45 °C. Common practice has developers double their pace in about 10 K.
   */
  public static final double ACTIVATION_KJ_PER_MOL = 60;

  /** A sheet or two in a litre, m²/L: judgement. */
  public static final double EXHAUSTION_USUAL = 0.05;

  /** A little old developer and a dash of bromide, g/L: judgement. */
  public static final double BROMIDE_USUAL = 0.5;

  /** Very dilute, about 1+24: common practice. */
  public static final double STRENGTH_USUAL = 0.04;

  /** Over-exposure, stops: common practice is 2 to 4. */
  public static final double STOPS_USUAL = 3;

  /**
   * Standard deviation of ln(time) about the law: eyes under dim red light, mixing, the subject.
   * Judgement; a print too soft and one too hard are told to lie about 8 % of the time apart.
   */
  public static final double SCATTER = 0.15;

  /** How many prints that scatter is worth: judgement. Few, so that a steady hand soon shows. */
  public static final double SCATTER_PRINTS = 4;

  /** Scatter of ln(pull / emergence): one print's own two marks scatter less. Judgement. */
  public static final double RATIO_SCATTER = 0.12;

  /** How many prints a spread of {@link #spread} is worth: judgement. */
  static final double SPREAD_PRINTS = 2;

  private static final Belief EXHAUSTION =
      new Belief(
          Term.EXHAUSTION, 2, 1.5, JUDGEMENT, "four sheets in a litre lengthen the time by half");
  private static final Belief BROMIDE =
      new Belief(Term.BROMIDE, 0.2, 0.2, JUDGEMENT, "bromide restrains: a fifth longer for 1 g/L");
  private static final Belief STRENGTH =
      new Belief(
          Term.STRENGTH, -1, 0.4, COMMON_PRACTICE, "twice the dilution takes about twice as long");
  private static final Belief STOPS =
      new Belief(Term.STOPS, -0.25, 0.2, JUDGEMENT, "a stop more shortens it by about a fifth");
  private static final Belief TEMPERATURE =
      new Belief(
          Term.TEMPERATURE,
          ACTIVATION_KJ_PER_MOL,
          25,
          COMMON_PRACTICE,
          "a time halves with about 10 K more");

  /** Of ln(seconds from in to emergence). */
  public static final List<Belief> EMERGENCE =
      List.of(
          new Belief(
              Term.CONSTANT, Math.log(200), 0.7, COMMON_PRACTICE, "first blacks after 2 to 5 min"),
          TEMPERATURE,
          EXHAUSTION,
          BROMIDE,
          STRENGTH,
          STOPS);

  /** Of ln(seconds from in to pull). */
  public static final List<Belief> PULL =
      List.of(
          new Belief(
              Term.CONSTANT, Math.log(400), 0.7, COMMON_PRACTICE, "pulled after 3 to 20 min"),
          TEMPERATURE,
          EXHAUSTION,
          BROMIDE,
          STRENGTH,
          STOPS);

  /** Of ln(pull / emergence). */
  public static final List<Belief> RATIO =
      List.of(
          new Belief(
              Term.CONSTANT,
              Math.log(2),
              0.35,
              JUDGEMENT,
              "practice tells 2 to 3 emergences, and hot baths run faster"),
          new Belief(
              Term.TEMPERATURE, 0, 10, JUDGEMENT, "both moments quicken alike, as far as known"));

  private Priors() {}

  static Prior of(List<Belief> beliefs, double scatter) {
    return new Prior(
        beliefs.stream().map(Belief::mean).toList(),
        beliefs.stream().map(Belief::doubt).toList(),
        scatter,
        SCATTER_PRINTS);
  }

  /**
   * How much a term differs from print to print where nobody tells it: standard deviation, in the
   * entry's own unit. Judgement: what a session brings by itself; who changes more would tell it.
   */
  static double spread(Term term) {
    return switch (term) {
      case CONSTANT, TEMPERATURE -> 0;
      case EXHAUSTION -> 0.06;
      case BROMIDE -> 0.3;
      case STRENGTH -> 0.15;
      case STOPS -> 0.4;
    };
  }
}
