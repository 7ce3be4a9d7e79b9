package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;

/** What is known of a plate beside the readings of its run. */
class PlateMemoryTest {

  private static final TrayModel TRAY = TrayModel.REFERENCE;
  private static final RoomModel ROOM = RoomModel.REFERENCE;
  private static final long SECOND = 1_000_000_000L;

  private static ReadingTrail course(double fromC, double perS) {
    ReadingTrail trail = ReadingTrail.START;
    for (int s = 0; s < 12; s++) {
      trail = trail.next(new ThermalInput.Sample(fromC + perS * s, s * SECOND));
    }
    return trail;
  }

  private static ThermalInput.Sample sample(double celsius) {
    return new ThermalInput.Sample(celsius, 12 * SECOND);
  }

  private static ThermalInput in(double dt, double bathC, double plateC, double secondC) {
    return new ThermalInput(
        dt, false, State.HEATING, sample(bathC), sample(plateC), sample(secondC));
  }

  private static ConstantSpan standsAt(double celsius) {
    return ConstantSpan.START.next(celsius, 1, 0, false);
  }

  private static PlateMemory next(
      PlateMemory before,
      ThermalInput in,
      ReadingTrail bath,
      @Nullable PlateBank then,
      @Nullable PlateBank now) {
    return before.next(in, true, bath, standsAt(40), standsAt(45), then, now, TRAY, ROOM);
  }

  private static PlateBank bank(double ageS, int side) {
    PlateBank bank = PlateBank.start(TRAY, 40);
    return new PlateBank(TRAY, bank.plateC(), bank.apart(), bank.low(), bank.high(), ageS, side, 0);
  }

  @Test
  @Verifies(value = "SR-07", side = Side.WITHHOLDS)
  void whatARunLearnedOfItsPlateOutlastsIt() {
    ThermalInput in = in(0.1, 40, 45, Double.NaN);
    ReadingTrail rest = course(40, 0);
    PlateBank learned = bank(120, 0);
    double cooling = next(PlateMemory.START, in, rest, learned, null).coolingPerS();
    assertEquals(learned.coolingPerS(), cooling);
    assertEquals(0, next(PlateMemory.START, in, rest, bank(119.9, 0), null).coolingPerS());
    assertEquals(0, next(PlateMemory.START, in, rest, bank(300, 1), null).coolingPerS(), "a lie");
    assertEquals(0, next(PlateMemory.START, in, rest, learned, learned).coolingPerS(), "goes on");
    for (int side : new int[] {-1, 1}) {
      PlateBank ends = bank(120.1, side);
      double kept = next(PlateMemory.START, in, rest, learned, ends).coolingPerS();
      assertEquals(learned.coolingPerS(), kept, "what ended it came after");
    }
    PlateMemory knows = new PlateMemory(0.02, 0, 40, 40);
    assertEquals(0.02, next(knows, in, rest, null, null).coolingPerS());
  }

  /** The reference bath at 40 °C cools by some 0.04 K/s at most; a probe in air by tenths. */
  @Test
  @Verifies(value = "SR-10", side = Side.WITHHOLDS)
  void aReadingThatFellAsNoBathFallsIsRemembered() {
    PlateMemory fell = PlateMemory.START;
    for (int s = 0; s < 24; s++) {
      fell = next(fell, in(1, 40, 45, Double.NaN), course(40, -0.25), null, null);
      assertEquals(fell.fellK() >= 5, fell.bathFell());
    }
    assertEquals(true, fell.bathFell());
    PlateMemory cools = PlateMemory.START;
    for (int s = 0; s < 600; s++) {
      cools = next(cools, in(1, 40, 45, Double.NaN), course(40, -0.02), null, null);
    }
    assertEquals(0, cools.fellK(), "a bath cools so");
    for (int s = 0; s < 1800; s++) {
      fell = next(fell, in(1, 40, 45, Double.NaN), course(40, 0), null, null);
    }
    assertEquals(false, fell.bathFell(), "forgotten");
  }

