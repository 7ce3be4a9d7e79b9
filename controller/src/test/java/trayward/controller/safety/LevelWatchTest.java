package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;

/** The liquid by what is said, poured and evaporated, as a value. */
class LevelWatchTest {

  private static LevelWatch fresh() {
    return LevelWatch.start(TrayModel.REFERENCE, RoomModel.REFERENCE, Limits.STANDARD);
  }

  private static LevelWatch hours(LevelWatch from, double hours, double bathC) {
    LevelWatch watch = from;
    ThermalInput.Sample bath = new ThermalInput.Sample(bathC, 1);
    ThermalInput minute =
        new ThermalInput(60, false, State.HOLDING, bath, ThermalInput.Sample.NONE);
    for (long left = Math.round(hours * 60); left > 0; left--) {
      watch = watch.next(minute);
    }
    return watch;
  }

  /**
   * reference-tray.md: 45.0 W at 40 °C; over the latent heat of 2406.1 J/g (IAPWS) 67.3 mL an hour.
   */
  @Test
  @Verifies(value = "SR-28", side = Side.ALLOWS)
  void anHourAtFortyDegreesTakesWhatTheCorrelationAndTheLatentHeatSay() {
    LevelEstimate now = hours(fresh(), 1, 40).estimate();
    assertEquals(1 - 45.0 * 3600 / 2406.1 / 1000, now.litres(), 0.0005);
    assertEquals(0.9 * (1 - 2 * 0.0673), now.lowL(), 0.001);
    assertEquals(1.1 * (1 - 0.5 * 0.0673), now.highL(), 0.001);
    assertEquals(Level.WELL, now.level());
  }

  @Test
  @Verifies(value = "SR-28", side = Side.WITHHOLDS)
  void fifteenPerCentLessWarnsAndHalfOfItWithholdsUntilSomebodyConfirms() {
    LevelWatch watch = fresh();
    assertEquals(Level.WELL, hours(watch, 2.2, 40).level());
    LevelWatch low = hours(watch, 2.3, 40);
    assertEquals(Level.LOW, low.level());
    assertEquals(0.15, low.estimate().addL(), 0.01);
    LevelWatch unsure = hours(watch, 7.5, 40);
    assertEquals(Level.UNSURE, unsure.level());
    LevelWatch poured = unsure.told(new LevelTold.Poured(0.6));
    assertEquals(Level.UNSURE, poured.level(), "a pour is no look at the tray");
    assertEquals(Level.WELL, poured.told(new LevelTold.AsSaid()).level());
    assertEquals(0.5, unsure.told(new LevelTold.Holds(0.5)).estimate().litres());
  }

  @Test
  @Verifies(value = "SR-28", side = Side.ALLOWS)
  void toppingUpEveryHourForADayStaysWellAndNeverGrowsWhatWasSaid() {
    LevelWatch watch = fresh();
    for (int hour = 0; hour < 24; hour++) {
      watch = hours(watch, 1, 40).told(new LevelTold.Poured(0.067));
      assertEquals(Level.WELL, watch.level(), "hour " + hour);
    }
    assertEquals(1, watch.estimate().litres(), 0.03);
  }

  @Test
  @Verifies(value = "SR-28", side = Side.WITHHOLDS)
  void aFullerTrayIsJudgedByWhatItWasFilledTo() {
    LevelWatch watch = fresh().told(new LevelTold.Poured(1));
    assertEquals(2, watch.estimate().litres(), 1e-9);
    assertEquals(Level.WELL, hours(watch, 3, 40).level());
    assertEquals(Level.LOW, hours(watch, 4.8, 40).level());
  }

  @Test
  void anUnknownBathEvaporatesNothing() {
    ThermalInput blind =
        new ThermalInput(
            3600, false, State.OFF, ThermalInput.Sample.NONE, ThermalInput.Sample.NONE);
    assertEquals(1, fresh().next(blind).estimate().litres());
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -1, 0.0009, 20.1, Double.NaN, Double.POSITIVE_INFINITY})
  void litresThatCannotBeAreNotBelieved(double litres) {
    assertFalse(new LevelTold.Poured(litres).believable());
    assertFalse(new LevelTold.Holds(litres).believable());
    assertTrue(new LevelTold.AsSaid().believable());
  }

  private static LevelWatch with(LevelBook book, boolean low) {
    ThermalInput blind =
        new ThermalInput(1, false, State.OFF, ThermalInput.Sample.NONE, ThermalInput.Sample.NONE);
    return new LevelWatch(
            TrayModel.REFERENCE,
            RoomModel.REFERENCE,
            Limits.STANDARD,
            book,
            HeatTrail.START,
            null,
            low,
            false)
        .next(blind);
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
    Limits quarter = Limits.STANDARD.with(Limit.LEVEL_LOW_SHARE, 0.25);
    LevelWatch start = LevelWatch.start(TrayModel.REFERENCE, RoomModel.REFERENCE, quarter);
    assertEquals(Level.WELL, start.told(new LevelTold.Holds(1)).level());
    assertTrue(exactly(0.75, 1).low(), "the limit itself warns");
    assertTrue(exactly(1, 0.75).low(), "and where it is surely missing");
  }

  /** A quarter warns, a half withholds: shares that are exact in binary. */
  private static LevelWatch exactly(double best, double high) {
    ThermalInput blind =
        new ThermalInput(1, false, State.OFF, ThermalInput.Sample.NONE, ThermalInput.Sample.NONE);
    return new LevelWatch(
            TrayModel.REFERENCE,
            RoomModel.REFERENCE,
            Limits.STANDARD.with(Limit.LEVEL_LOW_SHARE, 0.25),
            new LevelBook(1, best, 0, high, false),
            HeatTrail.START,
            null,
            false,
            false)
        .next(blind);
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
    return watch.next(
        new ThermalInput(1, false, State.HEATING, ThermalInput.Sample.NONE, NO_PLATE));
  }

  private static final ThermalInput.Sample NO_PLATE = ThermalInput.Sample.NONE;

  @Test
  void whatCannotBeSaidIsToldWithItsRange() {
    assertEquals(LevelTold.POURED_L.words(), new LevelTold.Poured(50).accepted());
    assertEquals(LevelTold.LEVEL_L.words(), new LevelTold.Holds(50).accepted());
    assertTrue(new LevelTold.Poured(0.001).believable());
    assertFalse(new LevelTold.Holds(0.04).believable());
    assertTrue(new LevelTold.Holds(0.05).believable());
  }
}
