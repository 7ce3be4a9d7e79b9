package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;

/** The account of energy where no plate is seen. */
class BlindAccountTest {

  private static final TrayModel TRAY = TrayModel.REFERENCE;

  private static final HeatLag LONG_OFF = new HeatLag(0, 0, 0, 0, 0, 0, 1e6);

  private static ThermalInput input(double dt, boolean heat, double bathC) {
    return new ThermalInput(
        dt, heat, State.HEATING, new ThermalInput.Sample(bathC, 1), ThermalInput.Sample.NONE);
  }

  private static BlindAccount after(BlindAccount before, double dt, boolean heat, double bathC) {
    return before.next(input(dt, heat, bathC), LONG_OFF, TRAY, RoomModel.REFERENCE);
  }

  /** The most a bath can lose: 1.7 times the dry losses believed, twice the evaporation, W. */
  private static double mostLossW(double bathC) {
    return 1.7 * 2.5 * Math.max(0, bathC - 20) + 2 * TRAY.evaporationW(bathC, RoomModel.REFERENCE);
  }

  @Test
  void aBathUnknownIsNoAccount() {
    ThermalInput none =
        new ThermalInput(
            1, true, State.HEATING, ThermalInput.Sample.NONE, ThermalInput.Sample.NONE);
    BlindAccount some = new BlindAccount(3, 2, 1, 40, Double.NaN, 5, 2);
    assertSame(BlindAccount.START, some.next(none, LONG_OFF, TRAY, RoomModel.REFERENCE));
  }

  @Test
  void aBlockSumsWhatWasLeastGiven() {
    BlindAccount on = after(BlindAccount.START, 2, true, 40);
    assertEquals(2 * (0.65 * 250 - mostLossW(40)), on.leastJ(), 1e-9);
    assertEquals(2, on.blockS());
    assertEquals(80, on.sumKs());
    BlindAccount off = after(on, 3, false, 41);
    assertEquals(on.leastJ() - 3 * mostLossW(41), off.leastJ(), 1e-9);
    assertEquals(5, off.blockS());
    assertEquals(203, off.sumKs());
    assertEquals(-mostLossW(10), after(BlindAccount.START, 1, false, 10).leastJ(), 1e-9);
  }

  @Test
  void atHalfAMinuteTheBlockIsClosed() {
    BlindAccount before = new BlindAccount(29, 29 * 30, 9000, 29.5, Double.NaN, 4000, 0);
    BlindAccount open = after(before, 0.9, true, 30);
    assertEquals(29.9, open.blockS(), 1e-9);
    BlindAccount closed = after(before, 1, true, 30);
    double least = 9000 + 0.65 * 250 - mostLossW(30);
    double answered = TrayModel.LITRE_J_PER_K * 2.6 * 0.5;
    assertEquals(30.0, closed.meanC());
    assertEquals(0, closed.blockS());
    assertEquals(0, closed.sumKs());
    assertEquals(0, closed.leastJ());
    assertEquals(4000 + least - answered, closed.unansweredJ(), 1e-6);
    BlindAccount fell =
        after(new BlindAccount(29, 29 * 30, 9000, 31, Double.NaN, 4000, 0), 1, true, 30);
    assertEquals(4000 + least, fell.unansweredJ(), 1e-6, "a fall is no credit");
    BlindAccount first =
        after(new BlindAccount(29, 29 * 30, 9000, Double.NaN, Double.NaN, 0, 0), 1, true, 30);
    assertEquals(least, first.unansweredJ(), 1e-6);
    BlindAccount none =
        after(new BlindAccount(29, 29 * 30, -9000, 30, Double.NaN, 100, 0), 1, true, 30);
    assertEquals(0, none.unansweredJ(), "never in debt");
    BlindAccount full =
        after(new BlindAccount(29, 29 * 30, 90_000, 30, Double.NaN, 0, 0), 1, true, 30);
    assertEquals(40_000, full.unansweredJ());
  }

  @Test
  @Verifies(value = "SR-10", side = Side.WITHHOLDS)
  void twentyKilojoulesUnansweredAreFound() {
    assertEquals(true, new BlindAccount(0, 0, 0, 40, Double.NaN, 20_000, 0).unanswered());
  }

  @Test
  @Verifies(value = "SR-10", side = Side.ALLOWS)
  void lessIsNot() {
    assertEquals(false, new BlindAccount(0, 0, 0, 40, Double.NaN, 19_999, 0).unanswered());
  }

  @Test
  void fromAThirdOfThemTheAccountDecidesAlone() {
    assertEquals(true, new BlindAccount(0, 0, 0, 40, Double.NaN, 7500, 0).decides());
    assertEquals(false, new BlindAccount(0, 0, 0, 40, Double.NaN, 7499, 0).decides());
  }

