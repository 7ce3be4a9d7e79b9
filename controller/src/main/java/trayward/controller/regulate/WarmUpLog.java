package trayward.controller.regulate;

/**
 * What a warm-up showed: heat second by second, and every reading with its time. Only ever added
 * to, by one thread; another may read what was there when it was handed the {@link #view}.
 *
 * <p>Bounded: a bath that has not arrived after {@link #MAX_S} is not warming up but held back, and
 * teaches nothing more.
 */
final class WarmUpLog {

  /** Three hours: 3 L under 150 W take one and a half. */
  static final int MAX_S = 10_800;

  private final long beganNanos;
  private final float[] heat = new float[MAX_S];
  private final Samples bath = new Samples();
  private final Samples plate = new Samples();
  private int seconds;
  private double pendingS;
  private double pendingHeatS;

  /** Readings of one probe. */
  static final class Samples {
    final float[] atS = new float[MAX_S];
    final float[] celsius = new float[MAX_S];
    int count;

    void add(double seconds, double value) {
      if (count < MAX_S && seconds >= 0) {
        atS[count] = (float) seconds;
        celsius[count] = (float) value;
        count++;
      }
    }
  }

  /**
   * A stretch of it that no longer changes.
   *
   * @param log the log
   * @param seconds whole seconds of heat
   * @param bathCount readings of the bath probe
   * @param plateCount readings of the plate probe; 0 where there is none
   */
  record View(WarmUpLog log, int seconds, int bathCount, int plateCount) {

    /** Share of second {@code i} the heater was on. */
    double heat(int i) {
      return log.heat[i];
    }

    double bathAtS(int i) {
      return log.bath.atS[i];
    }

    double bathC(int i) {
      return log.bath.celsius[i];
    }

    double plateAtS(int i) {
      return log.plate.atS[i];
    }

    double plateC(int i) {
      return log.plate.celsius[i];
    }
  }

  WarmUpLog(long beganNanos) {
    this.beganNanos = beganNanos;
  }

  /** The heater has been on or off for {@code elapsedS}. */
  void heat(double elapsedS, boolean on) {
    double left = elapsedS;
    while (left > 0 && seconds < MAX_S) {
      double part = Math.min(left, 1 - pendingS);
      pendingS += part;
      pendingHeatS += on ? part : 0;
      left -= part;
      if (pendingS > 1 - 1e-6) {
        heat[seconds++] = (float) Math.min(1, pendingHeatS);
        pendingS = 0;
        pendingHeatS = 0;
      }
    }
  }

  void bath(double celsius, long takenNanos) {
    bath.add((takenNanos - beganNanos) / 1e9, celsius);
  }

  void plate(double celsius, long takenNanos) {
    plate.add((takenNanos - beganNanos) / 1e9, celsius);
  }

  int seconds() {
    return seconds;
  }

  boolean full() {
    return seconds >= MAX_S;
  }

  View view() {
    return new View(this, seconds, bath.count, plate.count);
  }
}
