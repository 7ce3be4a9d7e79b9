package trayward.host.air;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import trayward.host.heat.PoolEvaporation;

/** Limits, conversions and what comes off a bath. */
class GasTest {

  /** Ideal gas at 25 °C and 101.325 kPa, CODATA R; NIOSH prints 1.23. */
  @Test
  void partsPerMillionAreConvertedAsAnIdealGas() {
    assertEquals(24.4654, Gas.litresPerMol(), 0.0005);
    assertEquals(1.2273, Gas.FORMALDEHYDE.mgPerM3(1), 0.001);
    assertEquals(0.08148, Gas.FORMALDEHYDE.ppm(0.1), 0.0001);
  }

  /** CIAAW 2021: 30.026 g/mol. */
  @Test
  void formaldehydeWeighsThirty() {
    assertEquals(30.026, Gas.FORMALDEHYDE.gramsPerMol(), 0.005);
  }

  /**
   * 29 CFR 1910.1048 (c)(1), (c)(2), (b); NIOSH Pocket Guide; ACGIH 2016 notice (adoption from
   * memory); 29 CFR 1910.1000 Z-1 and Z-2 (secondary tables); NIOSH criteria document (abstract)
   * and secondary table; ammonia's recommended limit from memory.
   */
  @ParameterizedTest
  @CsvSource({
    "FORMALDEHYDE_PEL, 480, 0.75",
    "FORMALDEHYDE_STEL, 15, 2",
    "FORMALDEHYDE_ACTION, 480, 0.5",
    "FORMALDEHYDE_REL, 480, 0.016",
    "FORMALDEHYDE_CEILING, 15, 0.1",
    "FORMALDEHYDE_TLV, 480, 0.1",
    "FORMALDEHYDE_TLV_STEL, 15, 0.3",
    "SULFUR_DIOXIDE_PEL, 480, 5",
    "HYDROGEN_SULFIDE_CEILING, 0, 20",
    "HYDROGEN_SULFIDE_PEAK, 10, 50",
    "HYDROGEN_SULFIDE_REL, 10, 10",
    "HYDROGEN_SULFIDE_DANGER, 0, 100",
    "ACETIC_ACID_PEL, 480, 10",
    "AMMONIA_PEL, 480, 50",
    "AMMONIA_REL, 480, 25"
  })
  void limitsInPartsPerMillionAreAsPublished(AirLimit limit, int minutes, double ppm) {
    assertEquals(ppm, limit.ppm());
    assertEquals(minutes, limit.minutes());
    assertTrue(limit.source().length() > 10);
  }

  /** WHO 2010 (secondary): 0.1 mg/m³, 80 ppb; 29 CFR 1910.1000 Z-1 (secondary): 0.2 mg/m³. */
  @Test
  void limitsInMilligramsAreAsPublished() {
    assertEquals(0.1, AirLimit.FORMALDEHYDE_INDOOR.mgPerM3());
    assertEquals(0.080, AirLimit.FORMALDEHYDE_INDOOR.ppm(), 0.002);
    assertEquals(30, AirLimit.FORMALDEHYDE_INDOOR.minutes());
    assertEquals(0.2, AirLimit.SELENIUM_PEL.mgPerM3());
  }

  /** The same tables print the limits in mg/m³ too: 13.1, 24.5 and 34.8, recomputed. */
  @ParameterizedTest
  @CsvSource({"SULFUR_DIOXIDE_PEL, 13.1", "ACETIC_ACID_PEL, 24.5", "AMMONIA_PEL, 34.8"})
  void theTablesOwnMilligramsComeOut(AirLimit limit, double mgPerM3) {
    assertEquals(mgPerM3, limit.mgPerM3(), 0.06);
  }

  /** Psychophysical study, abstract: 0.06 mg/m³ is 0.05 ppm. */
  @Test
  void theMedianNoseSmellsATwentiethOfAPartPerMillion() {
    assertEquals(0.05, Gas.FORMALDEHYDE.ppm(AirLimit.FORMALDEHYDE_ODOUR_MG_PER_M3), 0.002);
  }

