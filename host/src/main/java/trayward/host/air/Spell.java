package trayward.host.air;

import java.util.List;

/**
 * A time in one concentration. Immutable.
 *
 * @param hours how long, h, 0 or more
 * @param concentration in ppm or mg/m³, 0 or more
 */
public record Spell(double hours, double concentration) {

  /** Hours of the working day that a time-weighted average is taken over, whatever was worked. */
  public static final double DAY_H = 8;

  /** Refuses what is out of range. */
  public Spell {
    if (!(hours >= 0 && hours <= 24) || !(concentration >= 0)) {
      throw new IllegalArgumentException("no spell: " + hours + " h at " + concentration);
    }
  }

  /** Time-weighted average of a day, over eight hours: 29 CFR 1910.1000(d)(1). */
  public static double dayMean(List<Spell> spells) {
    return spells.stream().mapToDouble(s -> s.hours * s.concentration).sum() / DAY_H;
  }

  /**
   * What several substances come to together: the sum of each one's share of its limit, which must
   * not exceed 1 (29 CFR 1910.1000(d)(2)).
   *
   * @param found concentration of each
   * @param limits limit of each, above 0, in the same order
   */
  public static double mixture(List<Double> found, List<Double> limits) {
    double sum = 0;
    for (int i = 0; i < found.size(); i++) {
      sum += found.get(i) / limits.get(i);
    }
    return sum;
  }
}
