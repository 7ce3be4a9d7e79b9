package trayward.controller.regulate;

/**
 * A tray's equations divided by its heat capacities: all that temperatures can show. Immutable.
 *
 * <pre>
 *   dTp/dt = heat u - plate (Tp - Tb) - plateLoss (Tp - Ta)
 *   dTb/dt = bath (Tp - Tb) - bathLoss (Tb - Ta) - evaporation max(0, pw(Tb) - air)
 *            - bathWall (Tb - Tw)
 *   dTw/dt = wall (Tb - Tw)
 * </pre>
 *
 * @param heatKPerS heating of a bare plate at full duty, K/s
 * @param platePerS plate to bath, for the plate, 1/s
 * @param plateLossPerS plate to room, for the plate, 1/s
 * @param bathPerS plate to bath, for the bath, 1/s
 * @param bathLossPerS dry loss of the bath, 1/s
 * @param bathWallPerS wall to bath, for the bath, 1/s
 * @param wallPerS wall to bath, for the wall, 1/s
 * @param evaporationKPerSPerKPa cooling of the bath by evaporation, K/s per kPa of deficit
 * @param airC room temperature, °C
 * @param airKPa vapour pressure of the room's air, kPa
 */
record TrayRates(
    double heatKPerS,
    double platePerS,
    double plateLossPerS,
    double bathPerS,
    double bathLossPerS,
    double bathWallPerS,
    double wallPerS,
    double evaporationKPerSPerKPa,
    double airC,
    double airKPa) {

  /** Wall to bath, W/K: that of the reference tray's wall; only its capacity is learned. */
  private static final double WALL_W_PER_K = 6;

  static TrayRates of(TrayBelief belief, RoomModel room) {
    TrayModel m = belief.model();
    double bathJPerK = TrayModel.LITRE_J_PER_K * m.liquidL();
    return new TrayRates(
        m.heaterW() / m.plateJPerK(),
        m.plateToBathWPerK() / m.plateJPerK(),
        m.plateLossWPerK() / m.plateJPerK(),
        m.plateToBathWPerK() / bathJPerK,
        m.bathLossWPerK() / bathJPerK,
        WALL_W_PER_K / bathJPerK,
        WALL_W_PER_K / belief.wallJPerK(),
        m.evaporationWPerKPa(room) / bathJPerK,
        room.airC(),
        room.relativeHumidity() * TrayModel.saturationKPa(room.airC()));
  }

  /** Rate of the plate at duty {@code u}, K/s. */
  double plateRate(double u, double plateC, double bathC) {
    return heatKPerS * u - platePerS * (plateC - bathC) - plateLossPerS * (plateC - airC);
  }

  /** Rate of a full bath, K/s: a bath of less liquid follows faster by as much. */
  double bathRate(double plateC, double bathC, double wallC) {
    return bathRate(plateC, bathC, wallC, evaporationRate(bathC));
  }

  /** The same with {@link #evaporationRate} of that bath at hand. */
  double bathRate(double plateC, double bathC, double wallC, double evaporationRate) {
    double loss = bathLossPerS * (bathC - airC) + evaporationRate;
    return bathPerS * (plateC - bathC) - bathWallPerS * (bathC - wallC) - loss;
  }

  /** Cooling of a full bath by all its losses, K/s. */
  double lossRate(double bathC) {
    return bathLossPerS * (bathC - airC) + evaporationRate(bathC);
  }

  /** Cooling of a full bath by evaporation, K/s. */
  double evaporationRate(double bathC) {
    return evaporationKPerSPerKPa * Math.max(0, TrayModel.saturationKPa(bathC) - airKPa);
  }

  /** Slope of {@link #lossRate}, 1/s. */
  double lossSlope(double bathC) {
    double step = 0.05; // K: the vapour pressure is straight over it
    return (lossRate(bathC + step) - lossRate(bathC - step)) / (2 * step);
  }

  /**
   * Share of the bath that evaporates in a second at {@code bathC}: what cools a bath by a kelvin
   * takes 4180 J from each litre, and a gram of vapour carries its latent heat.
   */
  double vanishingPerS(double bathC) {
    return vanishingPerS(bathC, evaporationRate(bathC));
  }

  /** The same with {@link #evaporationRate} of that bath at hand. */
  double vanishingPerS(double bathC, double evaporationRate) {
    return evaporationRate * TrayModel.LITRE_J_PER_K / (TrayModel.latentJPerG(bathC) * 1000);
  }
}
