package trayward.controller.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AgesTest {

  @ParameterizedTest
  @CsvSource({
    "0, 100, 100",
    "2900, 100, 3000",
    "5999900, 100, 6000000",
    "5999950, 100, 6000000",
    "6000000, 100, 6000000",
    "6000000, 2147483647, 6000000",
    "2147483647, 2147483647, 6000000"
  })
  void anAgeGrowsByWhatElapsedAndStopsAtItsBound(int ageMs, int elapsedMs, int olderMs) {
    assertEquals(olderMs, Ages.older(ageMs, elapsedMs));
  }

  @ParameterizedTest
  @CsvSource({"0, -1, 0", "500, -100, 500", "500, -2147483648, 500", "500, 0, 500"})
  void timeThatSeemsToGoBackwardsMakesNothingYounger(int ageMs, int elapsedMs, int olderMs) {
    assertEquals(olderMs, Ages.older(ageMs, elapsedMs));
  }

  @Test
  void anAgeCountsOnlyWhileItsConditionHoldsWithoutABreak() {
    int age = 0;
    for (int i = 0; i < 29; i++) {
      age = Ages.whileTrue(true, age, 100);
    }
    assertEquals(2900, age);
    age = Ages.whileTrue(false, age, 100);
    assertEquals(0, age);
    assertEquals(100, Ages.whileTrue(true, age, 100));
  }

  @Test
  void theBoundIsAboveTheLongestLimitComparedWithAnAge() {
    int presenceMaxMs = 90 * 60 * 1000; // upper end of SR-15's range
    assertTrue(Ages.MAX_MS > presenceMaxMs);
  }
}
