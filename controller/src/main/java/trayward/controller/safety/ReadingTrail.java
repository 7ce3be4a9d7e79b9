package trayward.controller.safety;

import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;

/**
 * The last readings of one probe: a median against single outliers and a slope. A value.
 *
 * @param celsius readings, newest first; NaN where there is none yet
 * @param takenS when each was taken, s
 * @param newestNanos when the newest was taken
 */
record ReadingTrail(Row celsius, Row takenS, long newestNanos) {

  /** Readings kept: with the median of three at both ends, a slope over about 6 s. */
  private static final int KEPT = 9;

  /** Liquid may be a tenth less than declared, and some of it evaporated. */
  private static final double LIQUID_MIN = 0.8;

  /** Most loss over the believed one: twice the evaporation, 4 W/K for 2.5. */
  private static final double LOSS_MAX = 2;

  /** Three times the noise of a slope over 6 s. */
  private static final double NOISE_K_PER_S = 0.03;

  /** From one reading to the next no live probe that stood moves so much, K: it was frozen. */
  private static final double LEAP_K = 0.5;

  /** More is judged as an impossible rate, K. */
  private static final double LEAP_MAX_K = 1.5;

  /** A median of three has forgotten what was before. */
  private static final int MEDIAN = 3;

  static final ReadingTrail START =
      new ReadingTrail(Row.of(KEPT, Double.NaN), Row.of(KEPT, 0), Long.MIN_VALUE);

  boolean news(ThermalInput.Sample sample) {
    return sample.known() && sample.takenNanos() != newestNanos;
  }

  ReadingTrail next(ThermalInput.Sample sample) {
    return news(sample)
        ? new ReadingTrail(
            celsius.pushed(sample.celsius()),
            takenS.pushed(sample.takenNanos() / 1e9),
            sample.takenNanos())
        : this;
  }

  boolean full() {
    return !Double.isNaN(celsius.last());
  }

  /** Whether a reading that stood has leapt just now: what it said meanwhile was old. */
  boolean thaws() {
    boolean stands = full();
    for (int i = MEDIAN + 1; i < KEPT; i++) {
      stands = stands && Double.compare(celsius.at(i), celsius.at(MEDIAN)) == 0;
    }
    for (int k = MEDIAN; stands && k >= 1; k--) {
      double leapK = Math.abs(celsius.at(k - 1) - celsius.at(k));
      if (leapK > 0) {
        return leapK >= LEAP_K && leapK < LEAP_MAX_K;
      }
    }
    return false;
  }

  /** Median of the newest three. */
  double median() {
    return median(0);
  }

  /** Time between the newest two readings, s. */
  double stepS() {
    return takenS.at(0) - takenS.at(1);
  }

  /** K/s over the kept readings; 0 until there are enough of them. */
  double slope() {
    double spanS = takenS.at(1) - takenS.at(KEPT - 2);
    return full() && spanS > 1 ? (median(0) - median(KEPT - 3)) / spanS : 0;
  }

  /** Whether what is in the tray cannot cool as fast as this reading falls. */
  boolean fallsBeyond(TrayModel model, RoomModel room) {
    double most = LOSS_MAX * model.bathLossW(median(), room);
    double bathJPerK = LIQUID_MIN * TrayModel.LITRE_J_PER_K * model.liquidL();
    return slope() + NOISE_K_PER_S < -most / bathJPerK;
  }

  /** Median of the three readings that were the newest {@code from} readings ago. */
  double median(int from) {
    double a = celsius.at(from);
    double b = celsius.at(from + 1);
    double c = celsius.at(from + 2);
    double middle = Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
    return Double.isNaN(middle) ? a : middle;
  }
}
