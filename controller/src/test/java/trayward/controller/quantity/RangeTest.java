package trayward.controller.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class RangeTest {

  private static final Range SET = new Range(15, 50, "°C");

  @ParameterizedTest
  @ValueSource(doubles = {15, 15.0000001, 40, 49.9999999, 50})
  void bothEndsAndAllBetweenAreInside(double value) {
    assertTrue(SET.contains(value));
  }

  @ParameterizedTest
  @ValueSource(
      doubles = {
        14.9999999,
        50.0000001,
        -15,
        Double.NaN,
        Double.POSITIVE_INFINITY,
        Double.NEGATIVE_INFINITY
      })
  void whatIsBeyondAnEndOrNoNumberIsOutside(double value) {
    assertFalse(SET.contains(value));
  }

  @Test
  void aRangeOfOneValueHoldsThatValueAlone() {
    Range one = new Range(3, 3, "");
    assertTrue(one.contains(3));
    assertFalse(one.contains(Math.nextUp(3.0)));
    assertFalse(one.contains(Math.nextDown(3.0)));
  }

  @ParameterizedTest
  @CsvSource({"2, 1", "NaN, 1", "1, NaN", "-Infinity, 1", "1, Infinity"})
  void endsThatAreNotFiniteOrNotInOrderAreRefused(double min, double max) {
    assertThrows(IllegalArgumentException.class, () -> new Range(min, max, "s"));
  }

  @Test
  void theWordsCarryTheUnitWhereThereIsOne() {
    assertEquals("15 to 50 °C", SET.words());
    assertEquals("0.5 to 0.95", new Range(0.5, 0.95, "").words());
  }

  @ParameterizedTest
  @CsvSource({
    "40, 40",
    "-3, -3",
    "0, 0",
    "-0.0, 0",
    "0.7, 0.7",
    "-2.25, -2.25",
    "999999999999999, 999999999999999",
    "1e15, 1.0E15",
    "NaN, NaN",
    "Infinity, Infinity"
  })
  void aNumberIsWrittenWithoutASuperfluousFraction(double value, String words) {
    assertEquals(words, Range.plain(value));
  }
}
