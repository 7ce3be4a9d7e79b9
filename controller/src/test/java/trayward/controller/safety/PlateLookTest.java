package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.event.TripCause;

/** What a plate does with heat held off names why it was too hot. */
class PlateLookTest {

  /** Coupling over plate capacity of the reference tray (reference-tray.md): 18 / 1100 1/s. */
  private static final double COOLING = 18.0 / 1100;

  private static final ConstantSpan LIVE = ConstantSpan.START;

  /** Looks at a plate that moves by {@code kelvinPerS} from 50 °C over a bath of 40 °C. */
  private static @Nullable TripCause look(double kelvinPerS, int seconds, boolean bathFalls) {
    HeatLag off = off(1e6);
    PlateLook look = PlateLook.begin(COOLING, bathFalls);
    double plate = 50;
    for (int i = 0; i < 10 * seconds; i++) {
      plate += 0.1 * kelvinPerS;
      look = look.next(off, plate, 0.1);
    }
    return look.cause(plate, 40, LIVE, LIVE);
  }

  @Test
  @Verifies(value = "SR-11", side = Side.WITHHOLDS)
  void aPlateThatRisesWithHeatOffIsHeatedThroughAStuckRelay() {
    assertEquals(TripCause.RELAY_STUCK, look(0.1, 17, false));
  }

  @Test
  @Verifies(value = "SR-07", side = Side.WITHHOLDS)
  void aPlateThatCreepsDownFarSlowerThanAWetOneIsDry() {
    assertEquals(TripCause.TRAY_DRY, look(-0.015, 17, false));
  }

  @Test
  @Verifies(value = "SR-10", side = Side.WITHHOLDS)
  void aPlateThatCoolsAsAWetOneHasABathProbeThatLies() {
    assertEquals(TripCause.HEAT_NOT_ARRIVING, look(-0.15, 17, false));
  }

  @Test
  void aPlateThatStandsStillIsLookedAtLongerAndThenItsCreepDecides() {
    assertNull(look(0.005, 17, false));
    assertEquals(TripCause.RELAY_STUCK, look(0.005, 60, false));
    assertEquals(TripCause.TRAY_DRY, look(0, 60, false));
  }

  @Test
  void aBathReadingThatFellFasterThanAnyBathIsAProbeOutOfTheLiquid() {
    assertEquals(TripCause.HEAT_NOT_ARRIVING, look(-0.03, 17, true));
  }

  @Test
  void nothingIsNamedBeforeTheLookIsOver() {
    assertNull(look(0.1, 10, false));
  }

  private static HeatLag off(double seconds) {
    return new HeatLag(0, 0, 0, 0, 0, 0, seconds);
  }

  private static ConstantSpan aged(double ageS, double usualS) {
    return new ConstantSpan(40, ageS, 0, 0, usualS, 0, 0, 0, 1, Row.of(64, 0), 1, 0);
  }

  @Test
  void theLookCountsFromTwentySecondsWithoutHeat() {
    PlateLook begun = PlateLook.begin(0.5, true);
    assertEquals(begun, begun.next(off(19.9), 50, 1));
    PlateLook counting = begun.next(off(20), 50, 1);
    assertEquals(new PlateLook(0.5, true, 50, 50, 0), counting);
    assertEquals(new PlateLook(0.5, true, 50, 49, 2), counting.next(off(21), 49, 2));
    PlateLook first = new PlateLook(0.5, true, 50, 48, 16);
    assertEquals(new PlateLook(0.5, true, 50, 48, 17), first.next(off(36), 47, 1));
    PlateLook just = new PlateLook(0.5, true, 50, 48, 15.9);
    assertEquals(47, just.next(off(36), 47, 1).laterC());
  }

  /** A plate hot before the run had no rate to learn: the slowest plate falls by 0.8 K of 10 K. */
  @Test
  void whereNoRateWasLearnedThePlateIsTakenForTheSlowest() {
    assertEquals(1 / 190.0, PlateLook.begin(0, false).coolingPerS(), 1e-9);
    PlateLook look = new PlateLook(1 / 190.0, false, 50, 49.75, 17);
    assertEquals(TripCause.TRAY_DRY, look.cause(49.75, 40, LIVE, LIVE));
  }

  private static @Nullable TripCause over(double from, double later, double s, double now) {
    return new PlateLook(Double.POSITIVE_INFINITY, false, from, later, s)
        .cause(now, -10, LIVE, LIVE);
  }

  /** With a cooling rate beyond measure a wet plate falls by all of its gap: here 10 K. */
  @Test
  void eachNameHasItsEdge() {
    assertNull(over(0, -0.5, 15.9, 0));
    assertEquals(TripCause.TRAY_DRY, over(0, -0.5, 16, 0));
    assertEquals(TripCause.RELAY_STUCK, over(0, 0.3, 16, 0));
    assertNull(over(0, 0.299, 16, 0));
    assertEquals(TripCause.HEAT_NOT_ARRIVING, over(0, -3.5, 16, 0));
    assertEquals(TripCause.TRAY_DRY, over(0, -3.49, 16, 0));
    assertEquals(TripCause.TRAY_DRY, over(0.1, 0, 16, 0));
    assertNull(over(0.099, 0, 55.9, 9));
    assertEquals(TripCause.RELAY_STUCK, over(0.099, 0, 56, 0.1));
    assertEquals(TripCause.TRAY_DRY, over(0.099, 0, 56, 0.099));
    assertEquals(TripCause.TRAY_DRY, over(0.1, 0, 56, 0.1));
  }

  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void aPlateReadingThatStoodBeforeTheLookAndSinceIsFrozen() {
    PlateLook look = new PlateLook(COOLING, false, 50, 50, 17);
    assertEquals(TripCause.PLATE_PROBE_BAD, look.cause(50, 40, aged(47, 0), LIVE));
    assertNull(look.cause(50, 40, aged(46.9, 0), LIVE));
  }

  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void aBathReadingThatStoodWhileItsPlateIsWetIsFrozen() {
    PlateLook look = new PlateLook(COOLING, false, 50, 47, 17);
    assertEquals(TripCause.BATH_PROBE_BAD, look.cause(47, 40, LIVE, aged(55, 0)));
    assertEquals(TripCause.BATH_PROBE_BAD, look.cause(47, 40, LIVE, aged(55, 6)));
    assertEquals(TripCause.HEAT_NOT_ARRIVING, look.cause(47, 40, LIVE, aged(55, 7)));
    assertEquals(TripCause.HEAT_NOT_ARRIVING, look.cause(47, 40, LIVE, aged(54.9, 0)));
  }
}
