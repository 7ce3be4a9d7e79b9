package trayward.host.app.campaign;

import java.util.EnumMap;
import java.util.Map;
import java.util.TreeMap;
import org.HdrHistogram.Histogram;
import trayward.controller.event.TripCause;

/** Counts over all sessions with one kind of fault. Mutable; one thread. */
final class FaultTally {

  /** Longest detection time counted, tenths of a second: a day; no session is as long. */
  private static final long MOST_TENTHS = 864_000;

  final Map<TripCause, Integer> detectedBy = new EnumMap<>(TripCause.class);
  final Map<String, Integer> states = new TreeMap<>();
  private final Histogram tenths = new Histogram(MOST_TENTHS, 3);
  int sessions;
  int needed;
  int missed;
  int misnamed;
  int preempted;
  double bathC = Double.NEGATIVE_INFINITY;
  double plateC = Double.NEGATIVE_INFINITY;

  void add(FaultOutcome fault, Outcome session) {
    sessions++;
    needed += fault.needed() ? 1 : 0;
    missed += fault.missed() ? 1 : 0;
    misnamed += fault.misnamed() ? 1 : 0;
    preempted += fault.preempted() && fault.trip().isEmpty() ? 1 : 0;
    states.merge(fault.state(), 1, Integer::sum);
    fault
        .trip()
        .ifPresent(
            cause -> {
              detectedBy.merge(cause, 1, Integer::sum);
              tenths.recordValue(Math.min(MOST_TENTHS, Math.round(fault.detectS() * 10)));
            });
    Map<Hazard, Blinding> apart = Blinding.apart(session.plan());
    if (!apart.containsKey(Hazard.BATH_HOT)) {
      bathC = Math.max(bathC, session.bathC());
    }
    if (!apart.containsKey(Hazard.PLATE_HOT)) {
      plateC = Math.max(plateC, session.plateC());
    }
  }

  int detected() {
    return detectedBy.values().stream().mapToInt(Integer::intValue).sum();
  }

  /** Detection time below which this share of them lies, s; NaN where nothing was detected. */
  double detectS(double percent) {
    return tenths.getTotalCount() == 0 ? Double.NaN : tenths.getValueAtPercentile(percent) / 10.0;
  }
}
