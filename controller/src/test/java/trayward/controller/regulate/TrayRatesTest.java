package trayward.controller.regulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Against row F0 of the check values and the heat capacities of the reference tray page. */
class TrayRatesTest {

  private static final TrayRates RATES = Believed.rates();

  /** F0: 45.02 W evaporate at 40 °C; 2.5 W/K of dry losses over 20 K are 50 W; 4180 J/K. */
  @Test
  void atFortyDegreesTheBathCoolsByThePublishedLosses() {
    assertEquals(45.02 / 4180, RATES.evaporationRate(40), 1e-3 * 45.02 / 4180);
    assertEquals(95.02 / 4180, RATES.lossRate(40), 1e-3 * 95.02 / 4180);
  }

  /** F0: hold plate 45.279 °C, hold duty 0.4307. */
  @Test
  void atTheHoldPointNeitherPlateNorBathMoves() {
    assertEquals(0, RATES.bathRate(45.279, 40, 40), 1e-5);
    assertEquals(0, RATES.plateRate(0.4307, 45.279, 40), 1e-4);
  }

  @Test
  void eachRateIsItsWattsOverItsCapacity() {
    assertEquals(250.0 / 1100, RATES.plateRate(1, 20, 20), 1e-12);
    assertEquals(-0.5 * 10 / 1100, RATES.plateRate(0, 30, 30), 1e-12);
    assertEquals(-18.0 * 10 / 1100 - 0.5 * 20 / 1100, RATES.plateRate(0, 40, 30), 1e-12);
    assertEquals(18.0 * 10 / 4180 - RATES.lossRate(30), RATES.bathRate(40, 30, 30), 1e-12);
  }

  /** 6 W/K between wall and bath as on the reference tray page; a wall of 600 J/K. */
  @Test
  void theWallTakesFromTheBathWhatItIsColder() {
    TrayRates r = TrayRates.of(new TrayBelief(TrayModel.REFERENCE, 5, 3, 600), Believed.ROOM);
    assertEquals(-6.0 * 4 / 4180, r.bathRate(30, 30, 26) - r.bathRate(30, 30, 30), 1e-12);
    assertEquals(6.0 / 600, r.wallPerS(), 1e-12);
  }

  @Test
  void nothingCondensesIntoABathColderThanTheDewPoint() {
    assertEquals(0, RATES.evaporationRate(5), 0);
    assertTrue(RATES.evaporationRate(15) > 0); // dew point 9.3 °C at 20 °C and half humidity
  }

  /** F0's gain of 41.604 K is 250 UA/(UA slope + Lp (UA + slope)): the slope is 5.355 W/K. */
  @Test
  void theSlopeOfTheLossesIsThatOfThePublishedGain() {
    double slope = RATES.lossSlope(40) * 4180;
    double gain = 250 * 18 / (18 * (slope + 0.5) + 0.5 * slope);
    assertEquals(41.6044, gain, 0.02);
  }

  /** Latent heat at 40 °C 2406.1 J/g (IAPWS): 45.02 W take 18.7 mg a second, of 1000 g. */
  @Test
  void whatEvaporatesIsGoneFromTheBath() {
    assertEquals(45.02 / 2406.1 / 1000, RATES.vanishingPerS(40), 2e-8);
  }
}
