package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** A lag goes 1 - exp(-t/T) of its way, whether the scan comes on time or late. */
class LagTest {

  /** Tables of the exponential (Abramowitz and Stegun, table 4.4): exp(-1), exp(-2), exp(-0.02). */
  @Test
  void itGoesTheTabulatedShareOfItsWay() {
    Lag lag = Lag.of(5);
    assertEquals(1 - 0.3678794412, lag.share(5), 1e-10);
    assertEquals(1 - 0.1353352832, lag.share(10), 1e-10);
    assertEquals(1 - 0.9801986733, lag.share(0.1), 1e-10);
    assertEquals(0, lag.share(0));
  }

  @Test
  void aScanOnTimeAndOneComputedAnewAreTheSameBits() {
    for (double timeS : new double[] {2.7, 5, 9.5, 28, 170, 300}) {
      assertEquals(-Math.expm1(-0.1 / timeS), Lag.of(timeS).share(100 / 1000.0));
      assertEquals(-Math.expm1(-0.3 / timeS), Lag.of(timeS).share(0.3));
    }
  }
}