  /** 29 CFR 1910.1000(d)(1)(ii): 81.25 ppm; the second by the same formula. */
  @Test
  void aDaysMeanIsWeightedByTime() {
    List<Spell> day = List.of(new Spell(2, 150), new Spell(2, 75), new Spell(4, 50));
    assertEquals(81.25, Spell.dayMean(day));
    List<Spell> evening = List.of(new Spell(0.75, 0.3), new Spell(2, 0.1));
    assertEquals(0.053125, Spell.dayMean(evening), 1e-9);
    assertThrows(IllegalArgumentException.class, () -> new Spell(25, 1));
    assertThrows(IllegalArgumentException.class, () -> new Spell(1, Double.NaN));
  }

  /** 29 CFR 1910.1000(d)(2)(ii): 0.925. */
  @Test
  void severalSubstancesShareOneLimit() {
    assertEquals(
        0.925, Spell.mixture(List.of(500.0, 45.0, 40.0), List.of(1000.0, 200.0, 200.0)), 1e-12);
  }

  /**
   * Sander, Atmospheric Chemistry and Physics 15 (2015) 4399, entry of methanal: solubility at
   * 298.15 K (mol/(m³ Pa)) and its slope (K); pressure at 45 over that at 20 °C, recomputed.
   */
  @ParameterizedTest
  @CsvSource({
    "STAUDINGER, 32, 6800, 6.189",
    "SANDER, 32, 7100, 6.707",
    "BETTERTON, 31, 7200, 6.889",
    "ZHOU, 31, 6500, 5.711",
    "ALLOU, 34, 6400, 5.560",
    "LIU, 35, 5700, 4.608",
    "SEYFIOGLU, 53, 1600, 1.536"
  })
  void waterHoldsLessOfItWhenHot(Henry henry, double at25, double slopeK, double rise) {
    assertEquals(at25, henry.at(25), 1e-9);
    double slope = Math.log(henry.at(20) / henry.at(45)) / (1 / 293.15 - 1 / 318.15);
    assertEquals(slopeK, slope, 1e-6);
    assertEquals(rise, henry.rise(20, 45), 0.002);
  }

  /** van 't Hoff from 32 and 6800 K, recomputed. */
  @Test
  void at45DegreesAQuarterOfItsSolubilityIsLeft() {
    assertEquals(7.629, Henry.STAUDINGER.at(45), 0.001);
  }

  private static final VapourBound BOUND =
      new VapourBound(12, 42, new PoolEvaporation(0.12, 0, 21, 0.5, 1));

  /** Upper bound, no sulfite binding, recomputed: 1.2833 Pa, 12.67 ppm, 14.71 mg/m³. */
  @Test
  void overABathOfTwelveMillimolesStandsAtTheMost() {
    assertEquals(1.2833, BOUND.pascal(), 1.2833 * 0.005);
    assertEquals(12.67, BOUND.surfacePpm(), 12.67 * 0.005);
    assertEquals(14.71, BOUND.surfaceMgPerM3(), 14.71 * 0.005);
  }

  /**
   * Mass-transfer analogy, diffusivities from memory, good to a factor of two: 25.3 mg/h, and 0.169
   * or 3.38 mg/m³ with 150 or 7.5 m³/h. The same inputs must give the same within the pool
   * equation's difference to natural convection, 2 %.
   */
  @Test
  void itGivesOffAtTheMost() {
    assertEquals(2.352, BOUND.vapour().carriedM3PerHAt(42), 2.352 * 0.02);
    assertEquals(25.3, BOUND.mgPerH(), 25.3 * 0.02);
    assertEquals(0.169, new Room(15, 150, 1).steadyMgPerM3(BOUND.mgPerH()), 0.169 * 0.02);
    assertEquals(3.38, new Room(15, 7.5, 1).steadyMgPerM3(BOUND.mgPerH()), 3.38 * 0.02);
  }

  @Test
  void dampAirCarriesAsMuchOfItAsDry() {
    PoolEvaporation damp = new PoolEvaporation(0.12, 0, 30, 1, 1);
    PoolEvaporation dry = new PoolEvaporation(0.12, 0, 30, 0, 1);
    assertEquals(0, damp.wattsAt(20));
    assertEquals(new VapourBound(12, 20, dry).mgPerH(), new VapourBound(12, 20, damp).mgPerH());
    assertTrue(new VapourBound(12, 20, damp).mgPerH() > 0);
    assertThrows(IllegalArgumentException.class, () -> new VapourBound(-1, 42, damp));
  }
}
