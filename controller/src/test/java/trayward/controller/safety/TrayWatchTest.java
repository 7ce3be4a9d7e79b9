package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.event.TripCause;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;

/** The watch over heat on a tiny tray: each fault is named, and a healthy tray never. */
class TrayWatchTest {

  @ParameterizedTest
  @CsvSource({
    "1, 1100, 18, 250",
    "0.5, 700, 12, 400",
    "3, 1800, 12, 150",
    "0.1, 150, 5, 80",
    "0.3, 400, 4, 100",
    "2, 800, 40, 400"
  })
  @Verifies(value = "SR-07", side = Side.ALLOWS)
  @Verifies(value = "SR-10", side = Side.ALLOWS)
  @Verifies(value = "SR-11", side = Side.ALLOWS)
  void aHealthyTrayDeclaredByWattsAndLitresIsNeverNamed(
      double litres, double jPerK, double wPerK, double watts) {
    for (boolean seesPlate : new boolean[] {true, false}) {
      TinyTray tray = new TinyTray(litres, jPerK, wPerK, watts, seesPlate);
      assertEquals(Set.of(), tray.told(2700));
      assertTrue(tray.bathC > 30, "it warmed to " + tray.bathC);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {55, 80, 120, 300, 1800})
  @Verifies(value = "SR-10", side = Side.WITHHOLDS)
  void anOpenHeaterIsNamedWithinAMinuteOfHeat(int atS) {
    TinyTray tray = TinyTray.reference(true);
    tray.run(atS).open = true;
    double before = tray.commandedS;
    tray.run(900);
    assertEquals(Set.of(TripCause.HEAT_NOT_ARRIVING), tray.watch.findings());
    assertTrue(tray.commandedS - before <= 60, "after " + (tray.commandedS - before) + " s");
  }

  /** E9: with heat off a plate on a welded contact stands 3 K off in 14.9 s; the look adds 36 s. */
  @ParameterizedTest
  @ValueSource(ints = {1800, 2500})
  @Verifies(value = "SR-11", side = Side.WITHHOLDS)
  void aWeldedContactIsNamed(int atS) {
    TinyTray tray = TinyTray.reference(true);
    tray.run(atS).welded = true;
    tray.run(300);
    assertEquals(Set.of(TripCause.RELAY_STUCK), tray.watch.findings());
    assertTrue(tray.seconds() - atS < 75, "after " + (tray.seconds() - atS));
  }

  @ParameterizedTest
  @ValueSource(ints = {55, 120, 300, 1800})
  @Verifies(value = "SR-07", side = Side.WITHHOLDS)
  void aDryTrayIsNamedBeforeItsPlateIsHot(int atS) {
    TinyTray tray = TinyTray.reference(true);
    tray.run(atS).dry = true;
    tray.run(900);
    assertEquals(Set.of(TripCause.TRAY_DRY), tray.watch.findings());
    assertTrue(tray.plateC < 72, "plate " + tray.plateC);
  }

  @Test
  @Verifies(value = "SR-10", side = Side.WITHHOLDS)
  void aProbeThatLeftItsPlaceIsNamed() {
    TinyTray out = TinyTray.reference(true);
    out.run(1800).bathOut = true;
    assertEquals(Set.of(TripCause.HEAT_NOT_ARRIVING), out.run(900).watch.findings());
    TinyTray off = TinyTray.reference(true);
    off.run(1800).plateOff = true;
    assertEquals(Set.of(TripCause.HEAT_NOT_ARRIVING), off.run(900).watch.findings());
  }

  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void aFrozenProbeIsNamedUntilItMoves() {
    TinyTray tray = TinyTray.reference(true);
    tray.run(200).bathFrozen = true;
    tray.run(900);
    assertEquals(Set.of(TripCause.BATH_PROBE_BAD), tray.watch.findings());
    tray.told(60);
    assertEquals(Set.of(TripCause.BATH_PROBE_BAD), tray.watch.findings());
    tray.bathFrozen = false;
    tray.resting = State.LOCKOUT;
    tray.told(3);
    assertEquals(Set.of(), tray.watch.findings());
    TinyTray plate = TinyTray.reference(true);
    plate.run(200).plateFrozen = true;
    plate.run(900);
    assertEquals(Set.of(TripCause.PLATE_PROBE_BAD), plate.watch.findings());
    plate.resting = State.LOCKOUT;
    plate.told(60);
    assertEquals(Set.of(TripCause.PLATE_PROBE_BAD), plate.watch.findings());
    plate.plateFrozen = false;
    plate.told(5);
    assertEquals(Set.of(), plate.watch.findings());
  }

  @Test
  @Verifies(value = "SR-10", side = Side.WITHHOLDS)
  void withoutAPlateProbeTwentyKilojoulesDecide() {
    TinyTray tray = TinyTray.reference(false);
    tray.run(60).open = true;
    tray.run(900);
    assertEquals(Set.of(TripCause.HEAT_NOT_ARRIVING), tray.watch.findings());
    assertTrue(tray.seconds() - 60 < 200, "after " + (tray.seconds() - 60));
    assertEquals(BlindAccount.START, tray.watch.account(), "what follows is judged afresh");
    tray.resting = State.LOCKOUT;
    tray.told(4.8);
    assertEquals(Set.of(TripCause.HEAT_NOT_ARRIVING), tray.watch.findings());
    tray.told(0.4);
    assertEquals(Set.of(), tray.watch.findings());
  }

  /** E7: without liquid a plate reaches 100 °C 269 s from a hold: the look begins well before. */
  @ParameterizedTest
  @ValueSource(ints = {700, 1500, 2500})
  @Verifies(value = "SR-07", side = Side.WITHHOLDS)
  @Verifies(value = "SR-10", side = Side.WITHHOLDS)
  void withoutOneAWarmBathThatDoesNotAnswerIsLookedAt(int atS) {
    TinyTray dry = TinyTray.reference(false);
    dry.run(atS).dry = true;
    assertEquals(Set.of(TripCause.HEAT_NOT_ARRIVING), dry.run(900).watch.findings());
    assertTrue(dry.plateC < 110, "plate " + dry.plateC);
    TinyTray open = TinyTray.reference(false);
    open.run(atS).open = true;
    assertEquals(Set.of(TripCause.HEAT_NOT_ARRIVING), open.run(900).watch.findings());
  }

  /** The reference tray's own loss at 60 °C is far above 120 W: its bath never comes to set. */
  @Test
  @Verifies(value = "SR-10", side = Side.ALLOWS)
  void withoutOneAHeaterTooWeakIsLookedAtAndGoesOn() {
    TinyTray tray = new TinyTray(1, 1100, 18, 120, false);
    tray.plateC = 50;
    tray.bathC = 50;
    tray.setC = 60;
    boolean looked = false;
    for (int s = 0; s < 1800; s++) {
      assertEquals(Set.of(), tray.told(1));
      looked |= tray.watch.looking();
    }
    assertTrue(looked, "the bath fell under full heat");
  }

  @Test
  @Verifies(value = "SR-11", side = Side.WITHHOLDS)
  void withoutOneABathThatRisesLongAfterHeatIsNamed() {
    TinyTray tray = TinyTray.reference(false);
    tray.run(600).resting = State.AFTER_RUN;
    tray.run(900).welded = true;
    assertEquals(Set.of(TripCause.RELAY_STUCK), tray.run(900).watch.findings());
    TinyTray off = TinyTray.reference(false);
    off.resting = State.OFF; // somebody fills it with warmer and warmer water
    off.welded = true;
    assertEquals(Set.of(), off.told(1500));
  }

  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void withoutOneAFrozenBathProbeIsNamedByItsStop() {
    TinyTray tray = TinyTray.reference(false);
    tray.run(300).bathFrozen = true;
    assertEquals(Set.of(TripCause.BATH_PROBE_BAD), tray.run(900).watch.findings());
  }

  @Test
  void heatIsHeldOffForALookAndTheLookEndsWithTheRun() {
    TinyTray tray = TinyTray.reference(true);
    tray.run(600).dry = true;
    while (!tray.watch.looking()) {
      tray.told(0.1);
    }
    assertEquals(Set.of(), tray.watch.findings());
    tray.resting = State.LOCKOUT;
    tray.told(0.1);
    assertFalse(tray.watch.looking());
    tray.told(1);
    assertEquals(null, tray.watch.bank());
  }

  @Test
  void aGapInTheReadingsIsNoCourse() {
    TrayWatch watch = TrayWatch.start(TrayModel.REFERENCE, RoomModel.REFERENCE);
    long taken = 0;
    for (int i = 0; i < 12; i++) {
      watch = at(watch, taken += 1_000_000_000L, State.PROVING, 20);
    }
    assertTrue(watch.bank() != null);
    assertTrue(at(watch, taken + 5_000_000_000L, State.PROVING, 20).bank() != null);
    assertEquals(null, at(watch, taken + 5_000_000_001L, State.PROVING, 20).bank());
    assertEquals(null, at(watch, taken + 1_000_000_000L, State.OFF, 20).bank());
    assertTrue(at(watch, taken, State.OFF, 20).bank() != null, "no news");
  }

  @Test
  void aPlateMovedByHandBeforeThePurgeIsOverBeginsAnew() {
    TrayWatch watch = TrayWatch.start(TrayModel.REFERENCE, RoomModel.REFERENCE);
    long taken = 0;
    for (int i = 0; i < 60; i++) {
      watch = at(watch, taken += 1_000_000_000L, State.PURGING, i < 20 ? 20 : 30);
    }
    PlateBank bank = watch.bank();
    assertTrue(bank != null && bank.side() == 0 && bank.ageS() < 45);
    assertEquals(Set.of(), watch.findings());
  }

  private static TrayWatch at(TrayWatch watch, long taken, State state, double plateC) {
    ThermalInput.Sample plate = new ThermalInput.Sample(plateC, taken);
    ThermalInput.Sample bath = new ThermalInput.Sample(20, taken);
    return watch.next(new ThermalInput(1, false, state, bath, plate));
  }

  @Test
  @Verifies(value = "SR-11", side = Side.WITHHOLDS)
  void aPlateThatRisesAfterTheRunIsNamed() {
    for (State state : EnumSet.of(State.AFTER_RUN, State.LOCKOUT)) {
      TinyTray tray = TinyTray.reference(true);
      tray.run(600).resting = state;
      tray.run(100).welded = true;
      assertEquals(Set.of(TripCause.RELAY_STUCK), tray.run(300).watch.findings(), state.name());
    }
  }

  /**
   * Both stand at the room's temperature; only the heat that goes into the bath tells them apart.
   */
  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  @Verifies(value = "SR-10", side = Side.WITHHOLDS)
  void aColdPlateProbeThatFrozeIsToldFromAnOpenHeaterWithinAMinuteOfHeat() {
    TinyTray frozen = TinyTray.reference(true);
    frozen.run(30).plateFrozen = true;
    assertEquals(Set.of(TripCause.PLATE_PROBE_BAD), frozen.run(900).watch.findings());
    assertTrue(frozen.commandedS <= 60, "after " + frozen.commandedS + " s");
    TinyTray open = TinyTray.reference(true);
    open.open = true;
    open.bathC = 16; // a bath that its room warms
    open.plateC = 16;
    assertEquals(Set.of(TripCause.HEAT_NOT_ARRIVING), open.run(900).watch.findings());
    assertTrue(open.commandedS <= 60, "after " + open.commandedS + " s");
  }

  /** 120 W hold the reference tray well below 60 °C: welded, they go on in every look. */
  @Test
  @Verifies(value = "SR-11", side = Side.WITHHOLDS)
  void withoutOneAWarmBathThatALookDoesNotCoolIsNamed() {
    TinyTray tray = new TinyTray(1, 1100, 18, 120, false);
    tray.plateC = 50;
    tray.bathC = 50;
    tray.setC = 60;
    tray.run(1800).welded = true;
    assertEquals(Set.of(TripCause.RELAY_STUCK), tray.run(3600).watch.findings());
  }

  private static ThermalInput second(long s, boolean heat, double secondC) {
    ThermalInput.Sample first = new ThermalInput.Sample(20, s * 1_000_000_000L);
    ThermalInput.Sample other = new ThermalInput.Sample(secondC, s * 1_000_000_000L);
    return new ThermalInput(1, heat, State.HEATING, first, ThermalInput.Sample.NONE, other);
  }

  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void aBathProbeThatStandsWhileTheSecondGrowsWarmerIsNamed() {
    for (double perS : new double[] {0.01, 0}) {
      TrayWatch watch = TrayWatch.start(TrayModel.REFERENCE, RoomModel.REFERENCE);
      for (int s = 0; s < 900 && watch.named() == null; s++) {
        watch = watch.next(second(s, true, 20 + perS * s));
      }
      TripCause cause = perS > 0 ? TripCause.BATH_PROBE_BAD : TripCause.HEAT_NOT_ARRIVING;
      assertEquals(cause, watch.named(), perS + " K/s");
    }
  }
}
