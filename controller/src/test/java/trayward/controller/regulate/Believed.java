package trayward.controller.regulate;

/** The reference tray as a belief, for tests of what believes it. */
final class Believed {

  /** No wall: the reference tray has none. */
  static final TrayBelief REFERENCE = new TrayBelief(TrayModel.REFERENCE, 5, 3, 0.01);

  static final RoomModel ROOM = RoomModel.REFERENCE;

  private Believed() {}

  static TrayRates rates() {
    return TrayRates.of(REFERENCE, ROOM);
  }

  /** The reference tray with other losses of the bath. */
  static TrayBelief evaporating(double factor) {
    TrayModel m = TrayModel.REFERENCE;
    return new TrayBelief(
        new TrayModel(
            m.liquidL(),
            m.areaM2(),
            m.plateJPerK(),
            m.plateToBathWPerK(),
            m.bathLossWPerK(),
            m.plateLossWPerK(),
            m.heaterW(),
            factor),
        5,
        3,
        0.01);
  }
}
