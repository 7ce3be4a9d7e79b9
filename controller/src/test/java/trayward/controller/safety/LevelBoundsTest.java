package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;

/** From which share of missing liquid the level warns and withholds, and the first rate seen. */
class LevelBoundsTest {

  private static LevelWatch fresh() {
    return LevelWatch.start(TrayModel.REFERENCE, RoomModel.REFERENCE, Limits.STANDARD);
  }

  /** What a scan that reads nothing makes of a book. */
  private static LevelWatch scan(Limits limits, LevelBook book, boolean low) {
    TrayModel tray = TrayModel.REFERENCE;
    RoomModel room = RoomModel.REFERENCE;
    return new LevelWatch(tray, room, limits, book, HeatTrail.START, null, low, false).next(BLIND);
  }

  private static final ThermalInput BLIND =
      new ThermalInput(1, false, State.OFF, ThermalInput.Sample.NONE, ThermalInput.Sample.NONE);

  private static LevelWatch with(LevelBook book, boolean low) {
    return scan(Limits.STANDARD, book, low);
  }

  /** A quarter warns, a half withholds: shares that are exact in binary. */
  private static LevelWatch exactly(double best, double high) {
    Limits quarter = Limits.STANDARD.with(Limit.LEVEL_LOW_SHARE, 0.25);
    return scan(quarter, new LevelBook(1, best, 0, high, false), false);
  }

  private static LevelBook book(double best, double high, boolean rated) {
    return new LevelBook(2, best, 0.5, high, rated);
  }

  @Test
  @Verifies(value = "SR-28", side = Side.WITHHOLDS)
  void theWarningComesAtFifteenPerCentByTheBestEstimateOrSurely() {
    assertFalse(with(book(1.71, 2, false), false).low());
    assertTrue(with(book(1.69, 2, false), false).low());
    assertTrue(with(book(1.9, 1.69, false), false).low(), "surely missing");
    assertTrue(exactly(0.75, 1).low(), "the limit itself warns");
    assertTrue(exactly(1, 0.75).low(), "and where it is surely missing");
  }

  @Test
  @Verifies(value = "SR-28", side = Side.ALLOWS)
  void aWarningThatStandsGoesThreePerCentLater() {
    assertTrue(with(book(1.75, 2, false), true).low());
    assertFalse(with(book(1.77, 2, false), true).low());
    assertFalse(with(book(1.75, 2, false), false).low());
  }

  @Test
  @Verifies(value = "SR-28", side = Side.WITHHOLDS)
  void heatWaitsFromHalfMissingOnceTheLeastIsLowTooAndARateCountsATenthMore() {
    assertEquals(Level.UNSURE, exactly(0.5, 0.75).level());
    assertEquals(Level.LOW, exactly(0.5, 0.76).level(), "it may well be full");
    assertEquals(Level.LOW, exactly(0.51, 0.75).level());
    // 2 L said: 1.1 L by a rate may be 0.99 L.
    assertTrue(with(book(1.1, 1.6, true), false).unsure());
    assertFalse(with(book(1.12, 1.6, true), false).unsure());
    assertFalse(with(book(1.1, 1.6, false), false).unsure());
  }

  @Test
  void theFirstRateThatAgreesIsTheAnchorAndOneThatDoesNotOverrules() {
    LevelWatch agrees = warmUp(fresh());
    assertNotNull(agrees.anchor());
    assertEquals(agrees.book().bestL(), agrees.anchor().litres(), 1e-4, "what the book said");
    assertFalse(agrees.book().rated());
    LevelWatch again = warmUp(agrees);
    assertEquals(agrees.anchor(), again.anchor(), "the first one stays");
    LevelWatch doubted = warmUp(fresh().told(new LevelTold.Holds(8)));
    assertNull(doubted.anchor());
    assertTrue(doubted.book().rated());
    assertTrue(doubted.book().bestL() < 2, doubted.book().toString());
  }

  /** Two minutes at full heat, by which a litre on 250 W warms by some 0.55 K in ten seconds. */
  private static LevelWatch warmUp(LevelWatch from) {
    LevelWatch watch = from;
    for (int s = 0; s < 121; s++) {
      ThermalInput.Sample bath = new ThermalInput.Sample(20 + 0.055 * s, s);
      ThermalInput.Sample plate = new ThermalInput.Sample(33 + 0.055 * s, s);
      watch = watch.next(new ThermalInput(1, true, State.HEATING, bath, plate));
    }
    return watch.next(BLIND);
  }
}
