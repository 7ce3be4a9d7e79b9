package trayward.controller.regulate;

import java.util.LinkedHashMap;
import java.util.Map;
import org.hipparchus.linear.RealMatrix;

/**
 * A tray identified from a recorded warm-up. Immutable.
 *
 * @param found the fit
 * @param numbers each number fitted, by name with its unit
 * @param ratios the ratios that temperatures show without knowing watts or litres, likewise
 */
public record Identified(
    FitResult found, Map<String, Estimate> numbers, Map<String, Estimate> ratios) {

  private static final int HEATER = 0;
  private static final int PLATE = 1;
  private static final int COUPLING = 2;
  private static final int LIQUID = 3;
  private static final int LOSS = 4;
  private static final int EVAPORATION = 5;

  static Identified of(FitResult found) {
    TrayModel m = found.belief().model();
    TrayDoubt d = found.doubt();
    Map<String, Estimate> numbers = new LinkedHashMap<>();
    numbers.put("heater_w", new Estimate(m.heaterW(), d.heater()));
    numbers.put("plate_j_per_k", new Estimate(m.plateJPerK(), d.plate()));
    numbers.put("plate_to_bath_w_per_k", new Estimate(m.plateToBathWPerK(), d.coupling()));
    numbers.put("liquid_l", new Estimate(m.liquidL(), d.liquid()));
    numbers.put("bath_loss_w_per_k", new Estimate(m.bathLossWPerK(), d.loss()));
    numbers.put("evaporation_factor", new Estimate(m.evaporationFactor(), d.evaporation()));
    numbers.put("bath_lag_s", new Estimate(found.belief().bathLagS(), d.bathLag()));
    numbers.put("plate_lag_s", new Estimate(found.belief().plateLagS(), d.plateLag()));
    numbers.put("wall_j_per_k", new Estimate(found.belief().wallJPerK(), d.wall()));
    RealMatrix c = TrayFit.covariance(found);
    TrayRates r = TrayRates.of(found.belief(), found.job().room());
    Map<String, Estimate> ratios = new LinkedHashMap<>();
    ratios.put("heater_over_plate_k_per_s", ratio(r.heatKPerS(), c, HEATER, PLATE));
    ratios.put("coupling_over_plate_per_s", ratio(r.platePerS(), c, COUPLING, PLATE));
    ratios.put("coupling_over_bath_per_s", ratio(r.bathPerS(), c, COUPLING, LIQUID));
    ratios.put("loss_over_bath_per_s", ratio(r.bathLossPerS(), c, LOSS, LIQUID));
    ratios.put(
        "evaporation_over_bath_k_per_s_per_kpa",
        ratio(r.evaporationKPerSPerKPa(), c, EVAPORATION, LIQUID));
    return new Identified(
        found,
        java.util.Collections.unmodifiableMap(numbers),
        java.util.Collections.unmodifiableMap(ratios));
  }

  /** The logarithm of a ratio is a difference: var(a - b) = var a + var b - 2 cov(a, b). */
  private static Estimate ratio(double value, RealMatrix c, int over, int under) {
    double variance =
        c.getEntry(over, over) + c.getEntry(under, under) - 2 * c.getEntry(over, under);
    return new Estimate(value, Math.sqrt(Math.max(0, variance)));
  }

  /**
   * Cooling of the bath at {@code bathC} by all its losses, K/s. How it divides into dry loss and
   * evaporation one warm-up can hardly show; the sum it shows well.
   */
  public double coolingKPerS(double bathC) {
    return TrayRates.of(found.belief(), found.job().room()).lossRate(bathC);
  }
}
