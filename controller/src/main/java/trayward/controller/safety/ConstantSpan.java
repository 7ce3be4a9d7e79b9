package trayward.controller.safety;

/**
 * How long a probe has given the very same value, and what gave it heat meanwhile. A value.
 *
 * <p>While a healthy bath reading does not move by one step, the bath stays within that step, so
 * what the plate gives must equal what the room takes, which does not change: two halves of such a
 * time differ by no more heat than the step holds. A frozen probe has no such bond.
 *
 * @param celsius the value; NaN before the first
 * @param ageS time it has been the same, s
 * @param slope change of the reading before that, K/s
 * @param dutyBefore mean commanded duty before that
 * @param usualS how long this probe has kept a value of late, s
 * @param lastK last change of the reading, K
 * @param flips share of its changes of late that took back the one before: noise, not a course
 * @param dutyS time of commanded heat since, s
 * @param stepS time between two entries of {@code sums}, s
 * @param sums integral since of what gives heat, at every step: of W in J, of a plate's °C in K s
 * @param entries how many of them count
 * @param sum the same now
 */
record ConstantSpan(
    double celsius,
    double ageS,
    double slope,
    double dutyBefore,
    double usualS,
    double lastK,
    double flips,
    double dutyS,
    double stepS,
    Row sums,
    int entries,
    double sum) {

  /** Entries kept; when they are full every second one is dropped and the step doubled. */
  private static final int KEPT = 64;

  /** Saturates: a probe left lying for weeks. */
  private static final double LONG_S = 1e6;

  /** Time over which the course before is remembered, s. */
  private static final double BEFORE_S = 30;

  /** Weight of one span among those of late. */
  private static final double USUAL_SHARE = 0.1;

  /** Long beyond what a live probe does in a resting bath, s. */
  private static final double FROZEN_S = 50;

  private static final double FROZEN_SPANS = 8;

  /**
   * Share of changes taken back by which a probe is noisy: over half in rest, one in ten hardly.
   */
  private static final double NOISY = 0.25;

  /** What comes to rest in air, with 100 s at most, goes on for a step from so fast, K/s. */
  private static final double STOPS = 0.003;

  /** Long enough for the noise of what is given, 0.05 K a reading, to be 0.013 K, s. */
  private static final double RESTS_S = 16;

  private static final Row NOTHING = Row.of(KEPT, 0);

  static final ConstantSpan START =
      new ConstantSpan(Double.NaN, 0, 0, 0, 0, 0, 0, 0, 1, NOTHING, 1, 0);

  /** After {@code dt} seconds with {@code given}, the newest reading being {@code readC}. */
  ConstantSpan next(double readC, double dt, double given, boolean commanded) {
    if (Double.isNaN(readC)) {
      return START;
    }
    double u = commanded ? 1 : 0;
    if (Double.compare(readC, celsius) != 0) {
      return began(readC, dt, u);
    }
    double now = sum + given * dt;
    double age = Math.min(LONG_S, ageS + dt);
    double duty = dutyS + u * dt;
    if (age < entries * stepS) {
      return new ConstantSpan(
          readC, age, slope, dutyBefore, usualS, lastK, flips, duty, stepS, sums, entries, now);
    }
    double[] kept = sums.copy();
    int n = entries;
    double step = stepS;
    if (n == KEPT) {
      n = KEPT / 2;
      step = 2 * stepS;
      for (int i = 0; i < n; i++) {
        kept[i] = kept[2 * i];
      }
    }
    kept[n] = now;
    return new ConstantSpan(
        readC,
        age,
        slope,
        dutyBefore,
        usualS,
        lastK,
        flips,
        duty,
        step,
        Row.owning(kept),
        n + 1,
        now);
  }

  private ConstantSpan began(double readC, double dt, double u) {
    boolean first = Double.isNaN(celsius);
    double spanS = Math.max(0.5, ageS + dt);
    double share = first ? 1 : HeatLag.share(spanS, BEFORE_S);
    double rate = first ? 0 : (readC - celsius) / spanS;
    double duty = first ? u : (dutyS + u * dt) / spanS;
    double changeK = first ? 0 : readC - celsius;
    double flip = changeK * lastK < 0 ? 1 : 0;
    return new ConstantSpan(
        readC,
        0,
        slope + share * (rate - slope),
        dutyBefore + share * (duty - dutyBefore),
        first ? 0 : usualS + USUAL_SHARE * (spanS - usualS),
        changeK,
        flips + USUAL_SHARE * (flip - flips),
        0,
        1,
        NOTHING,
        1,
        0);
  }

  /** The same probe with its habit, whose value is watched from now on. */
  ConstantSpan anew() {
    return new ConstantSpan(
        celsius, 0, slope, dutyBefore, usualS, lastK, flips, 0, 1, NOTHING, 1, 0);
  }

  /** The integral over the second half of this time less that over the first. */
  double more() {
    int last = entries - 1;
    int half = last / 2;
    return sums.at(2 * half) - 2 * sums.at(half);
  }

  /**
   * How far a body that follows what was given with a lag would have moved in this time, first
   * order and in the unit of what was given: what the first seconds gave is where it rested.
   *
   * @param lagS its time constant, s
   */
  double followed(double lagS) {
    int rest = (int) Math.ceil(RESTS_S / stepS);
    if (entries <= rest) {
      return 0;
    }
    double from = sums.at(rest) / (rest * stepS);
    double share = -Math.expm1(-stepS / lagS);
    double moved = 0;
    for (int i = rest; i + 1 < entries; i++) {
      double mean = (sums.at(i + 1) - sums.at(i)) / stepS;
      moved += share * (mean - from - moved);
    }
    return moved;
  }

  /**
   * A live probe would have moved by its own habit; unknown until it has one. A quiet one that has
   * come to rest in the air of the room stands still as well: the habit of a course says nothing
   * then, only that of its noise, a stop dead, or a value that no room has.
   */
  boolean outlasts() {
    return usualS > 0
        && ageS >= FROZEN_S
        && ageS >= FROZEN_SPANS * usualS
        && (flips >= NOISY || stoppedDead());
  }

  /** Whether it did not come to rest in the air of a room: it went too fast, or is too warm. */
  boolean stoppedDead() {
    return Math.abs(slope) >= STOPS || celsius >= RoomLimit.MAX_READ_C;
  }

  /** Mean commanded duty in this time. */
  double duty() {
    return ageS > 0 ? dutyS / ageS : 0;
  }
}
