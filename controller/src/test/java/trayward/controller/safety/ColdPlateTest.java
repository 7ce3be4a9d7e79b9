package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.event.TripCause;

/** Why a plate is colder than its heat allows. */
class ColdPlateTest {

  private static ConstantSpan aged(double ageS, double usualS, double dutyS) {
    return new ConstantSpan(21, ageS, 0, 0, usualS, dutyS, 1, Row.of(64, 0), 1, 0);
  }

  private static final ConstantSpan LIVE = aged(1, 1, 1);

  @Test
  @Verifies(value = "SR-10", side = Side.WITHHOLDS)
  void aPlateThatMovesIsShortOfHeat() {
    assertEquals(TripCause.HEAT_NOT_ARRIVING, ColdPlate.cause(45, 20, -0.01, LIVE, LIVE));
    assertEquals(TripCause.HEAT_NOT_ARRIVING, ColdPlate.cause(45, 20, 0, aged(4.9, 9, 1), LIVE));
    assertNull(ColdPlate.cause(45, 20, 0, aged(5, 9, 1), LIVE), "it stands, and is looked at");
  }

  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void aWarmPlateReadingThatStandsStillIsFrozen() {
    assertEquals(TripCause.PLATE_PROBE_BAD, ColdPlate.cause(23.1, 20, 0, aged(20, 9, 1), LIVE));
    assertNull(ColdPlate.cause(23, 20, 0, aged(20, 9, 1), LIVE), "it may hang in the room");
    assertNull(ColdPlate.cause(23.1, 20, 0, aged(19.9, 9, 1), LIVE), "too short to tell");
  }

  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void aColdOneIsFrozenWhereItsHabitOrTheBathSaysSo() {
    assertEquals(TripCause.PLATE_PROBE_BAD, ColdPlate.cause(20, 20, 0, aged(80, 1, 1), LIVE));
    assertEquals(TripCause.PLATE_PROBE_BAD, ColdPlate.cause(20, 20, 0.0041, aged(20, 0, 1), LIVE));
    assertNull(ColdPlate.cause(20, 20, 0.004, aged(20, 0, 1), LIVE), "the bath rests as well");
    assertNull(ColdPlate.cause(20, 20, 0.0041, aged(20, 9, 1), LIVE), "a live probe in the room");
  }

  @Test
  @Verifies(value = "SR-10", side = Side.WITHHOLDS)
  void withinAMinuteOfHeatItIsNamedAnyway() {
    assertNull(ColdPlate.cause(21, 20, 0, aged(80, 20, 51.9), LIVE));
    assertEquals(TripCause.HEAT_NOT_ARRIVING, ColdPlate.cause(21, 20, 0, aged(80, 20, 52), LIVE));
  }

  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void aBathReadingThatOutlastsItsHabitIsFrozen() {
    assertEquals(TripCause.BATH_PROBE_BAD, ColdPlate.cause(45, 20, 0, LIVE, aged(80, 1, 1)));
  }
}