  @Test
  void aFallIsItsRateTimesTheTimeBetweenTwoReadings() {
    ReadingTrail slow = ReadingTrail.START;
    for (int s = 0; s < 12; s++) {
      slow = slow.next(new ThermalInput.Sample(50 - 0.5 * s, 2L * s * SECOND));
    }
    PlateMemory fell = next(PlateMemory.START, in(2, 45, 45, Double.NaN), slow, null, null);
    assertEquals(0.5, fell.fellK(), 1e-9);
  }

  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void aSecondProbeThatGrowsWarmerTellsOnTheFirst() {
    ReadingTrail rest = course(40, 0);
    PlateMemory then = next(PlateMemory.START, in(1, 40, 45, 41), rest, null, null);
    assertEquals(41, then.secondThenC());
    PlateMemory now = next(then, in(1, 40, 45, 41.5), rest, null, null);
    assertEquals(true, now.secondMoved(in(1, 40, 45, 41.5)));
    assertEquals(false, now.secondMoved(in(1, 40, 45, 41.4)));
    assertEquals(false, now.secondMoved(in(1, 40, 45, Double.NaN)), "none is fitted");
    PlateMemory moved = next(then, in(1, 40.0625, 45, 41.5), rest, null, null);
    assertEquals(false, moved.secondMoved(in(1, 40.0625, 45, 41.5)), "the first moved as well");
  }

  @Test
  void theBathIsComparedWithWhatItWasWhenThePlateBeganToStand() {
    ReadingTrail rest = course(40, 0);
    PlateMemory then = next(PlateMemory.START, in(1, 40, 44, Double.NaN), rest, null, null);
    assertEquals(40, then.bathThenC());
    PlateMemory stands = next(then, in(1, 41, 45, Double.NaN), rest, null, null);
    assertEquals(1, stands.bathRoseK(in(1, 41, 45, Double.NaN)));
    PlateMemory moves = next(stands, in(1, 41, 44, Double.NaN), rest, null, null);
    assertEquals(0, moves.bathRoseK(in(1, 41, 44, Double.NaN)));
  }

  /** 0.05 K/s and three times 0.02 of the gap; 700 J/K over 25 W/K where nothing was learned. */
  @Test
  @Verifies(value = "SR-10", side = Side.WITHHOLDS)
  void aPlateReadingThatFallsFasterThanAnyPlateLeavesIt() {
    PlateMemory knows = new PlateMemory(0.02, 0, 40, 40);
    ReadingTrail bath = course(40, 0);
    assertEquals(true, knows.leaves(course(45 + 10 * 0.36, -0.36), bath), "from 45 °C");
    assertEquals(false, knows.leaves(course(45 + 10 * 0.34, -0.34), bath));
    assertEquals(true, knows.leaves(course(38, -0.12), bath), "a kelvin at least");
    assertEquals(false, knows.leaves(course(38, -0.10), bath));
    assertEquals(true, PlateMemory.START.leaves(course(38, -0.16), bath));
    assertEquals(false, PlateMemory.START.leaves(course(38, -0.15), bath));
    assertEquals(false, knows.leaves(course(45, 0.5), bath));
  }

  @Test
  @Verifies(value = "SR-07", side = Side.WITHHOLDS)
  void aBathReadingThatNoRoomHasAndThatStaysIsOfAProbeInLiquid() {
    ConstantSpan rest = sloping(-0.005);
    PlateMemory knows = new PlateMemory(0.02, 0.4, 40, 40);
    assertEquals(true, knows.inLiquid(32, rest));
    assertEquals(false, knows.inLiquid(31.9, rest), "a warm room");
    assertEquals(false, knows.inLiquid(40, sloping(-0.006)), "it falls");
    assertEquals(false, new PlateMemory(0.02, 0.5, 40, 40).inLiquid(40, rest), "it fell");
  }

  private static ConstantSpan sloping(double perS) {
    return new ConstantSpan(40, 1, perS, 0, 2, 0, 0, 0, 1, Row.of(64, 0), 1, 0);
  }

  private static HeatLag off(double seconds) {
    return new HeatLag(0, 0, 0, 0, 0, 0, seconds);
  }

  @Test
  void nothingIsLearnedFromProbesThatAreMovedOrFromAJug() {
    ReadingTrail rest = course(40, 0);
    assertEquals(false, PlateMemory.restless(off(60), rest, rest));
    assertEquals(true, PlateMemory.restless(off(60), rest, course(40, 0.06)));
    assertEquals(false, PlateMemory.restless(off(60), rest, course(40, 0.04)));
    assertEquals(true, PlateMemory.restless(off(60), rest, course(60, -0.31)));
    assertEquals(false, PlateMemory.restless(off(60), rest, course(60, -0.29)), "it cools");
    assertEquals(false, PlateMemory.restless(off(29.9), rest, course(40, 0.06)), "heat just ended");
    assertEquals(true, PlateMemory.restless(off(0), course(40, 0.06), rest));
    assertEquals(true, PlateMemory.restless(off(0), course(40, -0.06), rest));
    assertEquals(false, PlateMemory.restless(off(0), course(40, 0.04), rest));
  }
}
