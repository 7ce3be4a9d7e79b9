package trayward.controller.scan;

import trayward.controller.port.ProbeRole;
import trayward.controller.safety.Limit;
import trayward.controller.safety.Limits;
import trayward.controller.sense.ProbeLimits;

/** What a probe may plausibly say in each place. Stateless. */
public final class ProbePlaces {

  /** Dilute developer freezes near 0 °C and boils near 100 °C. */
  private static final double BATH_MIN_C = -5;

  private static final double BATH_MAX_C = 100;

  /** Ends of the probe's own range. */
  private static final double PLATE_MIN_C = -5;

  private static final double PLATE_MAX_C = 125;

  /** The colder end of the probe's own range: nobody knows where it hangs. */
  private static final double ANY_MIN_C = -55;

  private ProbePlaces() {}

  /** In a place, under these limits of the interlock. */
  public static ProbeLimits of(ProbeRole role, Limits limits) {
    return switch (role) {
      case BATH, SECOND_BATH -> between(BATH_MIN_C, BATH_MAX_C, limits);
      case PLATE -> between(PLATE_MIN_C, PLATE_MAX_C, limits);
    };
  }

  /** A probe that is configured for no place. */
  public static ProbeLimits anywhere(Limits limits) {
    return between(ANY_MIN_C, PLATE_MAX_C, limits);
  }

  private static ProbeLimits between(double minC, double maxC, Limits limits) {
    long stale = limits.ms(Limit.STALE_S) * 1_000_000L;
    return new ProbeLimits(minC, maxC, limits.get(Limit.RATE_K_PER_S), stale);
  }
}
