package trayward.controller.regulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** How warm a heater holds a bath. */
class HoldReachTest {

  private static TrayModel with(double heaterW) {
    TrayModel r = TrayModel.REFERENCE;
    return new TrayModel(
        r.liquidL(),
        r.areaM2(),
        r.plateJPerK(),
        r.plateToBathWPerK(),
        r.bathLossWPerK(),
        r.plateLossWPerK(),
        heaterW,
        r.evaporationFactor());
  }

  /**
   * The reference tray needs 0.431 of 250 W to hold 40 °C (its page of equations), 107.75 W: 95 %
   * of 113.42 W hold just that.
   */
  @Test
  void aHeaterHoldsWhatNinetyFiveHundredthsOfItBalance() {
    assertEquals(40.0, HoldReach.highestC(with(113.42), RoomModel.REFERENCE), 0.05);
  }

  @Test
  void itIsWhereTheHoldDutyMeetsTheReserve() {
    for (double watts : new double[] {60, 90, 150, 250, 400}) {
      TrayModel model = with(watts);
      double highest = HoldReach.highestC(model, RoomModel.REFERENCE);
      assertTrue(model.holdDuty(highest, RoomModel.REFERENCE) <= HoldReach.DUTY);
      assertTrue(model.holdDuty(highest + 0.02, RoomModel.REFERENCE) > HoldReach.DUTY);
    }
  }

  @Test
  void aHeaterWithoutLimitIsLookedAtNoFurtherThanBoiling() {
    assertEquals(99, HoldReach.highestC(with(5000), RoomModel.REFERENCE));
  }

  @Test
  void theWordsRoundDownBecauseAPromiseIsKept() {
    assertEquals("the heater holds at most 43 °C", HoldReach.words(43.96));
  }
}
