package trayward.host.app;

import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import trayward.controller.regulate.RecordedWarmUp;
import trayward.host.report.TraceTable;

/** Finds the first warm-up in a trace. Stateless. */
final class WarmUpFinder {

  /** A bath this close to its set temperature is not warming up, K. */
  private static final double FAR_K = 3;

  /** A rise smaller than this teaches nothing of a tray, K. */
  static final double RISE_K = 5;

  /** From here on it has arrived, K under set. */
  private static final double ARRIVED_K = 0.3;

  /** So much of the hold teaches losses; more brings sheets and pours, s. */
  private static final double HOLD_S = 600;

  /**
   * A fall like this no loss can make: something cold came in, and all before it is the warm-up.
   */
  private static final double FALL_K = 0.5;

  private static final double FALL_S = 5;

  /** A pour is felt this much before it shows, s. */
  private static final double BEFORE_S = 10;

  /** A reading shows what was true a 12-bit conversion ago, by the probe's data sheet, s. */
  private static final double AGE_S = 0.75;

  /** A probe is read once a second, also where it reads the same. */
  private static final double SAMPLE_S = 1;

  /** Readings of so long before it make the beginning, s. */
  private static final double REST_S = 10;

  private WarmUpFinder() {}

  /**
   * A warm-up that was found.
   *
   * @param record what a controller could know of it
   * @param fromS its beginning, s
   * @param toS its end, s
   * @param fromC bath at its beginning, °C
   * @param toC highest bath reading, °C
   * @param setC set temperature, °C
   */
  record Found(
      RecordedWarmUp record, double fromS, double toS, double fromC, double toC, double setC) {}

  static Optional<Found> find(TraceTable t) {
    int from = 0;
    while (from < t.rows()) {
      while (from < t.rows() && !(t.heat(from) && t.setC(from) - t.bathC(from) >= FAR_K)) {
        from++;
      }
      if (from < t.rows()) {
        int to = end(t, from);
        double top = highest(t, from, to);
        if (top - t.bathC(from) >= RISE_K) {
          return Optional.of(found(t, from, to, top));
        }
        from = Math.max(to, from) + 1;
      }
    }
    return Optional.empty();
  }

  private static double highest(TraceTable t, int from, int to) {
    double top = Double.NEGATIVE_INFINITY;
    for (int i = from; i < to; i++) {
      top = t.bathC(i) > top ? t.bathC(i) : top;
    }
    return top;
  }

  /** The row after its last. */
  private static int end(TraceTable t, int from) {
    double arrivedS = Double.POSITIVE_INFINITY;
    int back = from;
    for (int i = from + 1; i < t.rows(); i++) {
      double now = t.timeS(i);
      while (now - t.timeS(back) > FALL_S) {
        back++;
      }
      boolean over =
          t.setC(i) != t.setC(from)
              || now - t.timeS(from) >= RecordedWarmUp.MAX_S
              || now > arrivedS + HOLD_S
              || now - t.timeS(i - 1) > FALL_S;
      if (over) {
        return i;
      }
      if (t.bathC(back) - t.bathC(i) > FALL_K) {
        return before(t, i, from);
      }
      if (t.bathC(i) >= t.setC(i) - ARRIVED_K) {
        arrivedS = Math.min(arrivedS, now);
      }
    }
    return t.rows();
  }

  private static int before(TraceTable t, int row, int from) {
    int i = row;
    while (i > from && t.timeS(row) - t.timeS(i) < BEFORE_S) {
      i--;
    }
    return i;
  }

  private static Found found(TraceTable t, int from, int to, double topC) {
    double bathC = start(t, from, t::bathC);
    double plateC = start(t, from, t::plateC);
    RecordedWarmUp record = new RecordedWarmUp(Double.isNaN(plateC) ? bathC : plateC, bathC);
    double zeroS = t.timeS(from);
    Sampler bath = new Sampler(record::bath);
    Sampler plate = new Sampler(record::plate);
    for (int i = from; i < to; i++) {
      double atS = t.timeS(i) - zeroS;
      bath.see(t.bathC(i), atS);
      plate.see(t.plateC(i), atS);
      double nextS = i + 1 < t.rows() ? t.timeS(i + 1) - zeroS : atS;
      record.heat(Math.min(FALL_S, nextS - atS), t.heat(i));
    }
    return new Found(record, zeroS, t.timeS(to - 1), bathC, topC, t.setC(from));
  }

  /** Mean of the readings just before it, where no heat came into them. */
  private static double start(TraceTable t, int from, IntToDoubleFunction celsius) {
    double sum = 0;
    int count = 0;
    for (int i = from; i >= 0 && t.timeS(from) - t.timeS(i) <= REST_S; i--) {
      double c = celsius.applyAsDouble(i);
      if (i < from && t.heat(i)) {
        return celsius.applyAsDouble(from);
      }
      if (!Double.isNaN(c)) {
        sum += c;
        count++;
      }
    }
    return count == 0 ? Double.NaN : sum / count;
  }

  /** Makes readings out of rows: one where the value changes, and one a second where it stays. */
  private static final class Sampler {

    @FunctionalInterface
    interface To {
      void reading(double celsius, double atS);
    }

    private final To to;
    private double lastC = Double.NaN;
    private double lastS = Double.NEGATIVE_INFINITY;

    Sampler(To to) {
      this.to = to;
    }

    void see(double celsius, double atS) {
      boolean taken = celsius != lastC || atS - lastS > SAMPLE_S - 1e-6;
      if (Double.isNaN(celsius) || !taken) {
        return;
      }
      if (atS >= AGE_S) {
        to.reading(celsius, atS - AGE_S);
      }
      lastC = celsius;
      lastS = atS;
    }
  }
}
