package trayward.controller.safety;

/**
 * The last readings of a probe with their times, for a straight line through some of them. A value.
 *
 * @param celsius readings, newest first
 * @param takenS when each was taken, s
 * @param count how many there are
 */
record Course(Row celsius, Row takenS, int count) {

  /** Readings kept: a little over a minute at one a second. */
  private static final int KEPT = 72;

  /** Readings closer together than this add nothing, s. */
  private static final double STEP_S = 0.9;

  static final Course START = new Course(Row.of(KEPT, Double.NaN), Row.of(KEPT, Double.NaN), 0);

  Course next(ThermalInput.Sample sample) {
    double at = sample.takenNanos() / 1e9;
    if (!sample.known() || (count > 0 && at - takenS.at(0) < STEP_S)) {
      return this;
    }
    return new Course(
        celsius.pushed(sample.celsius()), takenS.pushed(at), Math.min(KEPT, count + 1));
  }

  /** Time from the oldest kept reading to the newest, s. */
  double spanS() {
    return count < 2 ? 0 : takenS.at(0) - takenS.at(count - 1);
  }

  /** Size of the newest step, K. */
  double stepK() {
    return count < 2 ? 0 : Math.abs(celsius.at(0) - celsius.at(1));
  }

  /** Mean of the newest three readings, °C. */
  double mean() {
    int n = Math.min(3, count);
    double sum = 0;
    for (int i = 0; i < n; i++) {
      sum += celsius.at(i);
    }
    return sum / n;
  }

  /** When that mean stood, s. */
  double meanAtS() {
    int n = Math.min(3, count);
    double sum = 0;
    for (int i = 0; i < n; i++) {
      sum += takenS.at(i);
    }
    return sum / n;
  }

  /** Least squares through the readings from {@code fromS} to {@code toS} before the newest. */
  Line line(double fromS, double toS) {
    double newest = takenS.at(0);
    double n = 0;
    double t = 0;
    double y = 0;
    double tt = 0;
    double ty = 0;
    for (int i = 0; i < count; i++) {
      double back = newest - takenS.at(i);
      if (back <= fromS && back >= toS) {
        n++;
        t -= back;
        y += celsius.at(i);
        tt += back * back;
        ty -= back * celsius.at(i);
      }
    }
    double spread = n * tt - t * t;
    double slope = spread > 0 ? (n * ty - t * y) / spread : 0;
    return new Line(newest, (y - slope * t) / n, slope);
  }

  /**
   * A straight line.
   *
   * @param atS time of its foot, s
   * @param celsius value there, °C
   * @param slope K/s
   */
  record Line(double atS, double celsius, double slope) {

    static final Line NONE = new Line(0, Double.NaN, 0);

    double at(double timeS) {
      return celsius + slope * (timeS - atS);
    }
  }
}
