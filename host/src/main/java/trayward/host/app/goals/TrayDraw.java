package trayward.host.app.goals;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;

/**
 * A random tray of the range the goals speak of, and what its owner declares of it. Each seed is a
 * tray; the generator mixes well, so neighbouring seeds have nothing in common. Immutable.
 *
 * @param seed its seed
 * @param liquidL liquid, L
 * @param declaredL liquid as declared, L: a measuring jug is read within 10 %
 * @param plateJPerK heat capacity of the plate, J/K
 * @param couplingWPerK plate to bath, W/K
 * @param lossWPerK dry losses of the bath, W/K
 * @param evaporation factor on the evaporation
 * @param heaterW heater power, W: up to 15 % weaker than declared
 * @param declaredW heater power as declared, W
 * @param airC the room and the tray at its start, °C
 * @param lagS lag of the bath probe, s
 */
record TrayDraw(
    long seed,
    double liquidL,
    double declaredL,
    double plateJPerK,
    double couplingWPerK,
    double lossWPerK,
    double evaporation,
    double heaterW,
    double declaredW,
    double airC,
    double lagS) {

  /** Set temperature of every session, °C. */
  static final double SET_C = 40;

  /** A heater that needs more to hold is the wrong one for its tray. */
  private static final double MOST_HOLD_DUTY = 0.7;

  /** Half of all draws are good; a thousand bad ones in a row are a mistake in the ranges. */
  private static final int MOST_DRAWS = 1000;

  /** Room for the numbers of the cases between two seeds. */
  private static final int CASES = 16;

  private static final double HUMIDITY = 0.5;
  private static final double DRAUGHT_M_PER_S = 0.15;

  /** The tray of {@code seed}; without a plate probe its heater has 250 W at the most (SR-07). */
  static TrayDraw of(long seed, boolean plateFitted) {
    SplittableRandom random = new SplittableRandom(seed);
    for (int i = 0; i < MOST_DRAWS; i++) {
      TrayDraw draw = draw(seed, random, plateFitted ? 400 : 250);
      if (draw.holdDuty() <= MOST_HOLD_DUTY) {
        return draw;
      }
    }
    throw new IllegalStateException("no tray for seed " + seed);
  }

  private static TrayDraw draw(long seed, SplittableRandom random, double mostW) {
    double litres = between(random, 0.5, 3);
    double declaredW = between(random, 150, mostW);
    return new TrayDraw(
        seed,
        litres,
        rounded(litres * between(random, 0.9, 1.1)),
        between(random, 700, 1800),
        between(random, 12, 25),
        between(random, 1.5, 4),
        between(random, 0.5, 2),
        rounded(declaredW * between(random, 0.85, 1)),
        declaredW,
        between(random, 12, 28),
        between(random, 3, 15));
  }

  private static double between(SplittableRandom random, double from, double to) {
    return rounded(from + (to - from) * random.nextDouble());
  }

  /** As a scenario file has it, so that the file is the very tray. */
  private static double rounded(double value) {
    return Math.round(value * 1000) / 1000.0;
  }

  /** Duty that holds the set temperature. */
  double holdDuty() {
    TrayModel d = TrayModel.REFERENCE;
    TrayModel truth =
        new TrayModel(
            liquidL,
            d.areaM2(),
            plateJPerK,
            couplingWPerK,
            lossWPerK,
            d.plateLossWPerK(),
            heaterW,
            evaporation);
    return truth.holdDuty(SET_C, new RoomModel(airC, HUMIDITY, DRAUGHT_M_PER_S));
  }

  /**
   * Seed of the probes' noise in {@code in}: no two cases hear the same. Scrambled, because the
   * noise comes from a generator whose first numbers are alike for neighbouring seeds.
   */
  long noiseSeed(GoalCase in) {
    long each = seed * CASES + in.number();
    return new SplittableRandom(each).nextInt(Integer.MAX_VALUE);
  }

  /** The tables of a scenario, for {@code in}. */
  String tables(GoalCase in) {
    StringBuilder out = new StringBuilder();
    add(out, "[tray]\nliquid_l = %.3f\nheater_w = %.3f\n", liquidL, heaterW);
    add(out, "plate_j_per_k = %.3f\n", plateJPerK);
    add(out, "plate_to_bath_w_per_k = %.3f\n", couplingWPerK);
    add(out, "bath_loss_w_per_k = %.3f\n", lossWPerK);
    add(out, "evaporation_factor = %.3f\nstart_c = %.3f\n", evaporation, airC);
    add(out, "wall_j_per_k = %.1f\n", in.wallJPerK()); // its coupling is 6 W/K, the default
    add(out, "[room]\nair_c = %.3f\nrelative_humidity = %.2f\n", airC, HUMIDITY);
    add(out, "draught_m_per_s = %.2f\n", DRAUGHT_M_PER_S);
    add(out, "[bath_probe]\nlag_s = %.3f\n", lagS);
    add(out, "[plate_probe]\npresent = %b\n", in.plateFitted());
    add(out, "[model]\nliquid_l = %.3f\nheater_w = %.3f\n", declaredL, declaredW);
    add(out, "[control]\nset_c = %.1f\ncycle_s = %.1f\n", SET_C, in.cycleS());
    return out.toString();
  }

  /** Its numbers by the names a scenario has for them, in order. */
  Map<String, Double> named() {
    Map<String, Double> named = new LinkedHashMap<>();
    named.put("liquid_l", liquidL);
    named.put("declared_l", declaredL);
    named.put("heater_w", heaterW);
    named.put("declared_w", declaredW);
    named.put("plate_j_per_k", plateJPerK);
    named.put("plate_to_bath_w_per_k", couplingWPerK);
    named.put("bath_loss_w_per_k", lossWPerK);
    named.put("evaporation_factor", evaporation);
    named.put("air_c", airC);
    named.put("bath_lag_s", lagS);
    return named;
  }

  private static void add(StringBuilder out, String words, Object... values) {
    out.append(String.format(Locale.ROOT, words, values));
  }
}
