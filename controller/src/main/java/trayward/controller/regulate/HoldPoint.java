package trayward.controller.regulate;

/**
 * A tray linearised where it is to be held: what it takes to stay there and how it comes back.
 * Immutable; made anew for each sample.
 *
 * @param setC bath temperature to hold, °C
 * @param plateC plate temperature that holds it, °C
 * @param duty duty that holds it; above 1 where the heater is too small
 * @param heatKPerS heating of the plate at full duty, K/s
 * @param plateSelfPerS plate's own decay, 1/s
 * @param plateFromBathPerS plate following the bath, 1/s
 * @param bathFromPlatePerS bath following the plate, 1/s
 * @param bathSelfPerS bath's own decay, 1/s
 * @param bathWallPerS bath following the wall, 1/s
 * @param wallPerS wall following the bath, 1/s
 * @param wallK bath above wall now, K: what the hold reckons with for the moment
 */
record HoldPoint(
    double setC,
    double plateC,
    double duty,
    double heatKPerS,
    double plateSelfPerS,
    double plateFromBathPerS,
    double bathFromPlatePerS,
    double bathSelfPerS,
    double bathWallPerS,
    double wallPerS,
    double wallK) {

  /** Longest coast looked ahead, s: ten times the slowest plate. */
  private static final int LONGEST_S = 1500;

  static HoldPoint at(double setC, TrayObserver o) {
    TrayRates r = o.rates();
    double capacity = o.capacity();
    double bathPerS = r.bathPerS() / capacity;
    double wallK = o.bathC() - o.wallC();
    double bathWallPerS = r.bathWallPerS() / capacity;
    double lossKPerS = (r.lossRate(setC) - o.bathExtra()) / capacity + bathWallPerS * wallK;
    double plateC = setC + lossKPerS / bathPerS;
    double duty =
        (r.platePerS() * (plateC - setC) + r.plateLossPerS() * (plateC - r.airC()) - o.plateExtra())
            / r.heatKPerS();
    return new HoldPoint(
        setC,
        plateC,
        duty,
        r.heatKPerS(),
        r.platePerS() + r.plateLossPerS(),
        r.platePerS(),
        bathPerS,
        bathPerS + r.lossSlope(setC) / capacity,
        bathWallPerS,
        r.wallPerS(),
        wallK);
  }

  /** Highest bath temperature, °C, if the heat goes off now; that of now where it falls already. */
  double coastPeakC(double nowPlateC, double nowBathC) {
    double p = nowPlateC - plateC;
    double q = nowBathC - setC;
    double cooling = heatKPerS * duty;
    double wallFollow = -Math.expm1(-wallPerS);
    double wall = wallK; // bath above wall
    double rate = bathRate(p, q, wall);
    for (int i = 0; i < LONGEST_S && rate > 0; i++) {
      double pm = p + 0.5 * plateRate(p, q, cooling);
      double qm = q + 0.5 * rate;
      p += plateRate(pm, qm, cooling);
      double moved = bathRate(pm, qm, wall);
      wall += moved - (wall + 0.5 * moved) * wallFollow;
      double before = rate;
      rate = bathRate(p, q + moved, wall);
      if (rate <= 0) {
        // The rate falls straight to nought within this second.
        return setC + q + 0.5 * before * before / (before - rate);
      }
      q += moved;
    }
    return setC + q;
  }

  /** The wall takes less as it follows than the hold reckons with. */
  private double bathRate(double p, double q, double wall) {
    return bathFromPlatePerS * p - bathSelfPerS * q - bathWallPerS * (wall - wallK);
  }

  private double plateRate(double p, double q, double cooling) {
    return plateFromBathPerS * q - plateSelfPerS * p - cooling;
  }

  /**
   * Where the bath will settle, K above set, if the plate is left to itself under the holding duty:
   * the projection on the slow of the two modes, by its left eigenvector.
   */
  double settlingK(double nowPlateC, double nowBathC) {
    double w = plateWeight();
    return ((nowBathC - setC) + w * (nowPlateC - plateC)) / (1 + w * slowPlate());
  }

  /** Duty that brings {@link #settlingK} to nought with the time constant {@code inS}. */
  double dutyFor(double settlingK, double inS) {
    double gain = (1 + plateWeight() * slowPlate()) / (plateWeight() * heatKPerS * inS);
    return duty - gain * settlingK;
  }

  private double slow() {
    double sum = plateSelfPerS + bathSelfPerS;
    double product = plateSelfPerS * bathSelfPerS - bathFromPlatePerS * plateFromBathPerS;
    return -2 * product / (sum + Math.sqrt(sum * sum - 4 * product));
  }

  private double plateWeight() {
    return bathFromPlatePerS / (plateSelfPerS + slow());
  }

  /** Plate over bath in the slow mode. */
  private double slowPlate() {
    return (bathSelfPerS + slow()) / bathFromPlatePerS;
  }
}
