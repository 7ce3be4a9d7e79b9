package trayward.host.bath;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Molar masses, dilutions and uncertain amounts. */
class AmountsTest {

  /**
   * Sums of the conventional atomic weights of the Commission on Isotopic Abundances and Atomic
   * Weights, 2021, worked out outside of this program.
   */
  @ParameterizedTest
  @CsvSource({
    "KBr, 119.002",
    "Na2SO3, 126.037",
    "C6H6O2, 110.112",
    "NaBr, 102.894",
    "CH2O, 30.026",
    "CH3O4SNa, 134.081",
    "AgBr, 187.772",
    "AgCl, 143.318",
    "Na2CO3, 105.988",
    "K2CO3, 138.205",
    "NaHSO3, 104.055",
    "Na2S2O3.5H2O, 248.172"
  })
  void aMolarMassIsTheSumOfItsAtoms(String formula, double gramsPerMol) {
    assertEquals(gramsPerMol, MolarMass.of(formula), 0.005);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "Xx", "KBr!", "br", "K Br", "2", "Ag..Br"})
  void whatIsNoFormulaIsRefused(String text) {
    assertThrows(IllegalArgumentException.class, () -> MolarMass.of(text));
  }

  private static Dilution read(String text) {
    return assertInstanceOf(Checked.Good.class, Dilution.read("dilution", text)).value()
            instanceof Dilution d
        ? d
        : new Dilution(java.util.List.of(1.0), 0);
  }

  /** One part and seven of water are an eighth: common practice. */
  @Test
  void oneAndSevenIsAnEighthAndTwoPartsAreTwentySeconds() {
    assertEquals(1.0 / 8, read("1+7").share(0));
    assertEquals(1.0 / 22, read("1+1+20").share(0), 1e-15);
    assertEquals(1.0 / 22, read(" 1 + 1 + 20 ").share(1), 1e-15);
    assertEquals("1+1+20", read("1+1+20").words());
    assertEquals("1+7.5", read("1+7.5").words());
  }

  @Test
  void aColonIsRefusedWithTheReason() {
    Problem problem =
        assertInstanceOf(Checked.Bad.class, Dilution.read("dilution", "1:7")).problem();
    assertEquals("dilution", problem.field());
    assertEquals("1:7", problem.found());
    assertTrue(problem.accepted().contains("1+7"), problem.accepted());
    assertTrue(problem.accepted().contains("colon"), problem.accepted());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "7", "1+", "+7", "0+7", "-1+7", "1+x", "1+1+1+1+1", "1+99999", "NaN+1"})
  void whatIsNoDilutionIsRefused(String text) {
    assertInstanceOf(Checked.Bad.class, Dilution.read("dilution", text));
  }

  /** GUM (JCGM 100:2008), 5.1.2 for a sum and a product of independent quantities, by hand. */
  @Test
  void uncertaintiesAddBySquares() {
    Amount a = new Amount(10, 3);
    Amount b = new Amount(20, 4);
    assertEquals(new Amount(30, 5), a.plus(b));
    assertEquals(200, a.times(b).value());
    assertEquals(Math.sqrt(60.0 * 60 + 40 * 40), a.times(b).standard(), 1e-12);
    assertEquals(6, a.expanded());
    Amount left = a.without(new Amount(0.5, 0.1));
    assertEquals(5, left.value());
    assertEquals(Math.hypot(1.5, 1), left.standard(), 1e-12);
    assertThrows(IllegalArgumentException.class, () -> new Amount(Double.NaN, 0));
    assertThrows(IllegalArgumentException.class, () -> new Amount(1, -1));
  }
}
