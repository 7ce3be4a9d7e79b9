package trayward.controller.safety;

import trayward.controller.event.TripCause;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;

/**
 * A bath probe that answers freshly with an old value, told from one in a bath that rests: by heat
 * that must have moved it (SR-08). A value.
 *
 * @param span the time of one value
 * @param given what gives the bath its heat, lagged: plate temperature, °C; without a plate probe
 *     the least power of the heater, W
 * @param pokedS time heat has been held off to see the reading move, s; 0 where it is not
 * @param pokeDuty mean duty before that
 * @param calmS time since the bath last moved faster than its heater can move it, s
 */
record FrozenBath(ConstantSpan span, double given, double pokedS, double pokeDuty, double calmS) {

  static final FrozenBath START = new FrozenBath(ConstantSpan.START, 0, 0, 0, 0);

  /** A reading that stood this long in a heated bath is poked: heat off until it moves, s. */
  private static final double POKE_AFTER_S = 600;

  /** From 45 °C up a bath covered by hand nears 55 °C on its own holding heat: sooner, s. */
  private static final double POKE_HOT_AFTER_S = 300;

  private static final double HOT_C = 45;

  /** Less heat than this is not missed in any useful time, duty. */
  private static final double POKE_DUTY = 0.05;

  /** Within this fall a live reading, rounded to 1/16 K, has moved, K. */
  private static final double POKE_K = 0.15;

  /** Two time constants of a slow plate: 1800 J/K over 12 W/K, s. */
  private static final double COAST_S = 300;

  /** Heat felt later than this by the reading itself is not yet missing, s: lag and age. */
  private static final Lag FELT = Lag.of(10);

  /** A plate passes heat on within capacity over coupling, at most, s: 1900 J/K over 11 W/K. */
  private static final Lag BLIND = Lag.of(170);

  private static final double POWER_MIN = PlateGrid.POWER_MIN;

  /** Pours may have doubled the liquid, and small trays take a jug or two besides, L. */
  private static final double LIQUID_MAX = 2;

  private static final double JUGS_L = 0.6;

  /** Two halves, each within a step of 1/16 K, differ by an eighth; a sixth leaves room. */
  private static final double STEPS_K = 1.0 / 6;

  /** Shortest time judged, s. */
  private static final double SHORT_S = 30;

  /** A warm-up that stops dead under the same heat: by what the reading has missed, K. */
  private static final double MISSED_K = 3;

  private static final double KINK_S = 40;

  /** Under this the course before was rest, K/s. */
  private static final double MOVING = 0.006;

  /**
   * A hot pour rises too, and then stops: faster than 1.5 times the heater, and than noise, K/s.
   */
  private static final double POURED = 1.5;

  private static final double POURED_K_PER_S = 0.05;

  /** After a pour the course before is forgotten: four times the memory of it, s. */
  private static final double CALM_S = 120;

  private static final double LONG_S = 1e6; // saturates

  /** Share of the duty before that still counts as the same heat, and what counts as heat. */
  private static final double SAME_DUTY = 0.9;

  private static final double SOME_DUTY = 0.3;

  FrozenBath next(ThermalInput in, double bathSlope, TrayModel model) {
    double dt = in.elapsedS();
    boolean seesPlate = in.plate().known();
    double target =
        seesPlate
            ? in.plate().celsius()
            : POWER_MIN * model.heaterW() * (in.heatCommanded() ? 1 : 0);
    boolean first = Double.isNaN(span.celsius()) && seesPlate;
    double share = (seesPlate ? FELT : BLIND).share(dt);
    double slow = first ? target : given + share * (target - given);
    ConstantSpan now = span.next(in.bath().celsius(), dt, slow, in.heatCommanded());
    boolean pokes =
        in.state().purged()
            && now.ageS() >= (now.celsius() >= HOT_C ? POKE_HOT_AFTER_S : POKE_AFTER_S)
            && (pokedS > 0 || now.duty() >= POKE_DUTY);
    double calm = Math.abs(bathSlope) > poured(model) ? 0 : Math.min(LONG_S, calmS + dt);
    return pokes
        ? new FrozenBath(now, slow, pokedS + dt, pokedS > 0 ? pokeDuty : now.duty(), calm)
        : new FrozenBath(now, slow, 0, 0, calm);
  }

  /** Heat is to be held off until the reading moves. */
  boolean pokes() {
    return pokedS > 0;
  }

  /** Held off so long that a bath which needed that heat has cooled by more than a step. */
  boolean pokedInVain(TrayModel model) {
    double neededW = POWER_MIN * model.heaterW() * pokeDuty;
    return pokes() && pokedS >= COAST_S + bathMax(model) * POKE_K / neededW;
  }

  private static double poured(TrayModel model) {
    double heated = model.heaterW() / (TrayModel.LITRE_J_PER_K * model.liquidL());
    return Math.max(POURED_K_PER_S, POURED * heated);
  }

  private static double bathMax(TrayModel model) {
    return TrayModel.LITRE_J_PER_K * (LIQUID_MAX * model.liquidL() + JUGS_L);
  }

  /** A bath this far above the room must cool where no heat comes: only then is it no rest, K. */
  private static final double WARM_K = 3;

  /**
   * Whether heat was given that no resting bath could have swallowed. Near room temperature a bath
   * without heat stands still as well: with no plate to look at that is left to the energy account.
   *
   * @param wPerK least coupling of plate and bath; NaN where no plate is seen
   */
  boolean found(TrayModel model, RoomModel room, double wPerK) {
    boolean blind = Double.isNaN(wPerK);
    boolean must = !blind || span.celsius() > room.airC() + WARM_K;
    double moreJ = blind ? span.more() : wPerK * span.more();
    return (must && span.ageS() >= SHORT_S && moreJ > bathMax(model) * STEPS_K) || kink();
  }

  /** Whether the reading has stood still, and does yet. */
  boolean stands() {
    return span.ageS() >= SHORT_S;
  }

  /** Why heat does not move this reading: frozen, or live where no heat comes. */
  TripCause name() {
    return span.outlasts() ? TripCause.BATH_PROBE_BAD : TripCause.HEAT_NOT_ARRIVING;
  }

  /** No loss changes by just what the heat was bringing, to within one step of the reading. */
  private boolean kink() {
    return span.slope() > MOVING
        && calmS >= span.ageS() + CALM_S
        && span.ageS() >= Math.max(KINK_S, MISSED_K / span.slope())
        && span.duty() >= SOME_DUTY
        && span.duty() >= SAME_DUTY * span.dutyBefore();
  }
}
