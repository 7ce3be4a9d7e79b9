package trayward.host.bath;

import java.util.Map;

/**
 * What a millilitre of something poured in brings with it. Immutable.
 *
 * @param name what the person calls it
 * @param concentrate whether it counts as a concentrate of developer, by its name
 * @param bromide bromide as potassium bromide, g/L
 * @param sulfite sulfite as sodium sulfite, g/L
 */
public record Solution(String name, boolean concentrate, Amount bromide, Amount sulfite) {

  /** Water. */
  public static final Solution WATER = new Solution("water", false, Amount.ZERO, Amount.ZERO);

  /** Scales and jugs of a darkroom make a stock solution to some 2 %: common practice. */
  public static final double STOCK_SHARE = 0.02;

  /** Potassium bromide, percent weight in volume: 10 % is 100 g made up to a litre. */
  public static Solution bromide(double percent) {
    return new Solution(
        "potassium bromide", false, Amount.within(10 * percent, STOCK_SHARE), Amount.ZERO);
  }

  /** Sodium sulfite, percent weight in volume. */
  public static Solution sulfite(double percent) {
    return new Solution(
        "sodium sulfite", false, Amount.ZERO, Amount.within(10 * percent, STOCK_SHARE));
  }

  /** This, with so many parts of it in so many of the whole. */
  public Solution diluted(double share) {
    return new Solution(name, concentrate, bromide.times(share), sulfite.times(share));
  }

  /** Its own share of concentrates, mL in each mL. */
  Map<String, Double> concentrates() {
    return concentrate ? Map.of(name, 1.0) : Map.of();
  }
}
