package trayward.controller.regulate;

import java.util.Arrays;

/**
 * Follows plate and bath through their probes' lag, age, noise and rounding: an extended Kalman
 * filter on the believed tray. It also follows what the belief lacks: heat the bath loses or gains
 * unexplained (a cover, a wall, a damp room), heat the plate lacks, and a bath grown by a pour.
 * Mutable; scan thread only.
 *
 * <p>Without a plate probe the plate is the model's, nudged by what the bath does.
 */
final class TrayObserver {

  private static final int PLATE = 0;
  private static final int BATH = 1;
  private static final int PLATE_SENSED = 2;
  private static final int BATH_SENSED = 3;
  private static final int BATH_EXTRA = 4;
  private static final int PLATE_EXTRA = 5;
  private static final int GROWTH = 6;
  private static final int LAG = 7;
  private static final int N = 8;

  /** Variance of a reading, K²: noise 0.02 K and rounding to 1/16 K. */
  private static final double READING_K2 = 0.02 * 0.02 + 1.0 / 16 / 16 / 12;

  /** How fast each state may wander by itself, variance in a second. */
  private static final double[] WANDER = {
    sq(5e-3), sq(1e-3), sq(1e-3), sq(1e-3), sq(2e-5), sq(1e-4), sq(1e-4), 0
  };

  /** What poured or put into a bath may change it by at once, K. */
  private static final double JUMP_K = 1.0;

  /** A pour that cools the bath by a kelvin is some 3 % of it, and a sheet is nothing, 1/K. */
  private static final double GROWTH_PER_K = 0.03;

  /** What a cover or its removal may change, K/s: 60 W on a litre. */
  private static final double COVER_K_PER_S = 0.02;

  /** Half or double the bath, as a logarithm and some more: nobody pours more unnoticed. */
  private static final double MOST_GROWTH = 1;

  /**
   * Unexplained heat of the bath is some of its evaporation, which a cover takes away and a draught
   * may double, and a little besides: 10 W on a litre, K/s.
   */
  private static final double MOST_EVAPORATION = 1.5;

  private static final double SMALL_EXTRA = 0.0025;

  /** Scans remembered to compare a reading with what was predicted for its own time. */
  private static final int REMEMBERED = 48;

  /** Longest step of the covariance, s. */
  private static final double MAX_STEP_S = 2;

  /** What each state follows: every other entry of the linearised tray is nought. */
  private static final int[][] FOLLOWS = {
    {PLATE, BATH, PLATE_EXTRA},
    {PLATE, BATH, BATH_EXTRA, GROWTH},
    {PLATE, PLATE_SENSED},
    {BATH, BATH_SENSED, LAG},
    {BATH_EXTRA},
    {PLATE_EXTRA},
    {GROWTH},
    {LAG}
  };

  private final double[] x = new double[N];
  private final double[][] p = new double[N][N];
  private final double[][] f = new double[N][N];
  private final double[][] work = new double[N][N];
  private final long[] atNanos = new long[REMEMBERED];
  private final double[] plateThen = new double[REMEMBERED];
  private final double[] bathThen = new double[REMEMBERED];
  private int slot;
  private TrayRates rates;
  private double bathLagS;
  private double plateLagS;
  private double share = 1;
  private double wallC;
  private double sinceS;
  private double misfit;

  TrayObserver(TrayBelief belief, RoomModel room, double bathC, double plateC) {
    believe(belief, room);
    x[PLATE] = Double.isNaN(plateC) ? bathC : plateC;
    x[BATH] = bathC;
    x[PLATE_SENSED] = x[PLATE];
    x[BATH_SENSED] = bathC;
    wallC = bathC;
    doubtAll();
    Arrays.fill(atNanos, Long.MIN_VALUE);
  }

  private static double sq(double v) {
    return v * v;
  }

  private void doubtAll() {
    for (double[] row : p) {
      Arrays.fill(row, 0);
    }
    p[PLATE][PLATE] = sq(0.3);
    p[BATH][BATH] = sq(0.1);
    p[PLATE_SENSED][PLATE_SENSED] = sq(0.1);
    p[BATH_SENSED][BATH_SENSED] = sq(0.1);
    p[BATH_EXTRA][BATH_EXTRA] = sq(1e-3);
    p[PLATE_EXTRA][PLATE_EXTRA] = sq(3e-3);
    p[GROWTH][GROWTH] = sq(0.02);
    p[LAG][LAG] = sq(TrayDoubt.DECLARED.bathLag());
  }

  /** Takes another belief; where plate and bath are stays. */
  final void believe(TrayBelief belief, RoomModel room) {
    rates = TrayRates.of(belief, room);
    bathLagS = Math.max(0.5, belief.bathLagS());
    plateLagS = Math.max(0.5, belief.plateLagS());
    share = 1;
  }

