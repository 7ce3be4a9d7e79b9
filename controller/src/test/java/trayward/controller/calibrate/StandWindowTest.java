package trayward.controller.calibrate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

/** When a probe has stood still long enough to be taken. */
class StandWindowTest {

  private static final long SECOND = 1_000_000_000L;

  private static StandWindow window(int seconds, IntToDoubleFunction celsius) {
    StandWindow window = new StandWindow();
    for (int s = 0; s < seconds; s++) {
      window.add(celsius.applyAsDouble(s), s * SECOND);
    }
    return window;
  }

  /** Mean and sample standard deviation of 1, 2, 3, 4, 5: 3 and 1.5811 (by hand). */
  @Test
  void itsMeanAndScatterAreThoseOfItsReadings() {
    Stand stand = window(5, s -> s + 1).stand();
    assertEquals(3, stand.meanC(), 1e-12);
    assertEquals(1.5811, stand.scatterK(), 1e-4);
    assertEquals(4, stand.spanS(), 1e-9);
    assertEquals(5, stand.readings());
  }

  @Test
  void aProbeIsTakenOnceItStoodStillForHalfAMinute() {
    assertTrue(window(20, s -> 0.0625).stand().notStill().contains("so far 19 s"));
    assertEquals("", window(30, s -> 0.0625).stand().notStill());
  }

  @Test
  void whatWasBeforeTheLastHalfMinuteIsForgotten() {
    StandWindow window = window(100, s -> s < 60 ? 20 : 0);
    assertEquals("", window.stand().notStill());
    assertEquals(0, window.stand().meanC());
  }

  @Test
  void aReadingThatFallsHasNotStoodStill() {
    String why = window(100, s -> 40 - s / 60.0).stand().notStill();
    assertTrue(why.startsWith("the reading did not stand still: it scattered by 0.15 K"), why);
  }

  /** The noise of a simulated probe, 0.02 K, on steps of 1/16 K. */
  @Test
  void theNoiseOfASoundProbeIsStandingStill() {
    Random random = new Random(7);
    for (int trial = 0; trial < 200; trial++) {
      double true_ = random.nextDouble();
      Stand stand =
          window(40, s -> Math.rint((true_ + 0.02 * random.nextGaussian()) * 16) / 16).stand();
      assertEquals("", stand.notStill(), stand.toString());
    }
  }

  @Test
  void aGapBeginsAnew() {
    StandWindow window = window(60, s -> 20);
    window.add(20, 70 * SECOND);
    assertEquals(1, window.stand().readings());
    assertTrue(window.stand().notStill().contains("so far 0 s"));
  }

  @Test
  void theSameReadingSeenAgainCountsOnceAndFastOnesAreThinned() {
    StandWindow window = new StandWindow();
    for (int scan = 0; scan < 400; scan++) {
      window.add(20, scan * SECOND / 10);
      window.add(20, scan * SECOND / 10);
    }
    assertTrue(window.stand().readings() <= 67, window.stand().toString());
    assertEquals("", window.stand().notStill());
  }

  @Test
  void timeThatRunsBackBeginsAnew() {
    StandWindow window = window(60, s -> 20);
    window.add(21, 3 * SECOND);
    assertEquals(new Stand(1, 0, 21, Double.NaN), window.stand());
  }

  @Test
  void beforeAnyReadingNothingIsTaken() {
    assertTrue(new StandWindow().stand().notStill().contains("so far 0 s"));
  }
}
