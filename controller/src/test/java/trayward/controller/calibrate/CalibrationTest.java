package trayward.controller.calibrate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Corrections and uncertainties from ice points and references, by hand after the GUM. */
class CalibrationTest {

  private static final Calibration NONE = Calibration.none("28-000000000001");

  private static Point ice(double rawC, double scatterK) {
    return Point.ice(new Stand(30, 30, rawC, scatterK), 20_700);
  }

  private static Point reference(double celsius, double statedK, double rawC, double scatterK) {
    return Point.reference(celsius, statedK, new Stand(30, 30, rawC, scatterK), 20_700);
  }

  /** Row B1.t: ±0.5 °C from -10 to 85 °C (DS18B20 data sheet, read in a secondary source). */
  @Test
  void aProbeAsBoughtHasTheUncertaintyOfItsDataSheet() {
    assertEquals(Correction.NONE, NONE.correction());
    assertFalse(NONE.known());
    assertEquals(0.5, NONE.uncertaintyK(-10));
    assertEquals(0.5, NONE.uncertaintyK(40));
    assertEquals(0.5, NONE.uncertaintyK(85));
    assertEquals(2, NONE.uncertaintyK(85.1));
  }

  @Test
  void anIcePointAloneIsAnOffset() {
    Calibration ice = NONE.withIce(ice(0.4375, 0.03));
    assertEquals(new Correction(1, -0.4375), ice.correction());
    assertEquals("", ice.implausible());
  }

  @Test
  void aReferenceAloneIsAnOffset() {
    Calibration reference = NONE.withReference(reference(40, 0.1, 39.5, 0.03));
    assertEquals(new Correction(1, 0.5), reference.correction());
  }

  @Test
  void iceAndReferenceAreALineThroughBoth() {
    Calibration both = NONE.withIce(ice(0.5, 0.03)).withReference(reference(40, 0.1, 40.1, 0.03));
    assertEquals(40 / 39.6, both.correction().slope(), 1e-12);
    assertEquals(0, both.correction().apply(0.5), 1e-12);
    assertEquals(40, both.correction().apply(40.1), 1e-12);
    assertEquals("", both.implausible());
  }

  /**
   * At the reference itself: stated 0.1 K is 0.05 K standard; scatter 0.03 K; a step of 1/16 K
   * taken and a step read, 0.018042 K each. √(0.05² + 0.03² + 2·0.018042²) = 0.063648, twice that
   * (GUM 4.3.7, 5.1.2, 6.2.1).
   */
  @Test
  void theUncertaintyAtTheReferenceIsTheRootOfTheSumOfSquares() {
    Calibration reference = NONE.withReference(reference(40, 0.1, 39.5, 0.03));
    assertEquals(0.12730, reference.uncertaintyK(40), 5e-6);
  }

  /**
   * An ice point used at 40 °C: the unknown slope, uniform within 1 K over 95 K, adds 40/95/√3 =
   * 0.243095 K to √(0.025² + 0.03² + 2·0.018042²) = 0.046648 K: 0.247530 K, twice that.
   */
  @Test
  void anIcePointAloneTellsLittleAboutAWarmBathAndSaysSo() {
    Calibration ice = NONE.withIce(ice(0.4375, 0.03));
    assertEquals(0.09330, ice.uncertaintyK(0), 5e-6);
    assertEquals(0.49506, ice.uncertaintyK(40), 5e-6);
  }

  /** At either point that point's own; half-way half of each squared, and the bend of 0.1 K/√3. */
  @Test
  void betweenTwoPointsBothCountByTheirNearness() {
    Point low = ice(0.5, 0.03);
    Point high = reference(40, 0.1, 40.1, 0.03);
    Calibration both = NONE.withIce(low).withReference(high);
    assertEquals(0.12730, both.uncertaintyK(40), 5e-6);
    assertEquals(0.09330, both.uncertaintyK(0), 5e-6);
    // 0.25·(0.05² + 0.03² + q) + 0.25·(0.025² + 0.03² + q) + q + 0.01/3, with q = 1/16²/12
    assertEquals(0.14217, both.uncertaintyK(20), 5e-6);
    assertTrue(both.uncertaintyK(55) > both.uncertaintyK(45), "it grows beyond the reference");
  }

  @Test
  void aBetterReferenceIsALesserUncertaintyAndNoneIsFinerThanTheSteps() {
    double coarse = NONE.withReference(reference(40, 0.5, 40, 0)).uncertaintyK(40);
    double fine = NONE.withReference(reference(40, 0.005, 40, 0)).uncertaintyK(40);
    assertTrue(coarse > 0.5, "a reference as bad as the data sheet wins nothing");
    assertTrue(fine > 0.05, "a probe of 1/16 K never deserves a second decimal: " + fine);
  }

  @Test
  void whatIsFurtherOffThanASoundProbeIsRefusedInASentence() {
    String warm = NONE.withIce(ice(20.25, 0.03)).implausible();
    assertEquals(
        "the probe read 20.25 °C at 0.00 °C: it is off by 20.25 K, and at most 2 K is believed of a"
            + " sound probe",
        warm);
    assertEquals("", NONE.withReference(reference(40, 0.1, 42, 0)).implausible());
    assertFalse(NONE.withReference(reference(40, 0.1, 42.01, 0)).implausible().isEmpty());
    assertFalse(NONE.withReference(reference(40, 0.1, 37.99, 0)).implausible().isEmpty());
  }

  @Test
  void aSlopeNoSoundProbeHasIsRefusedInASentence() {
    Calibration ice = NONE.withIce(ice(0, 0));
    assertEquals("", ice.withReference(reference(40, 0.1, 40.8, 0)).implausible());
    String steep = ice.withReference(reference(40, 0.1, 39.2, 0)).implausible();
    assertTrue(steep.contains("slope of 1.020, outside 0.98 to 1.02"), steep);
    String flat = ice.withReference(reference(40, 0.1, 40.83, 0)).implausible();
    assertTrue(flat.contains("outside 0.98 to 1.02"), flat);
    Calibration same = NONE.withIce(ice(1, 0)).withReference(reference(15, 0.1, 1, 0));
    assertFalse(same.implausible().isEmpty());
  }

  /** Slope and offset each allowed, and together beyond the bound at the plate. */
  @Test
  void aLineThatLeavesTheBoundOnThePlateIsRefused() {
    Calibration both = NONE.withIce(ice(-1, 0)).withReference(reference(40, 0.1, 38.3, 0));
    assertTrue(both.implausible().contains("at 70 °C"), both.implausible());
  }

  @Test
  void aNewPointTakesThePlaceOfTheOldOneOfItsKind() {
    Calibration both =
        NONE.withIce(ice(0.5, 0)).withReference(reference(40, 0.1, 40.5, 0)).withIce(ice(0.25, 0));
    assertEquals(0.25, both.ice().orElseThrow().rawC());
    assertEquals(40.5, both.reference().orElseThrow().rawC());
  }
}
