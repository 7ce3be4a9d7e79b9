package trayward.controller.safety;

import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;

/**
 * Every tray that the plate readings of this run still allow, the undeclared ones too: a grid of
 * plates by their time constant and by how far full heat lifts them over their bath, each with the
 * interval of probe offsets it needs. A reading outside of what a candidate can explain ends it;
 * where none is left, the plate does what no tray does under the commanded heat. A value.
 *
 * <p>Candidates have constant parameters, so the readings themselves narrow what is believed: at
 * rest they bind the offset, the warm-up binds the rest. With {@code u} the share of full heat,
 * {@code T dTp/dt = lift u - (Tp - Tb) - w (Tp - Ta)}, the two-lump tray divided by its coupling.
 *
 * @param model heater power and plate loss as believed; nothing else of it is used
 * @param plateC lagged plate temperature by each candidate, °C, had the first reading been true
 * @param apart share of a lift by which quick and slow probes are apart, for each time constant
 * @param low least offset of the plate reading each still allows, K
 * @param high largest one; below {@code low} where the candidate has ended
 * @param ageS time since the bank began, s
 * @param side 1 where the last candidates ended on a plate too hot, -1 too cold, 0 while some live
 * @param stirK doubt about the bath after it moved fast, K
 */
record PlateBank(
    TrayModel model,
    PlateRow plateC,
    Row apart,
    PlateRow low,
    PlateRow high,
    double ageS,
    int side,
    double stirK) {

  /** Two probes, each within 0.5 K of the truth, and a little. */
  private static final double OFFSET_K = 1.1;

  /** Four times 0.05 K of noise and the rounding of two readings to 1/16 K. */
  private static final double NOISE_K = 0.3;

  /** Half a step of the grid, as a share of the gap of plate and bath. */
  private static final double GRID = 0.06;

  /** The middle lag, 5 s, is 3.75 s from the slowest probe: over half of the 6.8 s taken apart. */
  private static final double LAG_SHARE = 0.75;

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

  /** An interval this far inside out is not forgotten in any useful time: ended for good, K. */
  private static final double ENDED_K = 1;

  static PlateBank start(TrayModel model, double plateC) {
    double[] low = new double[PlateGrid.SIZE];
    double[] high = new double[PlateGrid.SIZE];
    for (int i = 0; i < PlateGrid.SIZE; i++) {
      boolean can = PlateGrid.possible(i);
      low[i] = can ? -OFFSET_K : Double.POSITIVE_INFINITY;
      high[i] = can ? OFFSET_K : Double.NEGATIVE_INFINITY;
    }
    PlateRow plates = PlateRow.of(plateC);
    Row apart = Row.of(PlateGrid.TIMES, 0);
    return new PlateBank(
        model, plates, apart, PlateRow.copyOf(low), PlateRow.copyOf(high), 0, 0, 0);
  }

  /** After one reading of the plate, {@code dt} seconds after the last. */
  PlateBank next(double dt, HeatLag heat, ReadingTrail bath, double readC, RoomModel room) {
    double slope = bath.slope();
    double bathC = bath.median() + BATH_LAG_S * slope;
    double moved = BATH_LAG_DOUBT_S * Math.max(0, Math.abs(slope) - SLOPE_NOISE);
    double stir = Math.max(stirK * (1 - HeatLag.share(dt, STIR_S)), moved);
    double age = ageS + dt;
    double forget = FORGET * dt;
    double[][] plates = plateC.parts();
    double[][] lowsByTime = low.parts();
    double[][] highsByTime = high.parts();
    double[] aparts = apart.copy();
    double[] rests = rests(heat.mean(), bathC, room.airC());
    int living = 0;
    int tooHot = 0;
    for (int t = 0; t < PlateGrid.TIMES; t++) {
      if (!open(t)) {
        continue;
      }
      double[] plate = plates[t].clone();
      double[] lows = lowsByTime[t].clone();
      double[] highs = highsByTime[t].clone();
      double followed = HeatLag.share(dt, PlateGrid.timeS(t));
      double unbound = 1 / HeatLag.share(age, PlateGrid.timeS(t));
      aparts[t] += (heat.apart() - aparts[t]) * followed;
      double lagW = LAG_SHARE * Math.abs(aparts[t]) * model.heaterW();
      for (int g = 0; g < PlateGrid.LIFTS; g++) {
        if (lows[g] - highs[g] > ENDED_K) {
          continue;
        }
        plate[g] += (rests[g] - plate[g]) * followed;
        double gap = Math.abs(plate[g] - bathC);
        double doubt = NOISE_K + GRID * gap + lagW * PlateGrid.kelvinPerW(g) + stir;
        // The candidate began at the first reading, offset and all: of that a rest still stands.
        double offset = (readC - plate[g]) * unbound;
        double least = offset - doubt * unbound;
        double most = offset + doubt * unbound;
        if (lows[g] <= highs[g]) {
          tooHot += least > highs[g] + forget ? 1 : -1;
        }
        lows[g] = Math.max(-OFFSET_K, Math.max(lows[g] - forget, least));
        highs[g] = Math.min(OFFSET_K, Math.min(highs[g] + forget, most));
        living += lows[g] <= highs[g] ? 1 : 0;
      }
      plates[t] = plate;
      lowsByTime[t] = lows;
      highsByTime[t] = highs;
    }
    int now = living > 0 ? 0 : side != 0 ? side : tooHot >= 0 ? 1 : -1;
    return new PlateBank(
        model,
        PlateRow.owning(plates),
        Row.owning(aparts),
        PlateRow.owning(lowsByTime),
        PlateRow.owning(highsByTime),
        age,
        now,
        stir);
  }

  /** Whether a candidate of this time constant lives, or may live again by forgetting. */
  private boolean open(int t) {
    for (int g = 0; g < PlateGrid.LIFTS; g++) {
      if (!(low.at(t, g) - high.at(t, g) > ENDED_K)) {
        return true;
      }
    }
    return false;
  }

  /** Where the plate of each lift would come to rest under {@code share} of full heat, °C. */
  private double[] rests(double share, double bathC, double airC) {
    double[] rests = new double[PlateGrid.LIFTS];
    for (int g = 0; g < rests.length; g++) {
      double lift = PlateGrid.kelvinPerW(g) * model.heaterW();
      double loss = PlateGrid.kelvinPerW(g) * model.plateLossWPerK();
      rests[g] = (lift * share + bathC + loss * airC) / (1 + loss);
    }
    return rests;
  }

  private boolean lives(int i) {
    return low.at(i) <= high.at(i);
  }

  /** How many candidates live. */
  int alive() {
    int n = 0;
    for (int i = 0; i < PlateGrid.SIZE; i++) {
      n += lives(i) ? 1 : 0;
    }
    return n;
  }

  /** Cooling rate of the plate by the mean time constant of those that live, 1/s; 0 for none. */
  double coolingPerS() {
    double sum = 0;
    int n = 0;
    for (int i = 0; i < PlateGrid.SIZE; i++) {
      if (lives(i)) {
        sum += PlateGrid.timeS(i / PlateGrid.LIFTS);
        n++;
      }
    }
    return n > 0 ? n / sum : 0;
  }

  /** Least coupling of plate and bath by those that live, W/K; that of any tray where none does. */
  double leastWPerK() {
    for (int g = PlateGrid.LIFTS - 1; g >= 0; g--) {
      for (int t = 0; t < PlateGrid.TIMES; t++) {
        if (lives(t * PlateGrid.LIFTS + g)) {
          return Math.max(PlateGrid.COUPLING_MIN, PlateGrid.POWER_MIN / PlateGrid.kelvinPerW(g));
        }
      }
    }
    return PlateGrid.COUPLING_MIN;
  }
}
