package trayward.host.forecast;

import java.util.List;

/**
 * How temperature counts: Arrhenius' law, rate = A exp(-Ea / (R T)), T in kelvin. Pure.
 *
 * <p>The apparent activation energy is that of whatever sets the pace; nothing is claimed of the
 * chemistry.
 */
public final class Arrhenius {

  /** Molar gas constant, J/(mol K): CODATA 2018, exact in the SI since 2019. */
  public static final double GAS_J_PER_MOL_K = 8.314462618;

  private static final double ZERO_C_K = 273.15;

  private Arrhenius() {}

  /** Whether it is a temperature a bath can have. */
  static boolean bath(double celsius) {
    return celsius >= PastPrint.COLDEST_C && celsius <= PastPrint.HOTTEST_C;
  }

  /** (1/T - 1/T0) 1000/R, mol/kJ: an activation energy in kJ/mol is its coefficient. */
  static double entry(double celsius) {
    double inverse = 1 / (celsius + ZERO_C_K) - 1 / (Priors.REFERENCE_C + ZERO_C_K);
    return inverse * 1000 / GAS_J_PER_MOL_K;
  }

  /** The temperature of an entry, °C. */
  static double celsius(double entry) {
    double inverse = entry * GAS_J_PER_MOL_K / 1000 + 1 / (Priors.REFERENCE_C + ZERO_C_K);
    return 1 / inverse - ZERO_C_K;
  }

  /**
   * The constant temperature that would have done as much in the same time as these, °C: what
   * pharmacy calls the mean kinetic temperature. It lies a little above the plain mean; how much
   * depends little on the energy: 25 kJ/mol more than believed moves it by 0.03 K in a bath that
   * swings by 2 K either way.
   *
   * @param atS times, seconds, rising; rows that do not rise are passed over
   * @param bathC the bath at each of them, °C; rows without a believable one are passed over
   * @return NaN where no row is left
   */
  public static double meanC(List<Double> atS, List<Double> bathC) {
    double energy = Priors.ACTIVATION_KJ_PER_MOL;
    double done = 0;
    double fromS = Double.NaN;
    double lastS = Double.NaN;
    double lastC = Double.NaN;
    for (int i = 0; i < Math.min(atS.size(), bathC.size()); i++) {
      double s = atS.get(i);
      double c = bathC.get(i);
      if (bath(c) && Double.isFinite(s) && !(s <= lastS)) {
        if (Double.isNaN(fromS)) {
          fromS = s;
        } else {
          done += (s - lastS) * (rate(c, energy) + rate(lastC, energy)) / 2;
        }
        lastS = s;
        lastC = c;
      }
    }
    return done > 0 ? celsius(-Math.log(done / (lastS - fromS)) / energy) : lastC;
  }

  private static double rate(double celsius, double energyKjPerMol) {
    return Math.exp(-energyKjPerMol * entry(celsius));
  }
}
