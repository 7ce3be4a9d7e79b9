package trayward.controller.safety;

import trayward.controller.regulate.TrayModel;

/**
 * The liquid by the book: said, poured and evaporated, with bounds. A value.
 *
 * <p>The bounds take what was said for true: a level is judged by what became of that. What a jug
 * or a mark on the wall may be off is added where litres are told.
 *
 * @param saidL what the tray is meant to hold: as said, or fuller by a pour since, L
 * @param bestL best estimate of what it holds, L
 * @param lowL least that it may hold, L
 * @param highL most that it may hold, L
 * @param rated a heating rate has overruled what was said: the best estimate follows the rates
 */
record LevelBook(double saidL, double bestL, double lowL, double highL, boolean rated) {

  /** Who fills a tray by a jug or a mark on its wall is right to a tenth: common practice. */
  static final double SAID = 0.1;

  /** Published pools lose 0.74 of the correlation; draughts and warm sheets add: half to twice. */
  private static final double EVAPORATION_MIN = 0.5;

  private static final double EVAPORATION_MAX = 2;

  /** A person said that the tray holds {@code litres}. */
  static LevelBook said(double litres) {
    return new LevelBook(litres, litres, litres, litres, false);
  }

  /**
   * Some time at a measured temperature.
   *
   * @param evaporationW evaporative loss by the correlation, W
   * @param bathC bath temperature, °C
   * @param dt time, s
   */
  LevelBook evaporated(double evaporationW, double bathC, double dt) {
    double lostL = evaporationW * dt / TrayModel.latentJPerG(bathC) / 1000; // 1 g is taken as 1 mL
    return new LevelBook(
        saidL,
        Math.max(0, bestL - lostL),
        Math.max(0, lowL - EVAPORATION_MAX * lostL),
        Math.max(0, highL - EVAPORATION_MIN * lostL),
        rated);
  }

  /**
   * A pour. Who tops up, tops up to the mark: where evaporation may have been strong enough, the
   * tray is taken to be as full as was said; only what is poured beyond makes it fuller than that.
   */
  LevelBook poured(double litres) {
    double least = lowL + litres;
    double best = Math.min(bestL + litres, Math.max(saidL, least));
    return new LevelBook(Math.max(saidL, best), best, least, highL + litres, rated);
  }

  /**
   * The heating rate was seen.
   *
   * @param seen what it allows; where that and the book exclude each other the tray is right
   */
  LevelBook seen(LitreBounds seen) {
    if (against(seen)) {
      return new LevelBook(saidL, seen.bestL(), seen.lowL(), seen.highL(), true);
    }
    double low = Math.max(lowL, seen.lowL());
    double high = Math.min(highL, seen.highL());
    double best = rated ? seen.bestL() : bestL;
    return new LevelBook(saidL, Math.max(low, Math.min(high, best)), low, high, rated);
  }

  /** Whether the book and what was seen exclude each other. */
  boolean against(LitreBounds seen) {
    return seen.highL() < lowL || seen.lowL() > highL;
  }

  /** Share of what was said that is missing by the best estimate. */
  double missing() {
    return 1 - bestL / saidL;
  }

  /** Share of what was said that is missing at least. */
  double surelyMissing() {
    return 1 - highL / saidL;
  }

  /** Water to add to be as full as was said, L. */
  double addL() {
    return Math.max(0, saidL - bestL);
  }
}
