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
    return span(21, ageS, usualS, dutyS, 0);
  }

  private static ConstantSpan span(
      double celsius, double ageS, double usualS, double dutyS, double bathRoseK) {
    double[] sums = new double[64];
    double step = 1e9; // far beyond any lag: a plate has followed all of it
    sums[2] = bathRoseK * step;
    return new ConstantSpan(
        celsius, ageS, 0, 0, usualS, 0, 1, dutyS, step, Row.owning(sums), 3, sums[2]);
  }

  private static final ConstantSpan LIVE = aged(1, 1, 1);

  private static @Nullable TripCause cause(
      double plateC, double offS, ConstantSpan plate, ConstantSpan bath) {
    return ColdPlate.cause(plateC, 18, 20, offS, false, plate, bath);
  }

  @Test
  @Verifies(value = "SR-10", side = Side.WITHHOLDS)
  void aPlateThatMovesIsShortOfHeat() {
    assertEquals(TripCause.HEAT_NOT_ARRIVING, cause(45, 0, LIVE, LIVE));
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

  /** A live reading between two steps stands however lively it was: only the bath can tell. */
  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void aColdOneIsFrozenWhereItsBathWarmedWithoutIt() {
    assertEquals(TripCause.PLATE_PROBE_BAD, cause(20, 0, span(20, 50, 1, 40, 0.121), LIVE));
    assertNull(cause(20, 0, span(20, 50, 1, 40, 0.119), LIVE), "that is within a step");
    assertEquals(TripCause.PLATE_PROBE_BAD, cause(20, 0, span(20, 50, 1, 40, -0.121), LIVE));
    assertNull(cause(20, 0, span(20, 50, 1, 40, -0.119), LIVE), "the bath cools as little");
    assertNull(cause(20, 0, aged(500, 1, 40), LIVE), "its habit is no evidence");
  }

  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void aColdOneThatLeapsUpThaws() {
    ConstantSpan thawed = new ConstantSpan(36, 0, 0, 0, 5, 1.5, 0, 0, 1, Row.of(64, 0), 1, 0);
    assertEquals(TripCause.PLATE_PROBE_BAD, cause(36, 0, thawed, LIVE));
    ConstantSpan moved = new ConstantSpan(36, 0, 0, 0, 5, 1.4, 0, 0, 1, Row.of(64, 0), 1, 0);
    assertEquals(TripCause.HEAT_NOT_ARRIVING, cause(36, 0, moved, LIVE));
  }

  /**
   * SR-10: no more than a minute of heat; then what it left in the plate is awaited in the bath.
   */
  @Test
  @Verifies(value = "SR-10", side = Side.WITHHOLDS)
  void withinAMinuteOfHeatItIsHeldOffAndAfterTheWaitNamedAnyway() {
    assertNull(cause(21, 0, aged(80, 20, 51.9), LIVE));
    assertEquals(false, ColdPlate.holdsOff(aged(80, 20, 51.9)));
    assertEquals(true, ColdPlate.holdsOff(aged(80, 20, 52)));
    assertNull(cause(21, 299.9, aged(180, 20, 52), LIVE));
    assertEquals(TripCause.HEAT_NOT_ARRIVING, cause(21, 300, aged(180, 20, 52), LIVE));
    assertNull(cause(21, 400, aged(180, 20, 51.9), LIVE), "it has not had its heat");
    assertEquals(
        TripCause.PLATE_PROBE_BAD, cause(21, 60, span(21, 140, 20, 52, 0.2), LIVE), "it came");
  }

  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void aBathReadingThatOutlastsItsHabitIsFrozen() {
    assertEquals(TripCause.BATH_PROBE_BAD, cause(45, 0, LIVE, span(43, 120, 1, 1, 0)));
    assertEquals(TripCause.BATH_PROBE_BAD, cause(20, 0, LIVE, span(32, 80, 1, 1, 0)));
    assertEquals(TripCause.HEAT_NOT_ARRIVING, cause(45, 0, LIVE, span(31.9, 80, 1, 1, 0)));
    assertEquals(TripCause.BATH_PROBE_BAD, cause(20, 0, LIVE, stopped(0.003)), "stopped dead");
    assertEquals(TripCause.HEAT_NOT_ARRIVING, cause(20, 0, LIVE, stopped(0.0029)));
    assertEquals(
        TripCause.HEAT_NOT_ARRIVING, cause(45, 0, LIVE, span(43, 119, 1, 1, 0)), "it may turn");
  }

  private static ConstantSpan stopped(double slope) {
    return new ConstantSpan(25, 80, slope, 0, 1, 0, 1, 1, 1, Row.of(64, 0), 1, 0);
  }

  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void whereNoHeatWasAskedForABathReadingThatStandsIsFrozen() {
    ConstantSpan stands = span(30, 300, 0, 0, 0);
    assertEquals(TripCause.BATH_PROBE_BAD, cause(28, 120, LIVE, stands));
    assertEquals(TripCause.HEAT_NOT_ARRIVING, cause(28, 119.9, LIVE, stands), "heat was asked for");
    assertEquals(TripCause.HEAT_NOT_ARRIVING, cause(28, 120, LIVE, span(30, 299, 0, 0, 0)));
  }

  /** The probe of the plate falls to the room: no bath draws a plate down so fast. */
  @Test
  @Verifies(value = "SR-10", side = Side.WITHHOLDS)
  void aPlateProbeThatLeavesItsPlateSaysNothingOfTheBath() {
    ConstantSpan quiet = span(43, 400, 1, 1, 0);
    assertEquals(TripCause.HEAT_NOT_ARRIVING, ColdPlate.cause(45, 43, 20, 200, true, LIVE, quiet));
    assertEquals(TripCause.BATH_PROBE_BAD, ColdPlate.cause(45, 43, 20, 200, false, LIVE, quiet));
  }

  /** A room of 30 °C that was believed to have 20: plate and bath rest in it alike. */
  @Test
  @Verifies(value = "SR-08", side = Side.ALLOWS)
  void aPlateAsWarmAsItsBathMayRestInAWarmRoom() {
    ConstantSpan still = aged(20, 9, 1);
    assertNull(ColdPlate.cause(30, 28.5, 20, 0, false, still, LIVE));
    assertEquals(TripCause.PLATE_PROBE_BAD, ColdPlate.cause(30, 28.4, 20, 0, false, still, LIVE));
    assertNull(ColdPlate.cause(32, 32, 20, 0, false, still, LIVE));
    assertEquals(TripCause.PLATE_PROBE_BAD, ColdPlate.cause(32.1, 32, 20, 0, false, still, LIVE));
  }
}
