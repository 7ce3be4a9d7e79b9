package trayward.controller.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Rows E8, E9 and E11 of the check values (simulated from the equations of the reference tray): how
 * long a fault of heat takes to show, before any probe lags. No detector can be faster.
 */
class PlantResidualTest {

  private static final double STEP_S = 0.1;

  /** Tolerance of section E. */
  private static final double SHARE = 0.02;

  /** F0. */
  private static final double HOLD_W = 0.4307 * 250;

  /** Time until a heater stuck on stands {@code apartK} off a tray that gets what it should, s. */
  private static double seconds(ToDoubleFunction<Plant> what, double commandedW, double apartK) {
    Plant stuck = Trays.holdingForty(1, 250);
    Plant healthy = new Plant(stuck);
    double seconds = 0;
    while (what.applyAsDouble(stuck) - what.applyAsDouble(healthy) < apartK) {
      stuck.advance(STEP_S, 250);
      healthy.advance(STEP_S, commandedW);
      stuck.refill(1);
      healthy.refill(1);
      seconds += STEP_S;
    }
    return seconds;
  }

  private static void assertNear(double expectedS, double seconds) {
    assertEquals(expectedS, seconds, Math.max(STEP_S, SHARE * expectedS));
  }

  /** E8: stuck on, where the hold duty was commanded. */
  @ParameterizedTest(name = "plate {0} K off after {1} s")
  @CsvSource({"1, 8.3", "2, 17.9", "3, 29.1"})
  void thePlateLeavesTheHoldInTheReferenceTime(double apartK, double seconds) {
    assertNear(seconds, seconds(Plant::plateC, HOLD_W, apartK));
  }

  @ParameterizedTest(name = "bath {0} K off after {1} s")
  @CsvSource({"0.25, 33.8", "0.5, 50.5"})
  void theBathLeavesTheHoldInTheReferenceTime(double apartK, double seconds) {
    assertNear(seconds, seconds(Plant::bathC, HOLD_W, apartK));
  }

  /** E9: stuck on, where nothing was commanded. */
  @ParameterizedTest(name = "plate {0} K off after {1} s")
  @CsvSource({"1, 4.6", "2, 9.6", "3, 14.9"})
  void thePlateLeavesItsRestInTheReferenceTime(double apartK, double seconds) {
    assertNear(seconds, seconds(Plant::plateC, 0, apartK));
  }

  @ParameterizedTest(name = "bath {0} K off after {1} s")
  @CsvSource({"0.25, 24.7", "0.5, 36.4"})
  void theBathLeavesItsRestInTheReferenceTime(double apartK, double seconds) {
    assertNear(seconds, seconds(Plant::bathC, 0, apartK));
  }

  /** E11: with the bath probe out of the liquid, full power brings the bath from 40 to 50 °C. */
  @Test
  void aBathThatNobodyReadsIsAtFiftyInTheReferenceTime() {
    Plant plant = Trays.holdingForty(1, 250);
    double seconds = 0;
    while (plant.bathC() < 50) {
      plant.advance(STEP_S, 250);
      plant.refill(1);
      seconds += STEP_S;
    }
    assertNear(562, seconds);
    assertEquals(61.8, plant.plateC(), 0.1);
  }
}
