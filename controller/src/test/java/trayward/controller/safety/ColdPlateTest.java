package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.event.TripCause;

/** Why a plate is colder than its heat allows. */
class ColdPlateTest {

  private static ConstantSpan aged(double ageS, double usualS, double dutyS) {
    return new ConstantSpan(21, ageS, 0, 0, usualS, 0, 1, dutyS, 1, Row.of(64, 0), 1, 0);
  }

  private static final ConstantSpan LIVE = aged(1, 1, 1);

  private static @Nullable TripCause cause(
      double plateC, double bathSlope, ConstantSpan plate, ConstantSpan bath) {
    return ColdPlate.cause(plateC, 18, 20, bathSlope, plate, bath);
  }

  @Test
  @Verifies(value = "SR-10", side = Side.WITHHOLDS)
  void aPlateThatMovesIsShortOfHeat() {
    assertEquals(TripCause.HEAT_NOT_ARRIVING, cause(45, -0.01, LIVE, LIVE));
    assertEquals(TripCause.HEAT_NOT_ARRIVING, cause(45, 0, aged(4.9, 9, 1), LIVE));
    assertNull(cause(45, 0, aged(5, 9, 1), LIVE), "it stands, and is looked at");
  }

  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void aWarmPlateReadingThatStandsStillIsFrozen() {
    assertEquals(TripCause.PLATE_PROBE_BAD, cause(23.1, 0, aged(20, 9, 1), LIVE));
    assertNull(cause(23, 0, aged(20, 9, 1), LIVE), "it may hang in the room");
    assertNull(cause(23.1, 0, aged(19.9, 9, 1), LIVE), "too short to tell");
  }

  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void aColdOneIsFrozenWhereItsHabitOrTheBathSaysSo() {
    assertEquals(TripCause.PLATE_PROBE_BAD, cause(20, 0, aged(80, 1, 1), LIVE));
    assertEquals(TripCause.PLATE_PROBE_BAD, cause(20, 0.0041, aged(20, 0, 1), LIVE));
    assertNull(cause(20, 0.004, aged(20, 0, 1), LIVE), "the bath rests as well");
    assertNull(cause(20, 0.0041, aged(20, 9, 1), LIVE), "a live probe in the room");
  }

  @Test
  @Verifies(value = "SR-10", side = Side.WITHHOLDS)
  void withinAMinuteOfHeatItIsNamedAnyway() {
    assertNull(cause(21, 0, aged(80, 20, 51.9), LIVE));
    assertEquals(TripCause.HEAT_NOT_ARRIVING, cause(21, 0, aged(80, 20, 52), LIVE));
  }

  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void aBathReadingThatOutlastsItsHabitIsFrozen() {
    assertEquals(TripCause.BATH_PROBE_BAD, cause(45, 0, LIVE, aged(80, 1, 1)));
  }

  /** A room of 30 °C that was believed to have 20: plate and bath rest in it alike. */
  @Test
  @Verifies(value = "SR-08", side = Side.ALLOWS)
  void aPlateAsWarmAsItsBathMayRestInAWarmRoom() {
    ConstantSpan still = aged(20, 9, 1);
    assertNull(ColdPlate.cause(30, 28.5, 20, 0, still, LIVE));
    assertEquals(TripCause.PLATE_PROBE_BAD, ColdPlate.cause(30, 28.4, 20, 0, still, LIVE));
    assertNull(ColdPlate.cause(32, 32, 20, 0, still, LIVE));
    assertEquals(TripCause.PLATE_PROBE_BAD, ColdPlate.cause(32.1, 32, 20, 0, still, LIVE));
  }
}
