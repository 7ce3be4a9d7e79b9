package trayward.host.forecast;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class ThermalTimeTest {

  /** A pace that is straight in temperature: 1/300 a second at 30 °C, 1/150 at 40 °C. */
  private static double straight(double bathC) {
    return 1 / (1 / 300.0 + (bathC - 30) / 10 / 300);
  }

  private static OptionalDouble c(double bathC) {
    return OptionalDouble.of(bathC);
  }

  @Test
  void atOneTemperatureProgressIsElapsedTimeOverTheExpectedOne() {
    ThermalTime time = ThermalTime.begun(c(40));
    for (int i = 1; i <= 300; i++) {
      time = time.step(i * 0.25, c(40), ThermalTimeTest::straight);
    }
    assertEquals(75 / 150.0, time.progressNow(ThermalTimeTest::straight), 1e-12);
  }

  /** Own arithmetic: the integral of a pace that grows from 1/300 to 1/150 over 120 s. */
  @Test
  void onAStraightRampOfThePaceTheIntegralIsExactWhateverTheStep() {
    for (int steps : new int[] {4, 7, 480}) {
      ThermalTime time = ThermalTime.begun(c(30));
      for (int i = 1; i <= steps; i++) {
        double share = (double) i / steps;
        time = time.step(120 * share, c(30 + 10 * share), ThermalTimeTest::straight);
      }
      assertEquals(
          120 * (1 / 300.0 + 1 / 150.0) / 2, time.progressNow(ThermalTimeTest::straight), 1e-12);
    }
  }

  /** Cold water into the tray: where between two readings the step fell is all that is unknown. */
  @Test
  void aStiffStepIsKnownToHalfAReadingsTime() {
    double stepS = 100.07;
    double readingS = 0.25;
    ThermalTime time = ThermalTime.begun(c(44));
    for (int i = 1; i <= 800; i++) {
      double atS = i * readingS;
      time = time.step(atS, c(atS < stepS ? 44 : 21), ThermalTimeTest::straight);
    }
    double hot = 1 / straight(44);
    double cold = 1 / straight(21);
    double exact = stepS * hot + (200 - stepS) * cold;
    assertEquals(
        exact, time.progressNow(ThermalTimeTest::straight), (hot - cold) * readingS / 2 + 1e-12);
  }

  @Test
  void theLastReadingIsHeldForHalfAMinuteAndThenItNoLongerKnows() {
    ThermalTime time = ThermalTime.begun(c(30)).step(60, c(30), ThermalTimeTest::straight);
    ThermalTime held = time.step(90, OptionalDouble.empty(), ThermalTimeTest::straight);
    assertTrue(held.knows());
    assertEquals(90 / 300.0, held.progressNow(ThermalTimeTest::straight), 1e-12);
    assertFalse(held.step(90.1, OptionalDouble.empty(), ThermalTimeTest::straight).knows());
  }

  @Test
  void aReadingThatComesBackWithinTwoMinutesBridgesTheGapStraight() {
    ThermalTime time = ThermalTime.begun(c(30)).step(60, c(30), ThermalTimeTest::straight);
    ThermalTime back = time.step(180, c(40), ThermalTimeTest::straight);
    assertTrue(back.knows());
    assertEquals(60 / 300.0 + 120 * (1 / 300.0 + 1 / 150.0) / 2, back.progress(), 1e-12);
  }

  @Test
  void afterALongerGapItDoesNotKnowForTheRestOfThePrint() {
    ThermalTime time = ThermalTime.begun(c(30)).step(60, c(30), ThermalTimeTest::straight);
    ThermalTime back = time.step(180.1, c(30), ThermalTimeTest::straight);
    assertFalse(back.knows());
    assertFalse(back.step(181, c(30), ThermalTimeTest::straight).knows());
  }

  @Test
  void aFirstReadingWithinHalfAMinuteStandsForTheTimeBefore() {
    ThermalTime none = ThermalTime.begun(OptionalDouble.of(Double.NaN));
    assertFalse(none.knows());
    assertEquals(0, none.progressNow(ThermalTimeTest::straight));
    ThermalTime first = none.step(30, c(40), ThermalTimeTest::straight);
    assertTrue(first.knows());
    assertEquals(30 / 150.0, first.progress(), 1e-12);
    assertFalse(none.step(30.5, c(40), ThermalTimeTest::straight).knows());
  }

  @Test
  void timeThatDoesNotAdvanceOrIsNoneChangesNothing() {
    ThermalTime time = ThermalTime.begun(c(30)).step(60, c(30), ThermalTimeTest::straight);
    assertSame(time, time.step(60, c(40), ThermalTimeTest::straight));
    assertSame(time, time.step(Double.NaN, c(40), ThermalTimeTest::straight));
    assertSame(time, time.step(Double.POSITIVE_INFINITY, c(40), ThermalTimeTest::straight));
  }

  @Test
  void aTemperatureNoBathHasIsNoReading() {
    ThermalTime time = ThermalTime.begun(c(30));
    for (double bathC : new double[] {85, -127, Double.NaN, Double.POSITIVE_INFINITY}) {
      ThermalTime next = time.step(5, c(bathC), ThermalTimeTest::straight);
      assertEquals(0, next.validS());
      assertEquals(5 / 300.0, next.progressNow(ThermalTimeTest::straight), 1e-12);
    }
  }
}
