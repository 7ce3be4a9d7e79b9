package trayward.host.bath;

import java.util.OptionalDouble;

/**
 * How much of a stock solution brings a bath to a content. Immutable. Volumes are taken to add up.
 *
 * @param stockGPerL what the stock holds, g/L, above 0; 10 % weight in volume is 100 g/L
 */
public record Dose(double stockGPerL) {

  /** Refuses what is no stock. */
  public Dose {
    if (!(stockGPerL > 0)) {
      throw new IllegalArgumentException("no stock: " + stockGPerL + " g/L");
    }
  }

  /** A stock by its percentage, weight in volume. */
  public static Dose ofPercent(double percent) {
    return new Dose(10 * percent);
  }

  /** What goes into a bath in place of some of its water, mL. */
  public OptionalDouble inPlaceMl(
      double bathMl, double waterMl, double hereGPerL, double wantedGPerL) {
    double ml = (wantedGPerL - hereGPerL) * bathMl / stockGPerL;
    return ml >= 0 && ml <= waterMl ? OptionalDouble.of(ml) : OptionalDouble.empty();
  }

  /** What goes on top of a bath that is there, mL; it becomes so much more. */
  public OptionalDouble onTopMl(double bathMl, double hereGPerL, double wantedGPerL) {
    double ml = (wantedGPerL - hereGPerL) * bathMl / (stockGPerL - wantedGPerL);
    return wantedGPerL >= hereGPerL && wantedGPerL < stockGPerL
        ? OptionalDouble.of(ml)
        : OptionalDouble.empty();
  }
}
