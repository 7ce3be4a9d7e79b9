package trayward.host.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PrintFieldTest {

  @Test
  void everyFieldHasANameOfItsOwnAndIsFoundByIt() {
    assertEquals(PrintField.values().length, new HashSet<>(PrintField.words()).size());
    for (PrintField field : PrintField.values()) {
      assertEquals(Optional.of(field), PrintField.of(field.word()));
      assertTrue(field.rule().takes(""), "nothing but in is obligatory");
    }
    assertEquals(Optional.empty(), PrintField.of("title"));
  }

  @ParameterizedTest
  @CsvSource({
    "APERTURE,1,true", "APERTURE,128,true", "APERTURE,0.99,false", "APERTURE,128.1,false",
    "APERTURE,f/8,false", "APERTURE,'5,6',false", "APERTURE,1e1,false", "APERTURE,NaN,false",
    "STOPS_OVER,-5,true", "STOPS_OVER,15,true", "STOPS_OVER,-5.1,false", "STOPS_OVER,15.01,false",
    "WIDTH_MM,0,false", "BASE_EXPOSURE_S,0,false", "PAPER,1:7 matt,true"
  })
  void numbersHaveARangeAndTextsAreFree(PrintField field, String text, boolean taken) {
    assertEquals(taken, field.rule().takes(text));
  }

  @ParameterizedTest
  @CsvSource({"8.0,8", "100,100", "5.60,5.6", "-0,0", "-0.50,-0.5", "000012,12"})
  void aNumberIsKeptInOneWay(String entered, String kept) {
    assertEquals(kept, PrintField.STOPS_OVER.kept(entered));
  }

  @Test
  void everyStepInALiquidButWaterHasCautionsAndNoneReassures() {
    for (StepKind kind : StepKind.values()) {
      boolean dryOrWater = kind == StepKind.WASH || kind == StepKind.DRY;
      assertEquals(dryOrWater, kind.cautions().isEmpty(), kind.word());
    }
    assertTrue(StepKind.TONE.cautions().contains(StepCaution.SULFIDE_AND_ACID));
    assertTrue(StepKind.STOP.cautions().contains(StepCaution.SULFIDE_AND_ACID));
    assertTrue(StepKind.FIX.cautions().contains(StepCaution.ACID_AND_FIXER));
    for (StepCaution caution : StepCaution.values()) {
      String words = caution.words().toLowerCase(Locale.ROOT);
      assertFalse(words.contains("safe") || words.contains("harmless"), words);
    }
  }
}