  /** Takes what a fit of the whole warm-up says of now: better than what was followed. */
  void place(TrayRun run, double lagDoubt) {
    x[PLATE] = run.plateC;
    x[BATH] = run.bathC;
    x[PLATE_SENSED] = run.plateSensedC;
    x[BATH_SENSED] = run.bathSensedC;
    x[BATH_EXTRA] = 0;
    x[PLATE_EXTRA] = 0;
    x[GROWTH] = 0;
    x[LAG] = 0;
    share = run.share;
    wallC = run.wallC;
    for (double[] row : p) {
      Arrays.fill(row, 0);
    }
    p[PLATE][PLATE] = sq(0.05);
    p[BATH][BATH] = sq(0.02);
    p[PLATE_SENSED][PLATE_SENSED] = sq(0.03);
    p[BATH_SENSED][BATH_SENSED] = sq(0.02);
    p[BATH_EXTRA][BATH_EXTRA] = sq(2e-4);
    p[PLATE_EXTRA][PLATE_EXTRA] = sq(1e-3);
    p[GROWTH][GROWTH] = sq(0.02);
    p[LAG][LAG] = sq(lagDoubt);
    Arrays.fill(atNanos, Long.MIN_VALUE);
  }

  double plateC() {
    return x[PLATE];
  }

  double bathC() {
    return x[BATH];
  }

  /** How fast the bath changes now, K/s. */
  double bathRateKPerS() {
    return (rates.bathRate(x[PLATE], x[BATH], wallC) + x[BATH_EXTRA]) / capacity();
  }

  /** What the bath's probe should say now, °C. */
  double bathSensedC() {
    return x[BATH_SENSED];
  }

  /** The tray's wall as the model has it, °C. */
  double wallC() {
    return wallC;
  }

  /** Heat the bath gets unexplained, K/s of a bath as full as believed. */
  double bathExtra() {
    return x[BATH_EXTRA];
  }

  double plateExtra() {
    return x[PLATE_EXTRA];
  }

  TrayRates rates() {
    return rates;
  }

  /** Lag of the bath's probe, s. */
  double lagS() {
    return bathLagS * Math.exp(x[LAG]);
  }

  /** How much slower the bath follows than a full one as believed: its capacity over that. */
  double capacity() {
    return share * Math.exp(x[GROWTH]);
  }

  /** How badly the readings since {@link #judge} fit: minus twice the logarithm of their odds. */
  double misfit() {
    return misfit;
  }

  /** Begins to judge the fit. */
  void judge() {
    misfit = 0;
  }

  /** Becomes a copy of {@code other}. */
  void copy(TrayObserver other) {
    System.arraycopy(other.x, 0, x, 0, N);
    for (int i = 0; i < N; i++) {
      System.arraycopy(other.p[i], 0, p[i], 0, N);
    }
    System.arraycopy(other.atNanos, 0, atNanos, 0, REMEMBERED);
    System.arraycopy(other.plateThen, 0, plateThen, 0, REMEMBERED);
    System.arraycopy(other.bathThen, 0, bathThen, 0, REMEMBERED);
    slot = other.slot;
    rates = other.rates;
    bathLagS = other.bathLagS;
    plateLagS = other.plateLagS;
    share = other.share;
    wallC = other.wallC;
    sinceS = other.sinceS;
    misfit = other.misfit;
  }

  /**
   * From now on it may be that something was poured or put into the bath.
   *
   * @param sizeK how much that seems to have changed the bath, K; 0 where that is not known yet
   */
  void supposePoured(double sizeK) {
    spread(); // up to this very scan: what comes after it alone is in doubt
    double k = Math.max(JUMP_K, sizeK);
    p[BATH][BATH] += k * k;
    p[BATH][GROWTH] -= GROWTH_PER_K * k * k;
    p[GROWTH][BATH] -= GROWTH_PER_K * k * k;
    p[GROWTH][GROWTH] += sq(GROWTH_PER_K * k);
  }

  /** What changed the bath by {@code sizeK} may have been more liquid, or less, than thought. */
  void doubtGrowth(double sizeK) {
    p[GROWTH][GROWTH] += sq(GROWTH_PER_K * sizeK);
  }

  /** From now on it may be that the bath was covered or uncovered. */
  void supposeCovered() {
    spread();
    p[BATH_EXTRA][BATH_EXTRA] += sq(COVER_K_PER_S);
  }

  /** The heater has been on ({@code u} 1) or off for {@code h} seconds, a scan, until now. */
  void advance(double h, double u, long nowNanos) {
    double plateRate = rates.plateRate(u, x[PLATE], x[BATH]) + x[PLATE_EXTRA];
    double bathRate = bathRateKPerS();
    wallC += (x[BATH] - wallC) * Math.min(1, h * rates.wallPerS());
    x[PLATE_SENSED] += (x[PLATE] - x[PLATE_SENSED]) * Math.min(1, h / plateLagS);
    x[BATH_SENSED] += (x[BATH] - x[BATH_SENSED]) * Math.min(1, h / lagS());
    x[PLATE] += h * plateRate;
    x[BATH] += h * bathRate;
    share = Math.max(TrayRun.LEAST_SHARE, share - h * rates.vanishingPerS(x[BATH]));
    sinceS += h;
    slot = (slot + 1) % REMEMBERED;
    atNanos[slot] = nowNanos;
    plateThen[slot] = x[PLATE_SENSED];
    bathThen[slot] = x[BATH_SENSED];
  }

