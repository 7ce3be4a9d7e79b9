package trayward.controller.safety;

import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;

/**
 * A plate colder than believed, and far hotter than its bath all the same, that does not fall, or
 * falls by less than what its bath gains: it is being heated (SR-10). What was believed of it is
 * wrong then: it was learned while a probe lied or the tray was lifted. Pure.
 */
final class HeatedPlate {

  /** A believed room is wrong by ten at most, and probes by half a kelvin each, K. */
  private static final double WARM_K = 12;

  /** Plate over bath that only heat keeps up: without it the slowest falls by 0.02 K/s of it, K. */
  private static final double HEATED_K = 4;

  /** Of the fall of the slowest plate without heat, gap over 190 s: less is no fall. */
  private static final double FALLS_PER_S = 0.4 / 190;

  /** Liquid may be a tenth less than declared, and some of it evaporated. */
  private static final double LIQUID_MIN = 0.8;

  /** Share of the heater beyond noise: 0.01 K/s of a litre are 33 W. */
  private static final double GAINS_SHARE = 0.2;

  private HeatedPlate() {}

  static boolean is(TrayModel model, RoomModel room, ReadingTrail bath, ReadingTrail plate) {
    double gap = plate.median() - bath.median();
    boolean warm = plate.median() >= Math.min(RoomLimit.MAX_READ_C, room.airC() + WARM_K);
    double bathW = LIQUID_MIN * TrayModel.LITRE_J_PER_K * model.liquidL() * bath.slope();
    double plateW = -PlateGrid.CAPACITY_MAX * Math.min(0, plate.slope());
    boolean gains = bathW - plateW >= GAINS_SHARE * model.heaterW();
    return warm && gap >= HEATED_K && (gains || plate.slope() >= -FALLS_PER_S * gap);
  }
}
