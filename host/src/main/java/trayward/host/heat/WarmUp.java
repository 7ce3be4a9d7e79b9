package trayward.host.heat;

import java.util.ArrayList;
import java.util.List;
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

  /** Step of the integration, s: half of the quickest tray, 100 J/K at 100 W/K into a bath. */
  private static final double STEP_S = 0.5;

  /** Longest time looked ahead, steps: six hours, as for the simulated tray. */
  private static final int LONGEST = 43_200;

  /** The switching time is found to this, s. */
  private static final double SWITCH_S = 1e-3;

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
    double highC = setC + overK;
    List<HeatedTray.At> heated = heatedTo(tray, from, highC);
    double late = (heated.size() - 1) * STEP_S;
    double early = heated.get(heated.size() - 1).bathC() < highC ? late : 0;
    while (late - early > SWITCH_S) {
      double middle = (early + late) / 2;
      if (last(coast(tray, off(tray, heated, middle))).bathC() > highC) {
        late = middle;
      } else {
        early = middle;
      }
    }
    HeatedTray.At off = off(tray, heated, early);
    List<HeatedTray.At> coast = coast(tray, off);
    double lowC = setC - BAND_K;
    if (last(coast).bathC() < lowC) {
      return Optional.empty();
    }
    double reachedS =
        off.bathC() >= lowC ? crossingS(heated, lowC) : early + crossingS(coast, lowC);
    double plateC = Math.max(from.plateC(), off.plateC());
    return Optional.of(new WarmUp(early, reachedS, last(coast).bathC(), plateC));
  }

  /** Full heat, step by step, until the bath is there or the time is over. */
  private static List<HeatedTray.At> heatedTo(HeatedTray tray, HeatedTray.At from, double bathC) {
    List<HeatedTray.At> steps = new ArrayList<>(List.of(from));
    while (last(steps).bathC() < bathC && steps.size() <= LONGEST) {
      steps.add(tray.heated(last(steps), STEP_S));
    }
    return steps;
  }

  /** Where it stands when it is switched off at a time. */
  private static HeatedTray.At off(HeatedTray tray, List<HeatedTray.At> heated, double seconds) {
    int whole = (int) (seconds / STEP_S);
    return tray.heated(heated.get(whole), seconds - whole * STEP_S);
  }

  /** Without heat, step by step, until it no longer rises. */
  private static List<HeatedTray.At> coast(HeatedTray tray, HeatedTray.At from) {
    List<HeatedTray.At> steps = new ArrayList<>(List.of(from));
    HeatedTray.At next = tray.coasted(from, STEP_S);
    while (next.bathC() > last(steps).bathC() && steps.size() <= LONGEST) {
      steps.add(next);
      next = tray.coasted(next, STEP_S);
    }
    return steps;
  }

  /**
   * When a rising bath first is at a temperature, s from the first step on; 0 where it begins
   * there.
   */
  private static double crossingS(List<HeatedTray.At> steps, double bathC) {
    for (int i = 1; i < steps.size(); i++) {
      double before = steps.get(i - 1).bathC();
      double now = steps.get(i).bathC();
      if (before < bathC && now >= bathC) {
        return (i - 1 + (bathC - before) / (now - before)) * STEP_S;
      }
    }
    return 0;
  }

  private static HeatedTray.At last(List<HeatedTray.At> steps) {
    return steps.get(steps.size() - 1);
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
