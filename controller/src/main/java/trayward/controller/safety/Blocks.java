package trayward.controller.safety;

/**
 * What stood in the last two minutes, in means of five seconds: for its course. A value.
 *
 * @param timeS time in the block that is being filled, s
 * @param sum integral over it
 * @param means of the full blocks, newest first
 * @param count how many there are
 */
record Blocks(double timeS, double sum, Row means, int count) {

  /** Five readings: noise of 0.05 K becomes 0.024 K. */
  static final double BLOCK_S = 5;

  /** Two minutes; a slope over them is good to 0.0002 K/s. */
  static final int KEPT = 24;

  static final Blocks START = new Blocks(0, 0, Row.of(KEPT, Double.NaN), 0);

  Blocks next(double value, double dt) {
    double time = timeS + dt;
    double now = sum + value * dt;
    return time < BLOCK_S - 1e-6 // tenths of a second add up to a little less
        ? new Blocks(time, now, means, count)
        : new Blocks(0, 0, means.pushed(now / time), Math.min(KEPT, count + 1));
  }

  /** A block has just been filled. */
  boolean filled() {
    return count > 0 && timeS == 0;
  }

  /** Mean of blocks {@code from} to before {@code to}, counted back from the newest. */
  double mean(int from, int to) {
    double all = 0;
    for (int i = from; i < to; i++) {
      all += means.at(i);
    }
    return all / (to - from);
  }

  /** Least squares over the same blocks, per second. */
  double slope(int from, int to) {
    double middle = (from + to - 1) / 2.0;
    double ty = 0;
    double tt = 0;
    for (int i = from; i < to; i++) {
      double t = (middle - i) * BLOCK_S;
      ty += t * means.at(i);
      tt += t * t;
    }
    return ty / tt;
  }
}
