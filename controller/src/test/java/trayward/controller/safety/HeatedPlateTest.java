package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;

/** When a plate is heated whatever was believed of it. */
class HeatedPlateTest {

  private static final RoomModel COLD = new RoomModel(10, 0.5, 0.15);

  private static ReadingTrail ends(double celsius, double perS) {
    ReadingTrail trail = ReadingTrail.START;
    for (int s = -9; s <= 1; s++) {
      trail = trail.next(new ThermalInput.Sample(celsius + perS * s, (s + 20) * 1_000_000_000L));
    }
    return trail;
  }

  private static boolean heated(double plateC, double platePerS, double bathC, double bathPerS) {
    return HeatedPlate.is(
        TrayModel.REFERENCE, COLD, ends(bathC, bathPerS), ends(plateC, platePerS));
  }

  /** Without heat a plate of 190 s falls by 0.05 K/s where it is 10 K over its bath. */
  @Test
  @Verifies(value = "SR-10", side = Side.ALLOWS)
  void aPlateFarOverItsBathThatDoesNotFallIsHeated() {
    assertEquals(true, heated(50, 0, 40, 0));
    assertEquals(true, heated(50, -0.02, 40, 0));
    assertEquals(true, heated(22, 0, 10, 0), "12 K over its room");
    assertEquals(true, heated(44, 0, 40, 0));
  }

  @Test
  @Verifies(value = "SR-10", side = Side.WITHHOLDS)
  void oneThatFallsOrIsNearItsBathOrAsWarmAsSomeRoomIsNot() {
    assertEquals(false, heated(50, -0.022, 40, 0));
    assertEquals(false, heated(43.9, 0, 40, 0));
    assertEquals(false, heated(21.9, 0, 10, 0), "off its plate, in a room warmer than believed");
  }

  /** 0.1 K/s of a litre are 334 W, more than any plate gives that falls by 0.03 K/s: 60 W. */
  @Test
  @Verifies(value = "SR-10", side = Side.ALLOWS)
  void oneThatFallsByLessThanItsBathGainsIsHeated() {
    assertEquals(true, heated(50, -0.03, 40, 0.1));
    assertEquals(false, heated(50, -0.03, 40, 0.03));
    assertEquals(false, heated(50, -0.15, 40, 0.1), "what the plate held goes into the bath");
  }

  /** Two litres gain twice the heat of one. */
  @Test
  @Verifies(value = "SR-10", side = Side.ALLOWS)
  void moreLiquidGainsMoreHeat() {
    TrayModel r = TrayModel.REFERENCE;
    TrayModel two =
        new TrayModel(
            2,
            r.areaM2(),
            r.plateJPerK(),
            r.plateToBathWPerK(),
            r.bathLossWPerK(),
            r.plateLossWPerK(),
            r.heaterW(),
            r.evaporationFactor());
    ReadingTrail bath = ends(40, 0.02);
    ReadingTrail plate = ends(50, -0.03);
    assertEquals(true, HeatedPlate.is(two, COLD, bath, plate));
    assertEquals(false, HeatedPlate.is(r, COLD, bath, plate));
  }
}
