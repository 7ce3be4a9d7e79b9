package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.event.TripCause;

/** Why a plate is colder than its heat allows. */
class ColdPlateTest {

  private static ConstantSpan stood(double seconds) {
    ConstantSpan span = ConstantSpan.START.next(20, 1, 0, true).next(21, 1, 0, true);
    for (int s = 0; s < seconds; s++) {
      span = span.next(21, 1, 0, true);
    }
    return span;
  }

  @Test
  @Verifies(value = "SR-10", side = Side.WITHHOLDS)
  void aPlateThatMovesIsShortOfHeat() {
    assertEquals(TripCause.HEAT_NOT_ARRIVING, ColdPlate.cause(45, 20, -0.01, stood(1), stood(1)));
  }

  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void aReadingThatStandsStillWhereItMustMoveIsFrozen() {
    assertEquals(TripCause.PLATE_PROBE_BAD, ColdPlate.cause(45, 20, 0, stood(25), stood(1)));
    assertEquals(TripCause.PLATE_PROBE_BAD, ColdPlate.cause(21, 20, 0.03, stood(25), stood(1)));
    assertEquals(TripCause.BATH_PROBE_BAD, ColdPlate.cause(45, 20, 0, stood(1), stood(80)));
  }

  @Test
  void aColdPlateMayStandStillForWantOfHeat() {
    assertEquals(TripCause.HEAT_NOT_ARRIVING, ColdPlate.cause(21, 20, 0, stood(25), stood(1)));
  }
}
