package trayward.host.app.demo;

import trayward.host.forecast.Arrhenius;
import trayward.host.forecast.Features;
import trayward.host.forecast.Priors;

/**
 * The law by which the sheets of the invented season develop, so that the forecast has something
 * true to find. Every number of it stands here and is invented; the form is that of {@link
 * trayward.host.forecast.Forecaster}, told at the usual conditions of {@link Priors}. Immutable.
 *
 * @param constant ln of the seconds from in to emergence at the usual conditions
 * @param activationKjPerMol apparent activation energy, kJ/mol
 * @param perM2PerL exhaustion, for each m²/L
 * @param perGPerL bromide, for each g/L
 * @param power power of the strength
 * @param perStop for each stop over
 * @param scatter standard deviation of ln(time to emergence)
 * @param pullRatio seconds to the pull over seconds to emergence, the middle one
 * @param pullScatter standard deviation of the logarithm of that ratio
 */
public record TrueLaw(
    double constant,
    double activationKjPerMol,
    double perM2PerL,
    double perGPerL,
    double power,
    double perStop,
    double scatter,
    double pullRatio,
    double pullScatter) {

  /** Each a little off what is believed beforehand: a forecast that only believes is caught. */
  public static final TrueLaw CHOSEN =
      new TrueLaw(Math.log(380), 72, 1.6, 0.3, -0.85, -0.2, 0.07, 1.8, 0.08);

  /** Zero of the Celsius scale, K. */
  private static final double ZERO_C_K = 273.15;

  /** Seconds from in to emergence in a bath that stays at this temperature, °C, without scatter. */
  public double emergenceS(double bathC, Features f) {
    double inverse = 1 / (bathC + ZERO_C_K) - 1 / (Priors.REFERENCE_C + ZERO_C_K);
    double strength = f.strengthShare().orElse(Priors.STRENGTH_USUAL);
    return Math.exp(
        constant
            + activationKjPerMol * 1000 / Arrhenius.GAS_J_PER_MOL_K * inverse
            + perM2PerL * beyond(f.exhaustionM2PerL().orElseThrow(), Priors.EXHAUSTION_USUAL)
            + perGPerL * beyond(f.bromideGPerL().orElseThrow(), Priors.BROMIDE_USUAL)
            + power * Math.log(strength / Priors.STRENGTH_USUAL)
            + perStop * beyond(f.stopsOver().orElseThrow(), Priors.STOPS_USUAL));
  }

  private static double beyond(double value, double usual) {
    return value - usual;
  }
}