  private static BlindAccount risen(double offS, double riseK, int blocks) {
    return risen(32, offS, riseK, blocks);
  }

  private static BlindAccount risen(double fromC, double offS, double riseK, int blocks) {
    HeatLag off = new HeatLag(0, 0, 0, 0, 0, 0, offS);
    BlindAccount before = new BlindAccount(29, 29 * fromC, 0, fromC, Double.NaN, 0, blocks);
    return before.next(input(1, false, fromC + 30 * riseK), off, TRAY, RoomModel.REFERENCE);
  }

  /** E4: stuck on at 250 W the bath leaves 40 °C by 5 K in 264 s, 0.57 K in each block. */
  @Test
  @Verifies(value = "SR-11", side = Side.WITHHOLDS)
  void fourBlocksOfARiseLongAfterTheLastHeatAreFound() {
    assertEquals(1, risen(330, 0.57, 0).risingBlocks());
    assertEquals(1, risen(330, 0.1001, 0).risingBlocks());
    assertEquals(4, risen(330, 0.1001, 3).risingBlocks());
    assertEquals(4, risen(330, 0.1001, 4).risingBlocks());
    assertEquals(true, risen(330, 0.1001, 3).rises(input(1, false, 40)));
  }

  @Test
  @Verifies(value = "SR-11", side = Side.ALLOWS)
  void aCoastOrARestOrAPourIsNot() {
    assertEquals(0, risen(329.9, 0.57, 3).risingBlocks());
    assertEquals(0, risen(330, 0.099, 3).risingBlocks());
    assertEquals(false, risen(330, 0.57, 2).rises(input(1, false, 40)));
    assertEquals(0, risen(31.9, 330, 0.57, 3).risingBlocks(), "a warm room does that");
  }

  @Test
  void twiceTheLiquidAnswersMoreHeat() {
    TrayModel two = new TrayModel(2, 0.072, 1100, 18, 2.5, 0.5, 250, 1);
    BlindAccount before = new BlindAccount(29, 29 * 30, 9000, 29.5, Double.NaN, 4000, 0);
    BlindAccount one = after(before, 1, true, 30);
    BlindAccount both = before.next(input(1, true, 30), LONG_OFF, two, RoomModel.REFERENCE);
    double more = TrayModel.LITRE_J_PER_K * 2 * 0.5;
    assertEquals(one.unansweredJ() - more, both.unansweredJ(), 1e-6);
  }

  /** Twice the reference plate's 0.5 W/K is taken off, and what the largest plate has stored. */
  @Test
  void whereAPlateIsSeenItsLossAndItsStoreAreNoAnswerOwed() {
    BlindAccount on = seen(BlindAccount.START, 1, 20, 50);
    assertEquals(0.65 * 250 - 30, on.leastJ(), 1e-9);
    assertEquals(0.65 * 250, seen(BlindAccount.START, 1, 20, 19).leastJ(), 1e-9);
    BlindAccount before = new BlindAccount(29, 29 * 20, 9000, 20, 48, 4000, 0);
    double rose = seen(before, 1, 20, 50).unansweredJ();
    assertEquals(4000 + 9000 + 0.65 * 250 - 30 - 2 * 2000, rose, 1e-6);
    assertEquals(50, seen(before, 1, 20, 50).plateC());
    double fell = seen(before, 1, 20, 20).unansweredJ();
    assertEquals(4000 + 9000 + 0.65 * 250, fell, 1e-6, "a fall of the plate is no heat given");
  }

  private static BlindAccount seen(BlindAccount before, double dt, double bathC, double plateC) {
    ThermalInput.Sample plate = new ThermalInput.Sample(plateC, 1);
    ThermalInput.Sample bath = new ThermalInput.Sample(bathC, 1);
    ThermalInput in = new ThermalInput(dt, true, State.HEATING, bath, plate);
    RoomModel dryRoom = new RoomModel(20, 1, 0.15); // at the dew point nothing evaporates
    return before.next(in, LONG_OFF, TRAY, dryRoom);
  }

  @Test
  void aRiseCountsWhereNoPlateIsSeenAndNobodyFillsTheTray() {
    BlindAccount risen = new BlindAccount(0, 0, 0, 40, Double.NaN, 0, 4);
    ThermalInput.Sample bath = new ThermalInput.Sample(40, 1);
    ThermalInput.Sample none = ThermalInput.Sample.NONE;
    assertEquals(true, risen.rises(new ThermalInput(1, false, State.AFTER_RUN, bath, none)));
    assertEquals(false, risen.rises(new ThermalInput(1, false, State.OFF, bath, none)));
    assertEquals(false, risen.rises(new ThermalInput(1, false, State.AFTER_RUN, bath, bath)));
  }
}
