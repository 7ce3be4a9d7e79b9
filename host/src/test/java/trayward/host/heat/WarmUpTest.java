package trayward.host.heat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The reference tray against an integration of its equations by other code; there the vapour
 * pressure is of the Magnus form, here that of IAPWS-IF97: all within 0.3 %.
 */
class WarmUpTest {

  private static final PoolEvaporation VAPOUR = new PoolEvaporation(0.072, 0.15, 20, 0.5, 1);

  private static HeatedTray tray(double litres, double coupling, double watts) {
    return new HeatedTray(litres, watts, 1100, coupling, 2.5, 0.5, 75, VAPOUR);
  }

  private static final HeatedTray REFERENCE = tray(1, 18, 250);
  private static final HeatedTray.At COLD = new HeatedTray.At(20, 20);

  /** Own integration: hold plate 45.279 °C, duty 0.4307 of 250 W. */
  @Test
  void theHoldIsThatOfTheReference() {
    assertEquals(45.279, REFERENCE.heldAt(40).plateC(), 0.01);
    assertEquals(0.4307 * 250, REFERENCE.holdW(40), 0.4307 * 250 * 0.003);
  }

  /** Own integration: to 40 ± 0.2 °C from 20 °C, the coast to 40.2 °C. */
  @ParameterizedTest(name = "{0} L, {1} W/K, {2} W: {3} s")
  @CsvSource({
    "1, 18, 250, 612.2",
    "1, 12, 250, 648.2",
    "1, 25, 250, 592.6",
    "2, 18, 250, 1059.4",
    "3, 18, 250, 1505.1",
    "1, 18, 400, 369.4",
    "1, 12, 400, 406.1"
  })
  void theQuickestWarmUpTakesTheReferenceTime(
      double litres, double coupling, double watts, double seconds) {
    WarmUp quickest =
        WarmUp.of(tray(litres, coupling, watts), COLD, 40, WarmUp.BAND_K).orElseThrow();
    assertEquals(seconds, quickest.reachedS(), seconds * 0.003);
    assertTrue(quickest.plateC() <= 75 + 1e-9, quickest.toString());
  }

  /** Own integration: without overshoot 614.5 s, off at 602.6 s, plate 50.9 °C at the peak. */
  @Test
  void withoutOvershootItTakesTwoSecondsMore() {
    WarmUp calm = WarmUp.of(REFERENCE, COLD, 40, 0).orElseThrow();
    assertEquals(614.5, calm.reachedS(), 614.5 * 0.003);
    assertEquals(602.6, calm.heatedS(), 602.6 * 0.003);
    assertEquals(50.9, calm.plateC(), 0.2);
    assertEquals(40, calm.peakC(), 0.001);
  }

  /** Own integration: 0.3 L of 20 °C, then a sheet of 210 J/K and 15 °C, into a steady hold. */
  @Test
  void pourAndSheetAreMadeUpForInTheReferenceTimes() {
    double plateC = REFERENCE.heldAt(40).plateC();
    double pouredC = (40 + 0.3 * 20) / 1.3;
    assertEquals(35.38, pouredC, 0.01);
    WarmUp pour =
        WarmUp.of(REFERENCE.holding(1.3), new HeatedTray.At(plateC, pouredC), 40, WarmUp.BAND_K)
            .orElseThrow();
    assertEquals(201.1, pour.reachedS(), 201.1 * 0.005);
    double lump = 1.3 * 4180;
    double sheetC = (lump * 40 + 210 * 15) / (lump + 210);
    assertEquals(39.07, sheetC, 0.01);
    HeatedTray wet = REFERENCE.holding((lump + 210) / 4180);
    WarmUp sheet =
        WarmUp.of(wet, new HeatedTray.At(plateC, sheetC), 40, WarmUp.BAND_K).orElseThrow();
    assertEquals(64.7, sheet.reachedS(), 64.7 * 0.01);
  }

  @Test
  void aLowPlateLimitBindsAndTakesLonger() {
    HeatedTray low = new HeatedTray(1, 400, 1100, 12, 2.5, 0.5, 52, VAPOUR);
    WarmUp slow = WarmUp.of(low, COLD, 40, 0).orElseThrow();
    assertTrue(slow.reachedS() > 450, slow.toString());
    assertTrue(slow.plateC() <= 52 + 1e-9, slow.toString());
  }

  /** All its heat ends within the band and never above: no need to switch off. */
  @Test
  void aHeaterThatJustHoldsItGetsThereSlowly() {
    HeatedTray just = REFERENCE.heatedBy(REFERENCE.holdW(39.95));
    WarmUp slow = WarmUp.of(just, COLD, 40, 0).orElseThrow();
    assertTrue(slow.reachedS() > 3600 && slow.reachedS() < 21_600, slow.toString());
  }

  /** Left alone on a hot plate it comes there by itself. */
  @Test
  void aBathOnAHotPlateMayNeedNoHeat() {
    WarmUp up = WarmUp.of(REFERENCE, new HeatedTray.At(70, 37), 40, 0).orElseThrow();
    assertEquals(0, up.heatedS());
    assertTrue(up.reachedS() > 0, up.toString());
    assertEquals(70, up.plateC());
  }

  @Test
  void aWeakHeaterNeverGetsThereAndAWarmBathIsThere() {
    assertTrue(WarmUp.of(tray(1, 18, 60), COLD, 40, 0).isEmpty());
    WarmUp none = WarmUp.of(REFERENCE, new HeatedTray.At(41, 41), 40, 0).orElseThrow();
    assertEquals(0, none.reachedS());
    assertEquals(0, none.heatedS());
  }

  @Test
  void aCoverSavesWhatEvaporates() {
    assertEquals(
        VAPOUR.wattsAt(40), REFERENCE.bathLossW(40) - REFERENCE.covered().bathLossW(40), 1e-9);
    assertTrue(REFERENCE.covered().holdW(40) < REFERENCE.holdW(40));
  }

  @Test
  void theLeastHeaterForATimeNeedsThatTime() {
    double watts = WarmUp.leastWatts(REFERENCE, COLD, 40, 614.5 * 1.003, 2000).orElseThrow();
    assertEquals(250, watts, 2);
    assertTrue(WarmUp.leastWatts(REFERENCE, COLD, 40, 10, 2000).isEmpty());
  }

  @Test
  void whatIsNoTrayIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> tray(0, 18, 250));
    assertThrows(IllegalArgumentException.class, () -> tray(1, 18, Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> tray(1, 0, 250));
  }
}
