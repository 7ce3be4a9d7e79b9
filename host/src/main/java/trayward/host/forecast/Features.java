package trayward.host.forecast;

import java.util.OptionalDouble;

/**
 * What is known of a bath and a sheet beside the temperature. Immutable.
 *
 * <p>A value outside its range, or no number, counts as not told: a slip of the pen must not bend
 * every forecast after it.
 *
 * @param exhaustionM2PerL paper developed in this bath so far, m² per litre, 0 to {@value
 *     #EXHAUSTION_MAX}
 * @param bromideGPerL bromide as potassium bromide, g/L, 0 to {@value #BROMIDE_MAX}
 * @param strengthShare share of concentrate in the bath, from {@value #STRENGTH_MIN} to 1
 * @param stopsOver exposure beyond that of an ordinary print, stops, within ± {@value #STOPS_MAX}
 */
public record Features(
    OptionalDouble exhaustionM2PerL,
    OptionalDouble bromideGPerL,
    OptionalDouble strengthShare,
    OptionalDouble stopsOver) {

  /** More paper than any developer stands, m²/L. */
  public static final double EXHAUSTION_MAX = 5;

  /** More bromide than any bath that still develops, g/L. */
  public static final double BROMIDE_MAX = 50;

  /** Thinner than 1+1000 is water; the logarithm needs an end. */
  public static final double STRENGTH_MIN = 0.001;

  /** A thousandfold exposure: beyond it the number is a slip. */
  public static final double STOPS_MAX = 10;

  /** Nothing told. */
  public static final Features NONE =
      new Features(
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty());

  /** Drops what is out of range. */
  public Features {
    exhaustionM2PerL = within(exhaustionM2PerL, 0, EXHAUSTION_MAX);
    bromideGPerL = within(bromideGPerL, 0, BROMIDE_MAX);
    strengthShare = within(strengthShare, STRENGTH_MIN, 1);
    stopsOver = within(stopsOver, -STOPS_MAX, STOPS_MAX);
  }

  /** Everything told. */
  public static Features of(
      double exhaustionM2PerL, double bromideGPerL, double strengthShare, double stopsOver) {
    return new Features(
        OptionalDouble.of(exhaustionM2PerL),
        OptionalDouble.of(bromideGPerL),
        OptionalDouble.of(strengthShare),
        OptionalDouble.of(stopsOver));
  }

  private static OptionalDouble within(OptionalDouble value, double least, double most) {
    return value.isPresent() && value.getAsDouble() >= least && value.getAsDouble() <= most
        ? value
        : OptionalDouble.empty();
  }

  /** What it tells of a term, as it stands in the law; empty where it does not. */
  OptionalDouble entry(Term term) {
    return switch (term) {
      case CONSTANT, TEMPERATURE -> OptionalDouble.empty();
      case EXHAUSTION -> beyond(exhaustionM2PerL, Priors.EXHAUSTION_USUAL);
      case BROMIDE -> beyond(bromideGPerL, Priors.BROMIDE_USUAL);
      case STRENGTH ->
          strengthShare.isPresent()
              ? OptionalDouble.of(Math.log(strengthShare.getAsDouble() / Priors.STRENGTH_USUAL))
              : OptionalDouble.empty();
      case STOPS -> beyond(stopsOver, Priors.STOPS_USUAL);
    };
  }

  private static OptionalDouble beyond(OptionalDouble value, double usual) {
    return value.isPresent()
        ? OptionalDouble.of(value.getAsDouble() - usual)
        : OptionalDouble.empty();
  }
}