  /**
   * A reading of the bath that was true at {@code takenNanos}.
   *
   * @return how far it is from what was predicted, standard deviations
   */
  double bath(double celsius, long takenNanos) {
    spread();
    double innovation = celsius - then(takenNanos, bathThen, x[BATH_SENSED]);
    double variance = p[BATH_SENSED][BATH_SENSED] + READING_K2;
    misfit += innovation * innovation / variance + Math.log(variance);
    take(BATH_SENSED, innovation);
    return innovation / Math.sqrt(variance);
  }

  /** A reading of the plate. */
  void plate(double celsius, long takenNanos) {
    spread();
    take(PLATE_SENSED, celsius - then(takenNanos, plateThen, x[PLATE_SENSED]));
  }

  private double then(long nanos, double[] values, double otherwise) {
    for (int k = 0; k < REMEMBERED; k++) {
      int i = Math.floorMod(slot - k, REMEMBERED);
      if (atNanos[i] == Long.MIN_VALUE) {
        return otherwise;
      }
      if (atNanos[i] <= nanos) {
        return values[i];
      }
    }
    return otherwise;
  }

  /** Carries the covariance to now. */
  private void spread() {
    if (sinceS < 1e-9) {
      return;
    }
    double h = Math.min(MAX_STEP_S, sinceS);
    sinceS = 0;
    linearise(h);
    for (int i = 0; i < N; i++) {
      for (int j = 0; j < N; j++) {
        double sum = 0;
        for (int k : FOLLOWS[i]) {
          sum += f[i][k] * p[k][j];
        }
        work[i][j] = sum;
      }
    }
    // work f' + wander
    for (int i = 0; i < N; i++) {
      for (int j = 0; j < N; j++) {
        double sum = 0;
        for (int k : FOLLOWS[j]) {
          sum += work[i][k] * f[j][k];
        }
        p[i][j] = sum;
      }
      p[i][i] += WANDER[i] * h;
    }
  }

  private void linearise(double h) {
    double capacity = capacity();
    for (int i = 0; i < N; i++) {
      f[i][i] = 1;
    }
    f[PLATE][PLATE] -= h * (rates.platePerS() + rates.plateLossPerS());
    f[PLATE][BATH] = h * rates.platePerS();
    f[PLATE][PLATE_EXTRA] = h;
    f[BATH][PLATE] = h * rates.bathPerS() / capacity;
    f[BATH][BATH] -=
        h * (rates.bathPerS() + rates.bathWallPerS() + rates.lossSlope(x[BATH])) / capacity;
    f[BATH][BATH_EXTRA] = h / capacity;
    f[BATH][GROWTH] = -h * bathRateKPerS();
    double plateFollow = -Math.expm1(-h / plateLagS);
    f[PLATE_SENSED][PLATE_SENSED] = 1 - plateFollow;
    f[PLATE_SENSED][PLATE] = plateFollow;
    double bathFollow = -Math.expm1(-h / lagS());
    f[BATH_SENSED][BATH_SENSED] = 1 - bathFollow;
    f[BATH_SENSED][BATH] = bathFollow;
    f[BATH_SENSED][LAG] = -(x[BATH] - x[BATH_SENSED]) * h / lagS();
  }

  private void take(int which, double innovation) {
    double s = p[which][which] + READING_K2;
    for (int i = 0; i < N; i++) {
      work[0][i] = p[i][which] / s;
    }
    for (int i = 0; i < N; i++) {
      x[i] += work[0][i] * innovation;
    }
    for (int i = 0; i < N; i++) {
      work[1][i] = p[which][i];
    }
    for (int i = 0; i < N; i++) {
      for (int j = 0; j < N; j++) {
        p[i][j] -= work[0][i] * work[1][j];
      }
    }
    bound(GROWTH, MOST_GROWTH);
    bound(LAG, MOST_GROWTH);
    bound(BATH_EXTRA, SMALL_EXTRA + MOST_EVAPORATION * rates.evaporationRate(x[BATH]));
  }

  /** What stands at its bound explains no more: the other states must not go on as if it did. */
  private void bound(int which, double most) {
    if (Math.abs(x[which]) > most) {
      x[which] = Math.copySign(most, x[which]);
      for (int i = 0; i < N; i++) {
        if (i != which) {
          p[i][which] = 0;
          p[which][i] = 0;
        }
      }
    }
  }
}
