package trayward.host.exposure;

import java.util.ArrayList;
import java.util.List;

/**
 * A test strip in equal steps of stops. Immutable.
 *
 * @param baseS first and shortest exposure, s, above 0
 * @param stepStops from each to the next, above 0
 * @param steps how many, 2 to {@value #MOST_STEPS}
 */
public record TestStrip(double baseS, double stepStops, int steps) {

  /** Most steps: more do not fit a strip of paper. */
  public static final int MOST_STEPS = 20;

  /** Refuses what is out of range. */
  public TestStrip {
    if (!(baseS > 0) || !(stepStops > 0) || steps < 2 || steps > MOST_STEPS) {
      throw new IllegalArgumentException(
          "no strip: " + baseS + " s, " + stepStops + " stops, " + steps + " steps");
    }
  }

  /** What each part has had in all, s, the shortest first: base 2^(k step). */
  public List<Double> totalsS() {
    List<Double> totals = new ArrayList<>();
    for (int k = 0; k < steps; k++) {
      totals.add(Stops.seconds(baseS, k * stepStops));
    }
    return List.copyOf(totals);
  }

  /** What to give one after the other, s: the base to all, then each time to one part less. */
  public List<Double> exposuresS() {
    List<Double> totals = totalsS();
    List<Double> each = new ArrayList<>();
    for (int k = 0; k < steps; k++) {
      each.add(k == 0 ? baseS : totals.get(k) - totals.get(k - 1));
    }
    return List.copyOf(each);
  }
}
