package trayward.controller.regulate;

/** What the last scans saw, to be run through again. Bounded; mutable; scan thread only. */
final class ScanMemory {

  private final int size;
  private final double[] elapsedS;
  private final double[] heat;
  private final long[] nanos;
  private final double[] bathC;
  private final long[] bathNanos;
  private final double[] plateC;
  private final long[] plateNanos;
  private int next;

  ScanMemory(int size) {
    this.size = size;
    this.elapsedS = new double[size];
    this.heat = new double[size];
    this.nanos = new long[size];
    this.bathC = new double[size];
    this.bathNanos = new long[size];
    this.plateC = new double[size];
    this.plateNanos = new long[size];
  }

  /** Remembers a scan; temperatures are NaN where there is no new reading. */
  void put(double h, double u, long now, double bath, long bathAt, double plate, long plateAt) {
    elapsedS[next] = h;
    heat[next] = u;
    nanos[next] = now;
    bathC[next] = bath;
    bathNanos[next] = bathAt;
    plateC[next] = plate;
    plateNanos[next] = plateAt;
    next = (next + 1) % size;
  }

  /**
   * Runs {@code o} through the scans from {@code from} scans ago to {@code to} ago, at most as many
   * as are remembered.
   *
   * @return how far the last reading of the bath was from what was predicted, standard deviations
   */
  double replay(TrayObserver o, int from, int to) {
    double scaled = 0;
    for (int k = Math.min(from, size); k > to; k--) {
      int i = Math.floorMod(next - k, size);
      o.advance(elapsedS[i], heat[i], nanos[i]);
      if (!Double.isNaN(bathC[i])) {
        scaled = o.bath(bathC[i], bathNanos[i]);
      }
      if (!Double.isNaN(plateC[i])) {
        o.plate(plateC[i], plateNanos[i]);
      }
    }
    return scaled;
  }
}
