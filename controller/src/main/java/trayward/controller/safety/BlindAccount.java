package trayward.controller.safety;

import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;

/**
 * The account of heat that no reading answers, kept in blocks of half a minute (SR-10, SR-11).
 * Where a plate is seen, what it may have stored and lost is taken off too. A value.
 *
 * @param blockS time in this block, s
 * @param sumKs integral of the bath reading over it, K s
 * @param leastJ least heat commanded in it, less the most the bath can lose, J
 * @param meanC mean reading of the block before, °C; NaN where there is none
 * @param plateC plate reading at its end, °C; NaN where none is seen
 * @param unansweredJ heat commanded and not seen, J
 * @param risingBlocks blocks in a row in which the bath rose with heat long off
 */
record BlindAccount(
    double blockS,
    double sumKs,
    double leastJ,
    double meanC,
    double plateC,
    double unansweredJ,
    int risingBlocks) {

  static final BlindAccount START = new BlindAccount(0, 0, 0, Double.NaN, Double.NaN, 0, 0);

  /** SR-10. */
  private static final double UNANSWERED_J = 20_000;

  /** Over a third of it after a minute of heat: the rest follows in 90 s. */
  private static final double DECIDES_J = 7500;

  /** Averages noise of 0.05 K to 0.01 K. */
  private static final double BLOCK_S = 30;

  private static final double POWER_MIN = 0.65;

  /** Trays evaporate up to twice the correlation and lose up to 4 W/K, draughts included. */
  private static final double EVAPORATION_MAX = 2;

  private static final double LOSS_MAX = 1.7;

  /** Twice the plate of the reference tray, W/K. */
  private static final double PLATE_LOSS_MAX = 1;

  /** Pours may have doubled the liquid, and small trays take a jug or two besides, L. */
  private static final double LIQUID_MAX = 2;

  private static final double JUGS_L = 0.6;

  /** A slow plate (1800 J/K over 12 W/K) has passed its heat on after two time constants, s. */
  private static final double COASTED_S = 300;

  /** Two minutes of steady rise are no pour. */
  private static final int RISING = 4;

  private static final double RISE_K = 0.1;

  BlindAccount next(ThermalInput in, HeatLag heat, TrayModel model, RoomModel room) {
    if (!in.bath().known()) {
      return START;
    }
    double dt = in.elapsedS();
    double bath = in.bath().celsius();
    double power = in.heatCommanded() ? POWER_MIN * model.heaterW() : 0;
    double least = leastJ + (power - mostLossW(bath, model, room) - plateLossW(in, room)) * dt;
    double time = blockS + dt;
    double sum = sumKs + bath * dt;
    if (time < BLOCK_S) {
      return new BlindAccount(time, sum, least, meanC, plateC, unansweredJ, risingBlocks);
    }
    double mean = sum / time;
    double rise = Double.isNaN(meanC) ? 0 : mean - meanC;
    double capacity = TrayModel.LITRE_J_PER_K * (LIQUID_MAX * model.liquidL() + JUGS_L);
    // A fall is no credit: it may be a cold pour.
    double plateRise = in.plate().celsius() - plateC;
    double storedJ = plateRise > 0 ? PlateGrid.CAPACITY_MAX * plateRise : 0; // NaN is none
    double unanswered = unansweredJ + least - capacity * Math.max(0, rise) - storedJ;
    // A colder bath may be warmed by its room, half a litre of 10 °C by 1.5 K in a block.
    boolean rose =
        heat.offS() >= COASTED_S + BLOCK_S && rise >= RISE_K && mean - rise >= RoomLimit.MAX_READ_C;
    return new BlindAccount(
        0,
        0,
        0,
        mean,
        in.plate().celsius(),
        Math.max(0, Math.min(2 * UNANSWERED_J, unanswered)),
        rose ? Math.min(RISING, risingBlocks + 1) : 0);
  }

  private static double mostLossW(double bath, TrayModel model, RoomModel room) {
    return LOSS_MAX * model.bathLossWPerK() * Math.max(0, bath - room.airC())
        + EVAPORATION_MAX * model.evaporationW(bath, room);
  }

  private static double plateLossW(ThermalInput in, RoomModel room) {
    double warmer = in.plate().celsius() - room.airC();
    return warmer > 0 ? PLATE_LOSS_MAX * warmer : 0;
  }

  boolean unanswered() {
    return unansweredJ >= UNANSWERED_J;
  }

  /** So much is unanswered that the account decides sooner than a look with heat off could. */
  boolean decides() {
    return unansweredJ >= DECIDES_J;
  }

  /** The bath rises where no heat is commanded; OFF is no wonder: somebody may fill the tray. */
  boolean rises(ThermalInput in) {
    return risingBlocks >= RISING && !in.plate().known() && in.state() != State.OFF;
  }
}
