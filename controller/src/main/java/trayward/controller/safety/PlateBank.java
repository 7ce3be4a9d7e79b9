package trayward.controller.safety;

import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;

/**
 * Every tray that the plate readings of this run still allow: a grid of heating rates (power over
 * plate capacity) and cooling rates (coupling over plate capacity), each with the interval of probe
 * offsets it needs. A reading outside of what a candidate can explain ends it; where none is left,
 * the plate does what no tray of this kind does under the commanded heat. A value.
 *
 * <p>Candidates have constant parameters, so the warm-up itself narrows what hold must look like.
 *
 * @param model centre of the grid
 * @param plateC lagged plate temperature by each candidate, °C
 * @param low least offset of the plate reading each still allows, K
 * @param high largest one; below {@code low} where the candidate has ended
 * @param ageS time since the bank began, s
 * @param side 1 where the last candidates ended on a plate too hot, -1 too cold, 0 while some live
 * @param stirK doubt about the bath after it moved fast, K
 */
record PlateBank(
    TrayModel model, Row plateC, Row low, Row high, double ageS, int side, double stirK) {

  /** Believed power may be 15 % high and supply 10 % off (power goes with its square). */
  private static final double POWER_MIN = 0.65;

  private static final double POWER_MAX = 1.25;

  /** Coupling and plate capacity of trays seen, over the default belief. */
  private static final double COUPLING_MIN = 0.62;

  private static final double COUPLING_MAX = 1.45;
  private static final double PLATE_MIN = 0.6;
  private static final double PLATE_MAX = 1.7;

  /** Steps of 9 %: half a step is within the gap's tolerance. */
  private static final int HEATING = 21;

  private static final int COOLING = 23;

  /** Two probes, each within 0.5 K of the truth, and a little. */
  private static final double OFFSET_K = 1.1;

  /** Four times 0.05 K of noise and the rounding of two readings to 1/16 K. */
  private static final double NOISE_K = 0.3;

  /** Half a step of the grid, as a share of the gap of plate and bath. */
  private static final double GRID = 0.06;

  /** A bath probe lags 3 to 15 s and its reading is up to 1.75 s old: centre, s. */
  private static final double BATH_LAG_S = 8;

  /** What its lag may differ from that, s, with unmixed liquid after a pour. */
  private static final double BATH_LAG_DOUBT_S = 12;

  /** Slopes under this are noise of a reading, K/s. */
  private static final double SLOPE_NOISE = 0.02;

  /** A poured bath is mixed, and a plate has followed it, after some multiples of this, s. */
  private static final double STIR_S = 40;

  /** Forgetting: what a tray may change by itself, K/s: 1 K in half an hour. */
  private static final double FORGET = 1.0 / 1800;

  static PlateBank start(TrayModel model, double plateC) {
    int n = HEATING * COOLING;
    double[] low = new double[n];
    double[] high = new double[n];
    for (int i = 0; i < n; i++) {
      boolean can = possible(i);
      low[i] = can ? -OFFSET_K : Double.POSITIVE_INFINITY;
      high[i] = can ? OFFSET_K : Double.NEGATIVE_INFINITY;
    }
    return new PlateBank(model, Row.of(n, plateC), Row.owning(low), Row.owning(high), 0, 0, 0);
  }

  private static boolean possible(int i) {
    double ratio = heatingFactor(i) / coolingFactor(i);
    return ratio >= 0.96 * POWER_MIN / COUPLING_MAX && ratio <= 1.04 * POWER_MAX / COUPLING_MIN;
  }

  private static double heatingFactor(int i) {
    return spaced(i / COOLING, HEATING, POWER_MIN / PLATE_MAX, POWER_MAX / PLATE_MIN);
  }

  private static double coolingFactor(int i) {
    return spaced(i % COOLING, COOLING, COUPLING_MIN / PLATE_MAX, COUPLING_MAX / PLATE_MIN);
  }

  private static double spaced(int k, int n, double from, double to) {
    return from * Math.pow(to / from, k / (double) (n - 1));
  }

  /** After one reading of the plate, {@code dt} seconds after the last. */
  PlateBank next(double dt, HeatLag heat, ReadingTrail bath, double readC, RoomModel room) {
    double slope = bath.slope();
    double bathC = bath.median() + BATH_LAG_S * slope;
    double stir =
        Math.max(
            stirK * Math.exp(-dt / STIR_S),
            BATH_LAG_DOUBT_S * Math.max(0, Math.abs(slope) - SLOPE_NOISE));
    double[] plate = new double[plateC.size()];
    double[] lows = low.copy();
    double[] highs = high.copy();
    double lossRate = model.plateLossWPerK() / model.plateJPerK();
    boolean some = false;
    int tooHot = 0;
    for (int i = 0; i < plate.length; i++) {
      double heating = HEATING_FACTORS.at(i) * model.heaterW() / model.plateJPerK();
      double cooling = COOLING_FACTORS.at(i) * model.plateToBathWPerK() / model.plateJPerK();
      double rate = cooling + lossRate;
      double rest = (heating * heat.mean() + cooling * bathC + lossRate * room.airC()) / rate;
      plate[i] = rest + (plateC.at(i) - rest) * Math.exp(-rate * dt);
      double doubt =
          NOISE_K
              + GRID * Math.abs(plate[i] - bathC)
              + OFFSET_K * Math.exp(-cooling * ageS)
              + heating * Math.abs(heat.spread())
              + stir;
      double error = readC - plate[i];
      boolean lived = low.at(i) <= high.at(i);
      lows[i] = Math.max(low.at(i) - FORGET * dt, error - doubt);
      highs[i] = Math.min(high.at(i) + FORGET * dt, error + doubt);
      lows[i] = Math.max(lows[i], -OFFSET_K);
      highs[i] = Math.min(highs[i], OFFSET_K);
      some |= lows[i] <= highs[i];
      if (lived) {
        tooHot += error - doubt > Math.min(high.at(i) + FORGET * dt, OFFSET_K) ? 1 : -1;
      }
    }
    int now = some ? 0 : side != 0 ? side : tooHot >= 0 ? 1 : -1;
    return new PlateBank(
        model, Row.owning(plate), Row.owning(lows), Row.owning(highs), ageS + dt, now, stir);
  }

  /** How many candidates live. */
  int alive() {
    int n = 0;
    for (int i = 0; i < low.size(); i++) {
      n += low.at(i) <= high.at(i) ? 1 : 0;
    }
    return n;
  }

  /** Cooling rate of the plate by the candidates that live, 1/s; the belief where none does. */
  double coolingPerS() {
    double sum = 0;
    int n = 0;
    for (int i = 0; i < low.size(); i++) {
      if (low.at(i) <= high.at(i)) {
        sum += COOLING_FACTORS.at(i);
        n++;
      }
    }
    return (n > 0 ? sum / n : 1) * model.plateToBathWPerK() / model.plateJPerK();
  }

  private static final Row HEATING_FACTORS = factors(true);
  private static final Row COOLING_FACTORS = factors(false);

  private static Row factors(boolean heating) {
    double[] all = new double[HEATING * COOLING];
    for (int i = 0; i < all.length; i++) {
      all[i] = heating ? heatingFactor(i) : coolingFactor(i);
    }
    return Row.owning(all);
  }
}
