package trayward.host.heat;

import java.util.Optional;

/**
 * The quickest way to a temperature with perfect knowledge of the tray: full heat until a switching
 * time, then none, so that the coast peaks where it may. No regulator is quicker. Immutable.
 *
 * @param heatedS time of full heat, s
 * @param reachedS time after which the bath is within the band and stays, s
 * @param peakC temperature at which the coast peaks, °C
 * @param plateC highest temperature of the plate, °C
 */
public record WarmUp(double heatedS, double reachedS, double peakC, double plateC) {

  /** Half width of the band around a set temperature, K, as the tray's own times are measured. */
  public static final double BAND_K = 0.2;

  /** Step of the integration, s: small beside the quickest tray, 2 s of plate into bath. */
  private static final double STEP_S = 0.5;

  /** Longest time looked ahead, s: six hours, as for the simulated tray. */
  private static final double LONGEST_S = 21_600;

  /** The switching time is found to this, s. */
  private static final double SWITCH_S = 1e-3;

  /** What one course came to. */
  private record Course(double reachedS, double peakC, double plateC) {}

  /**
   * The quickest warm-up.
   *
   * @param tray the tray
   * @param from where it begins
   * @param setC set temperature, °C
   * @param overK how far above the coast may peak, K: 0, or {@link #BAND_K} for the soonest
   * @return empty where all its heat does not get there in six hours; no heat at all and 0 s where
   *     the bath is within the band or above it
   */
  public static Optional<WarmUp> of(
      HeatedTray tray, HeatedTray.At from, double setC, double overK) {
    double lowC = setC - BAND_K;
    double highC = setC + overK;
    double early = 0;
    double late = secondsOfHeatTo(tray, from, highC);
    if (late >= LONGEST_S) {
      early = late;
    }
    while (late - early > SWITCH_S) {
      double middle = (early + late) / 2;
      if (course(tray, from, middle, lowC).peakC() > highC) {
        late = middle;
      } else {
        early = middle;
      }
    }
    Course best = course(tray, from, early, lowC);
    return best.peakC() < lowC
        ? Optional.empty()
        : Optional.of(new WarmUp(early, best.reachedS(), best.peakC(), best.plateC()));
  }

  /** Full heat until the bath is there, s; {@link #LONGEST_S} where it never is. */
  private static double secondsOfHeatTo(HeatedTray tray, HeatedTray.At from, double bathC) {
    HeatedTray.At at = from;
    double seconds = 0;
    while (at.bathC() < bathC && seconds < LONGEST_S) {
      at = tray.heated(at, STEP_S);
      seconds += STEP_S;
    }
    return seconds;
  }

  /** Heated for so long, then left alone until it no longer rises. */
  private static Course course(HeatedTray tray, HeatedTray.At from, double heatedS, double lowC) {
    HeatedTray.At at = from;
    double seconds = 0;
    double reachedS = 0;
    double plateC = from.plateC();
    boolean rising = true;
    while (rising && seconds < 2 * LONGEST_S) {
      boolean heated = seconds < heatedS;
      double step = heated ? Math.min(STEP_S, heatedS - seconds) : STEP_S;
      HeatedTray.At next = heated ? tray.heated(at, step) : tray.coasted(at, step);
      rising = heated || next.bathC() > at.bathC();
      if (at.bathC() < lowC && next.bathC() >= lowC) {
        reachedS = seconds + step * (lowC - at.bathC()) / (next.bathC() - at.bathC());
      }
      seconds += step;
      plateC = Math.max(plateC, next.plateC());
      at = rising ? next : at;
    }
    return new Course(reachedS, at.bathC(), plateC);
  }

  /**
   * The smallest heater, W, that warms up in {@code seconds}, to the watt above; empty where {@code
   * mostW} does not.
   */
  public static Optional<Double> leastWatts(
      HeatedTray tray, HeatedTray.At from, double setC, double seconds, double mostW) {
    if (!within(tray.heatedBy(mostW), from, setC, seconds)) {
      return Optional.empty();
    }
    double least = 1;
    double most = mostW;
    while (most - least > 0.5) {
      double middle = (least + most) / 2;
      if (within(tray.heatedBy(middle), from, setC, seconds)) {
        most = middle;
      } else {
        least = middle;
      }
    }
    return Optional.of(Math.ceil(most));
  }

  private static boolean within(HeatedTray tray, HeatedTray.At from, double setC, double seconds) {
    return of(tray, from, setC, 0).filter(w -> w.reachedS() <= seconds).isPresent();
  }
}
