package trayward.host.heat;

import java.util.Optional;

/**
 * Waters of different temperatures poured together in a tray, by the balance of heat; none is lost
 * to the room, and the specific heat is taken as the same throughout (it is, to 0.2 %). Volumes are
 * as measured, each at its own temperature. Immutable.
 *
 * @param trayJPerK heat capacity of the tray that is warmed with it, J/K, 0 or more
 * @param trayC its temperature, °C
 * @param presentLitres liquid already in it, at its temperature, L, 0 or more
 */
public record Mixing(double trayJPerK, double trayC, double presentLitres) {

  /** Specific heat of water at 40 °C, J/(g K): IAPWS. */
  private static final double HEAT_J_PER_G_K = 4.1786;

  /** Refuses what is out of range. */
  public Mixing {
    if (!(trayJPerK >= 0) || !(trayC >= 0 && trayC <= 100) || !(presentLitres >= 0)) {
      throw new IllegalArgumentException("no tray: " + trayJPerK + " J/K, " + trayC + " °C");
    }
  }

  /**
   * Two measures to pour.
   *
   * @param hotLitres of the hotter water, L
   * @param coldLitres of the colder, L
   */
  public record Measures(double hotLitres, double coldLitres) {}

  /** Temperature of everything together, °C. */
  public double mixedC(double hotLitres, double hotC, double coldLitres, double coldC) {
    double hot = joulesPerK(hotLitres, hotC);
    double cold = joulesPerK(coldLitres, coldC);
    double here = trayJPerK + joulesPerK(presentLitres, trayC);
    return (hot * hotC + cold * coldC + here * trayC) / (hot + cold + here);
  }

  /**
   * What to pour, so that it all has a temperature and the tray holds a volume.
   *
   * @param litres all liquid together, L, measured at {@code targetC}; more than is present
   * @return empty where these two waters cannot give it
   */
  public Optional<Measures> measuresFor(double targetC, double litres, double hotC, double coldC) {
    double whole = joulesPerK(litres, targetC);
    double present = joulesPerK(presentLitres, trayC);
    double poured = whole - present;
    double missing = (trayJPerK + present) * (targetC - trayC) + poured * (targetC - coldC);
    double hot = missing / (hotC - coldC);
    double cold = poured - hot;
    return hotC > coldC && poured > 0 && hot >= 0 && cold >= 0
        ? Optional.of(new Measures(litres(hot, hotC), litres(cold, coldC)))
        : Optional.empty();
  }

  private static double joulesPerK(double litres, double celsius) {
    return litres * Water.densityGPerL(celsius) * HEAT_J_PER_G_K;
  }

  private static double litres(double joulesPerK, double celsius) {
    return joulesPerK / HEAT_J_PER_G_K / Water.densityGPerL(celsius);
  }
}
