package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
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

  @Test
  void whatCannotBeSaidIsToldWithItsRange() {
    assertEquals(LevelTold.POURED_L.words(), new LevelTold.Poured(50).accepted());
    assertEquals(LevelTold.LEVEL_L.words(), new LevelTold.Holds(50).accepted());
    assertTrue(new LevelTold.Poured(0.001).believable());
    assertFalse(new LevelTold.Holds(0.04).believable());
    assertTrue(new LevelTold.Holds(0.05).believable());
  }
}
