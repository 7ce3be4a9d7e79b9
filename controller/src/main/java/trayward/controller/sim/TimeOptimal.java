package trayward.controller.sim;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The physical bound on reaching a set temperature with perfect knowledge of the tray: full power,
 * held at the plate's limit where that binds, until a switching time; then off, so that the coast
 * peaks at the upper edge of the band. Nothing brings the bath into the band to stay sooner. It
 * advances copies of the plant only.
 */
public final class TimeOptimal {

  /** Step of the integration, s; crossings are interpolated within it. */
  private static final double STEP_S = 0.1;

  /** Longest time looked ahead, steps: six hours. */
  private static final int MAX_STEPS = 216_000;

  /** Steps between the states of the warm-up that are kept to start coasts from. */
  private static final int KEPT_EACH = 100;

  /** Less change than this between two kept states, K: nothing more is to come. */
  private static final double SETTLED_K = 1e-6;

  /** The switching time is found to this, steps: a tenth of a millisecond. */
  private static final double SWITCH_STEPS = 1e-3;

  private final Plant from;
  private final double plateLimitC;
  private final double lowC;
  private final double highC;
  private final boolean levelKept;

  private TimeOptimal(Plant from, double limitC, double lowC, double highC, boolean levelKept) {
    this.from = from;
    this.plateLimitC = limitC;
    this.lowC = lowC;
    this.highC = highC;
    this.levelKept = levelKept;
  }

  /**
   * Shortest time, s, after which the bath can be within {@code bandK} of {@code setC} and stay
   * there: 0 where it already can; the time to cool with heat off where it is, or will be, too hot.
   *
   * @param from the plant as it stands; left alone
   * @param setC set temperature, °C
   * @param plateLimitC plate temperature that must not be passed, °C
   * @param bandK half width of the band, K
   * @return empty where six hours do not suffice
   */
  public static OptionalDouble secondsToBand(
      Plant from, double setC, double plateLimitC, double bandK) {
    return new TimeOptimal(from, plateLimitC, setC - bandK, setC + bandK, false).seconds();
  }

  /** The same with the liquid's level kept, as the published numbers of the reference tray are. */
  static OptionalDouble secondsToBandLevelKept(
      Plant from, double setC, double plateLimitC, double bandK) {
    return new TimeOptimal(from, plateLimitC, setC - bandK, setC + bandK, true).seconds();
  }

  private OptionalDouble seconds() {
    if (coastPeakC(from) > highC) {
      return cooling();
    }
    List<Plant> kept = new ArrayList<>();
    Plant plant = new Plant(from);
    int steps = 0;
    boolean settled = false;
    while (!settled && plant.bathC() < highC && steps < MAX_STEPS) {
      Plant before = new Plant(plant);
      kept.add(before);
      for (int i = 0; i < KEPT_EACH && plant.bathC() < highC; i++) {
        heat(plant, STEP_S);
        steps++;
      }
      settled =
          Math.abs(plant.bathC() - before.bathC()) < SETTLED_K
              && Math.abs(plant.plateC() - before.plateC()) < SETTLED_K;
    }
    // Where all heat there is does not pass the band, the bath may still end inside it.
    return entry(plant.bathC() < highC ? steps : lastSwitch(steps, kept));
  }

  /** The latest time to switch off, in steps, from which the coast stays within the band. */
  private double lastSwitch(int steps, List<Plant> kept) {
    double early = 0;
    double late = steps;
    while (late - early > SWITCH_STEPS) {
      double middle = 0.5 * (early + late);
      if (coastPeakC(heatedFor(middle, kept)) > highC) {
        late = middle;
      } else {
        early = middle;
      }
    }
    return early;
  }

  /** Last time at which the bath comes up into the band: heated for so many steps, then off. */
  private OptionalDouble entry(double heatedSteps) {
    Plant plant = new Plant(from);
    double heatedS = heatedSteps * STEP_S;
    double enteredS = 0;
    double beforeC = plant.bathC();
    for (double atS = 0; atS < MAX_STEPS * STEP_S; ) {
      boolean heated = atS < heatedS;
      double hS = heated ? Math.min(STEP_S, heatedS - atS) : STEP_S;
      step(plant, hS, heated ? powerW(plant, hS) : 0);
      double nowC = plant.bathC();
      if (!heated && nowC <= beforeC) {
        break;
      }
      if (beforeC < lowC && nowC >= lowC) {
        enteredS = atS + hS * (lowC - beforeC) / (nowC - beforeC);
      }
      beforeC = nowC;
      atS += hS;
    }
    return beforeC < lowC ? OptionalDouble.empty() : OptionalDouble.of(enteredS);
  }

  /** Heat off from the start: the time at which the bath comes down into the band for good. */
  private OptionalDouble cooling() {
    Plant plant = new Plant(from);
    for (int i = 0; i < MAX_STEPS; i++) {
      double beforeC = plant.bathC();
      step(plant, STEP_S, 0);
      double nowC = plant.bathC();
      if (beforeC > highC && nowC <= highC) {
        return OptionalDouble.of(STEP_S * (i + (beforeC - highC) / (beforeC - nowC)));
      }
    }
    return OptionalDouble.empty();
  }

  /** Highest bath temperature with heat off, by a parabola through the three highest steps. */
  private double coastPeakC(Plant start) {
    Plant plant = new Plant(start);
    double olderC = Double.NaN;
    double beforeC = plant.bathC();
    for (int i = 0; i < MAX_STEPS; i++) {
      step(plant, STEP_S, 0);
      double nowC = plant.bathC();
      if (nowC <= beforeC) {
        double slope = nowC - olderC;
        double bend = 2 * beforeC - olderC - nowC;
        return Double.isNaN(olderC) ? beforeC : beforeC + slope * slope / (8 * bend);
      }
      olderC = beforeC;
      beforeC = nowC;
    }
    return beforeC;
  }

  private Plant heatedFor(double steps, List<Plant> kept) {
    int whole = (int) steps;
    int slot = Math.min(whole / KEPT_EACH, kept.size() - 1);
    Plant plant = new Plant(kept.get(slot));
    for (int i = slot * KEPT_EACH; i < whole; i++) {
      heat(plant, STEP_S);
    }
    heat(plant, (steps - whole) * STEP_S);
    return plant;
  }

  /** Full power, or as much as brings the plate just to its limit. */
  private void heat(Plant plant, double hS) {
    step(plant, hS, powerW(plant, hS));
  }

  private double powerW(Plant plant, double hS) {
    double fullW = plant.parameters().heaterW();
    double riseK = fullW * hS / plant.parameters().plateJPerK();
    if (Math.max(plant.plateC() + riseK, plant.bathC()) < plateLimitC - riseK) {
      return fullW; // far below its limit: no need to look
    }
    Plant full = new Plant(plant);
    full.advance(hS, fullW);
    Plant off = new Plant(plant);
    off.advance(hS, 0);
    // The plate at the end of a step is a straight line over the power, but for microkelvins.
    double spanK = full.plateC() - off.plateC();
    return spanK > 0
        ? fullW * Math.max(0, Math.min(1, (plateLimitC - off.plateC()) / spanK))
        : 0; // a step too short to tell
  }

  private void step(Plant plant, double hS, double heatW) {
    double litres = plant.liquidL();
    plant.advance(hS, heatW);
    if (levelKept) {
      plant.refill(litres);
    }
  }
}
