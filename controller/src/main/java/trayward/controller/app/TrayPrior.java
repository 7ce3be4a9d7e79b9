package trayward.controller.app;

import java.util.Optional;
import trayward.controller.keep.LearnedTray;
import trayward.controller.keep.LearnedTray.Figure;
import trayward.controller.regulate.FitResult;
import trayward.controller.regulate.TrayBelief;
import trayward.controller.regulate.TrayDoubt;
import trayward.controller.regulate.TrayModel;

/**
 * What a regulator begins with: the declared tray, or what an earlier warm-up taught of it with the
 * liquid as declared now. Immutable.
 *
 * @param belief the tray
 * @param doubt how unsure that is
 * @param from the warm-up it comes from; empty for a declaration alone
 */
record TrayPrior(TrayBelief belief, TrayDoubt doubt, Optional<LearnedTray> from) {

  /** Watts declared otherwise by more than this are another heater, or a mistake put right. */
  private static final double SAME_WATTS = 0.005;

  /**
   * Least doubt of a heater measured with a litre: the jug's 1 %, and mains that vary by a percent
   * from day to day, which is two percent of power.
   */
  static final double MEASURED_HEATER = 0.02;

  /** With the watts known, the readings say how much there is, and not the declaration. */
  private static final double UNHEARD_LIQUID = 0.2;

  /**
   * The prior for a tray declared so.
   *
   * @param declared the tray as declared: litres and watts are always heard
   * @param learned what is on record of a tray of this name
   */
  static TrayPrior of(TrayModel declared, Optional<LearnedTray> learned) {
    return learned
        .map(l -> of(declared, l))
        .orElseGet(
            () ->
                new TrayPrior(TrayBelief.declared(declared), TrayDoubt.DECLARED, Optional.empty()));
  }

  private static TrayPrior of(TrayModel declared, LearnedTray l) {
    double moved = Math.abs(Math.log(declared.heaterW() / l.declaredW()));
    boolean measured = l.measured() && moved < SAME_WATTS;
    TrayModel model =
        new TrayModel(
            declared.liquidL(),
            declared.areaM2(),
            l.plate().value(),
            l.coupling().value(),
            l.loss().value(),
            declared.plateLossWPerK(),
            measured ? l.heater().value() : declared.heaterW(),
            l.evaporation().value());
    TrayDoubt floor = TrayDoubt.LEARNED;
    TrayDoubt doubt =
        new TrayDoubt(
            measured ? l.heater().doubt() : TrayDoubt.DECLARED.heater(),
            wider(l.plate(), floor.plate(), moved),
            wider(l.coupling(), floor.coupling(), moved),
            measured ? UNHEARD_LIQUID : TrayDoubt.DECLARED.liquid(),
            wider(l.loss(), floor.loss(), moved),
            wider(l.evaporation(), floor.evaporation(), moved),
            wider(l.bathLag(), floor.bathLag(), 0),
            wider(l.plateLag(), floor.plateLag(), 0),
            wider(l.wall(), floor.wall(), moved));
    return new TrayPrior(
        new TrayBelief(model, l.bathLag().value(), l.plateLag().value(), l.wall().value()),
        doubt,
        Optional.of(l));
  }

  /** Other watts scale, or do not scale, everything learned under the old ones. */
  private static double wider(Figure figure, double floor, double moved) {
    return Math.hypot(Math.max(figure.doubt(), floor), moved);
  }

  /** Whether the heater's watts were measured with a litre and still stand. */
  boolean measured() {
    return from.isPresent() && doubt.heater() < TrayDoubt.DECLARED.heater();
  }

  /**
   * What a warm-up begun with this prior proposes to remember. Watts are what they were: a warm-up
   * shows only watts per litre, so everything else is told under those watts.
   */
  LearnedTray proposal(String name, long epochDay, double declaredW, FitResult found) {
    Figure heater = new Figure(belief.model().heaterW(), doubt.heater());
    double scale = heater.value() / found.belief().model().heaterW();
    return learned(name, epochDay, declaredW, measured(), heater, scale, found);
  }

  /** The same from a warm-up with a measured litre: its watts are measured. */
  static LearnedTray measuredBy(String name, long epochDay, double declaredW, FitResult found) {
    double doubt = Math.max(MEASURED_HEATER, found.doubt().heater());
    Figure heater = new Figure(found.belief().model().heaterW(), doubt);
    return learned(name, epochDay, declaredW, true, heater, 1, found);
  }

  private static LearnedTray learned(
      String name,
      long epochDay,
      double declaredW,
      boolean measured,
      Figure heater,
      double scale,
      FitResult found) {
    TrayModel m = found.belief().model();
    TrayDoubt d = found.doubt();
    return new LearnedTray(
        name,
        epochDay,
        declaredW,
        measured,
        heater,
        new Figure(m.plateJPerK() * scale, d.plate()),
        new Figure(m.plateToBathWPerK() * scale, d.coupling()),
        new Figure(m.bathLossWPerK() * scale, d.loss()),
        new Figure(m.evaporationFactor() * scale, d.evaporation()),
        new Figure(found.belief().bathLagS(), d.bathLag()),
        new Figure(found.belief().plateLagS(), d.plateLag()),
        new Figure(found.belief().wallJPerK() * scale, d.wall()),
        found.rmsK());
  }
}
