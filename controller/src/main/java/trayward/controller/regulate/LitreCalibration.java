package trayward.controller.regulate;

import trayward.controller.quantity.Range;

/**
 * A warm-up done with a measured litre: the one time that shows how many watts the heater really
 * gives. Temperatures show only watts per litre; with the litres known, watts follow. Stateless.
 */
public final class LitreCalibration {

  /** What can be measured into a tray, L: as much as a tray may be declared to hold. */
  public static final Range LITRES = new Range(0.05, 20, "L");

  /**
   * A litre measured with a graduated jug or a kitchen scale, as a share: common practice is within
   * 1 %, where a jug's marks alone are within some 5 %.
   */
  public static final double MEASURED = 0.01;

  /**
   * The heater's watts are free: mains 10 % low and a worn element leave less than three quarters.
   */
  private static final double FREE = 0.35;

  /**
   * A wall that stays as believed is counted with the litre once and for all; one left free would
   * take some of the heat of the litre.
   */
  private static final double WALL = 0.2;

  private LitreCalibration() {}

  /**
   * Fits the warm-up of {@code lesson} anew, with just {@code litres} in the tray and free watts.
   * What was believed of plate and losses was learned under other watts, and is doubted like a
   * declaration. Takes up to some seconds.
   */
  public static FitResult refit(TrayLesson lesson, double litres) {
    FitJob job = lesson.found().job();
    TrayModel m = job.prior().model();
    TrayModel measured =
        new TrayModel(
            litres,
            m.areaM2(),
            m.plateJPerK(),
            m.plateToBathWPerK(),
            m.bathLossWPerK(),
            m.plateLossWPerK(),
            m.heaterW(),
            m.evaporationFactor());
    TrayDoubt d = TrayDoubt.DECLARED;
    TrayDoubt doubt =
        new TrayDoubt(
            FREE,
            d.plate(),
            d.coupling(),
            MEASURED,
            d.loss(),
            d.evaporation(),
            d.bathLag(),
            d.plateLag(),
            WALL);
    return new FitJob(
            job.view(),
            job.room(),
            new TrayBelief(
                measured, job.prior().bathLagS(), job.prior().plateLagS(), job.prior().wallJPerK()),
            doubt,
            job.plateStartC(),
            job.bathStartC(),
            FitPoint.PRIOR)
        .runThorough();
  }
}
