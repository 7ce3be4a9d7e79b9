package trayward.controller.calibrate;

/** The last half minute of good readings of one probe, uncorrected. Mutable; one thread. */
public final class StandWindow {

  private static final double NANOS_PER_S = 1e9;

  /** Readings closer together than this are the same conversion read twice, s. */
  private static final double APART_S = 0.45;

  /** After a gap like this the probe may hang elsewhere, s: what was before says nothing. */
  private static final double GAP_S = 5;

  /** Room for {@link Stand#TAKING_S} of readings at their closest. */
  private static final int ROOM = 68;

  private final double[] celsius = new double[ROOM];
  private final double[] takenS = new double[ROOM];
  private int first;
  private int count;
  private Stand stand = Stand.NONE;

  /** A good reading; one that was seen already changes nothing. */
  public void add(double rawC, long takenNanos) {
    double nowS = takenNanos / NANOS_PER_S;
    if (count > 0) {
      double sinceS = nowS - takenS[at(count - 1)];
      if (sinceS >= 0 && sinceS < APART_S) {
        return;
      }
      count = sinceS < 0 || sinceS > GAP_S ? 0 : count;
    }
    while (count == ROOM || (count > 0 && nowS - takenS[at(0)] > Stand.TAKING_S)) {
      first = at(1);
      count--;
    }
    celsius[at(count)] = rawC;
    takenS[at(count)] = nowS;
    count++;
    stand = summary();
  }

  /** How the probe has stood. */
  public Stand stand() {
    return stand;
  }

  private int at(int i) {
    return (first + i) % ROOM;
  }

  private Stand summary() {
    double sum = 0;
    for (int i = 0; i < count; i++) {
      sum += celsius[at(i)];
    }
    double mean = sum / count;
    double squares = 0;
    for (int i = 0; i < count; i++) {
      double off = celsius[at(i)] - mean;
      squares += off * off;
    }
    double scatter = count < 2 ? Double.NaN : Math.sqrt(squares / (count - 1));
    return new Stand(count, takenS[at(count - 1)] - takenS[at(0)], mean, scatter);
  }
}
