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
    PlateLook look = PlateLook.begin(COOLING, bathFalls, false, false);
    double plate = 50;
    for (int i = 0; i < 10 * seconds; i++) {
      plate += 0.1 * kelvinPerS;
      look = look.next(off, plate, 0.1, false);
    }
    return look.cause(plate, 40, 40, false, LIVE, LIVE);
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
    PlateLook begun = PlateLook.begin(0.5, true, false, false);
    assertEquals(begun, begun.next(off(19.9), 50, 1, false));
    PlateLook counting = begun.next(off(20), 50, 1, false);
    assertEquals(new PlateLook(0.5, true, false, false, 50, 50, 0), counting);
    assertEquals(
        new PlateLook(0.5, true, false, false, 50, 49, 2), counting.next(off(21), 49, 2, false));
    PlateLook first = new PlateLook(0.5, true, false, false, 50, 48, 16);
    assertEquals(
        new PlateLook(0.5, true, false, false, 50, 48, 17), first.next(off(36), 47, 1, false));
    PlateLook just = new PlateLook(0.5, true, false, false, 50, 48, 15.9);
    assertEquals(47, just.next(off(36), 47, 1, false).laterC());
  }

  /** A plate hot before the run had no rate to learn: the slowest plate falls by 0.8 K of 10 K. */
  @Test
  void whereNoRateWasLearnedThePlateIsTakenForTheSlowest() {
    assertEquals(1 / 190.0, PlateLook.begin(0, false, false, false).coolingPerS(), 1e-9);
    PlateLook look = new PlateLook(1 / 190.0, false, false, false, 50, 49.75, 56);
    assertEquals(TripCause.TRAY_DRY, look.cause(49.75, 40, 20, false, LIVE, LIVE));
  }

  /** 10 K over its bath the slowest falls by 0.81 K in 16 s and by 2.55 K in 56 s; a cold room. */
  @Test
  @Verifies(value = "SR-07", side = Side.WITHHOLDS)
  @Verifies(value = "SR-10", side = Side.WITHHOLDS)
  void theSlowestPlateIsLookedAtForAMinuteUnlessItFallsFaster() {
    assertNull(slowest(49.2, 55.9, 47.5));
    assertEquals(TripCause.HEAT_NOT_ARRIVING, slowest(49.2, 56, 48.05));
    assertEquals(TripCause.TRAY_DRY, slowest(49.2, 56, 48.15));
    assertEquals(TripCause.HEAT_NOT_ARRIVING, slowest(48.75, 16, 48.75), "surely wet");
    assertNull(slowest(48.85, 16, 48.85));
    PlateLook falls = new PlateLook(1 / 190.0, true, false, false, 50, 49.75, 16);
    assertEquals(TripCause.HEAT_NOT_ARRIVING, falls.cause(49.75, 40, 20, false, LIVE, LIVE));
    PlateLook known = new PlateLook(1 / 185.0, false, false, false, 50, 49.6, 16);
    assertEquals(TripCause.HEAT_NOT_ARRIVING, known.cause(49.6, 40, 20, false, LIVE, LIVE));
  }

  /** A bath probe in air hides how small the true gap is: 0.5 W/K of 700 J/K is the dry limit. */
  @Test
  @Verifies(value = "SR-10", side = Side.WITHHOLDS)
  void aPlateThatFallsFasterThanAnyDryOneIsWetHoweverColdItsBathSeems() {
    double dry = 1.33 * 0.5 / 700 * 56 * 28;
    PlateLook look = new PlateLook(1 / 190.0, false, false, false, 48 + dry, 49, 56);
    assertEquals(TripCause.HEAT_NOT_ARRIVING, look.cause(47.9, 17, 20, false, LIVE, LIVE));
    assertEquals(TripCause.TRAY_DRY, look.cause(48.1, 17, 20, false, LIVE, LIVE));
  }

  /** The reference plate, 10 K over its bath, falls by 2.303 K in 16 s. */
  @Test
  @Verifies(value = "SR-07", side = Side.WITHHOLDS)
  @Verifies(value = "SR-10", side = Side.WITHHOLDS)
  void aPlateThatFallsToABathThatIsSurelyLiquidJustAsItDidBeforeWasDry() {
    assertEquals(TripCause.TRAY_DRY, wetAgain(50 - 2.303, false, LIVE));
    assertEquals(TripCause.TRAY_DRY, wetAgain(50 - 2.303 * 0.86, false, LIVE));
    assertEquals(TripCause.TRAY_DRY, wetAgain(50 - 2.303 / 0.86, false, LIVE));
    assertEquals(TripCause.HEAT_NOT_ARRIVING, wetAgain(50 - 2.303 * 0.84, false, LIVE));
    assertEquals(TripCause.HEAT_NOT_ARRIVING, wetAgain(50 - 2.303 / 0.84, false, LIVE));
    assertEquals(TripCause.HEAT_NOT_ARRIVING, wetAgain(50 - 2.303, true, LIVE), "the bath fell");
    assertEquals(TripCause.BATH_PROBE_BAD, wetAgain(50 - 2.303, false, aged(55, 0)));
  }

  private static @Nullable TripCause wetAgain(double laterC, boolean fell, ConstantSpan bath) {
    return new PlateLook(COOLING, fell, false, false, 50, laterC, 17)
        .cause(laterC, 40, 20, true, LIVE, bath);
  }

  private static @Nullable TripCause slowest(double later, double s, double now) {
    return new PlateLook(1 / 190.0, false, false, false, 50, later, s)
        .cause(now, 40, 0, false, LIVE, LIVE);
  }

  private static @Nullable TripCause over(double from, double later, double s, double now) {
    return new PlateLook(Double.POSITIVE_INFINITY, false, false, false, from, later, s)
        .cause(now, -10, -10, false, LIVE, LIVE);
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
    PlateLook look = new PlateLook(COOLING, false, false, false, 50, 50, 17);
    assertEquals(TripCause.PLATE_PROBE_BAD, look.cause(50, 40, 20, false, aged(47, 0), LIVE));
    assertNull(look.cause(50, 40, 20, false, aged(46.9, 0), LIVE));
  }

  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void aBathReadingThatStoodWhileItsPlateIsWetIsFrozen() {
    PlateLook look = new PlateLook(COOLING, false, false, false, 50, 47, 17);
    assertEquals(TripCause.BATH_PROBE_BAD, look.cause(47, 40, 20, false, LIVE, aged(55, 0)));
    assertEquals(TripCause.BATH_PROBE_BAD, look.cause(47, 40, 20, false, LIVE, aged(55, 6)));
    assertEquals(TripCause.HEAT_NOT_ARRIVING, look.cause(47, 40, 20, false, LIVE, aged(55, 7)));
    assertEquals(TripCause.HEAT_NOT_ARRIVING, look.cause(47, 40, 20, false, LIVE, aged(54.9, 0)));
  }

  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void aPlateReadingThatStoodAndThawedWithinTheLookIsFrozen() {
    PlateLook look = PlateLook.begin(COOLING, false, false, false).next(off(1), 50, 1, true);
    for (int i = 0; i < 40; i++) {
      look = look.next(off(20 + i), 50 - 0.2 * i, 1, false);
    }
    assertEquals(TripCause.PLATE_PROBE_BAD, look.cause(42, 40, 20, false, LIVE, LIVE));
    PlateLook before = PlateLook.begin(COOLING, false, false, true);
    assertEquals(true, before.next(off(1), 50, 1, false).plateStood());
  }

  /** Heat was given that no bath could have swallowed: a quiet habit says nothing then. */
  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void aBathReadingThatStoodUnderSuchHeatIsBadWhateverItsHabit() {
    PlateLook look = new PlateLook(COOLING, false, true, false, 50, 47, 17);
    assertEquals(TripCause.BATH_PROBE_BAD, look.cause(47, 40, 20, false, LIVE, aged(55, 7)));
    assertEquals(TripCause.HEAT_NOT_ARRIVING, look.cause(47, 40, 20, false, LIVE, aged(54.9, 7)));
  }

  /**
   * A wet plate of the reference tray falls by 23 % in a look: 0.29 K of 1.24 K, and 35 % of it.
   */
  @Test
  @Verifies(value = "SR-07", side = Side.ALLOWS)
  void aPlateTooNearItsBathIsNotNamed() {
    PlateLook near = new PlateLook(COOLING, false, false, false, 41.2, 41.2, 60);
    assertEquals(true, near.tooNear(40));
    assertNull(near.cause(41.2, 40, 40, false, LIVE, LIVE));
    PlateLook apart = new PlateLook(COOLING, false, false, false, 41.3, 41.3, 60);
    assertEquals(false, apart.tooNear(40));
    assertEquals(TripCause.TRAY_DRY, apart.cause(41.3, 40, 40, false, LIVE, LIVE));
    assertEquals(false, new PlateLook(COOLING, false, false, false, 41, 41, 15).tooNear(40));
    assertEquals(false, new PlateLook(COOLING, true, false, false, 41, 41, 60).tooNear(40));
    assertEquals(false, new PlateLook(COOLING, false, true, false, 41, 41, 60).tooNear(40));
  }

  /** 0.5 W/K of 1800 J/K: 30 K over the room a dry plate loses 0.33 K in 40 s. */
  @Test
  @Verifies(value = "SR-11", side = Side.WITHHOLDS)
  @Verifies(value = "SR-07", side = Side.WITHHOLDS)
  void aPlateFarOverItsRoomThatDoesNotEvenLoseWhatADryOneLosesIsHeated() {
    PlateLook look = new PlateLook(COOLING, false, false, false, 57, 57, 56);
    assertEquals(TripCause.RELAY_STUCK, look.cause(57, 49, 27, false, LIVE, LIVE));
    assertEquals(TripCause.RELAY_STUCK, look.cause(56.9, 49, 27, false, LIVE, LIVE));
    assertEquals(TripCause.TRAY_DRY, look.cause(56.8, 49, 27, false, LIVE, LIVE));
    assertEquals(
        TripCause.TRAY_DRY, look.cause(57, 49, 36, false, LIVE, LIVE), "too near its room");
  }
}
