package trayward.controller.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** Kept exponentials are the exponentials. */
class StepSharesTest {

  @Test
  void whatIsKeptIsWhatWouldBeReckonedAnew() {
    StepShares shares = new StepShares();
    for (int k = 0; k < 5000; k++) {
      double exponent = -((k + 1) * 0.1 - k * 0.1) / (k % 700 < 650 ? 5 : 50);
      assertEquals(-Math.expm1(exponent), shares.of(exponent), "step " + k);
    }
  }

  /** Tables of the exponential (Abramowitz and Stegun, table 4.4): exp(-1) and exp(-2). */
  @Test
  void aLagGoesTheTabulatedShareOfItsWay() {
    assertEquals(1 - 0.3678794412, new StepShares().of(-1), 1e-10);
    assertEquals(1 - 0.1353352832, new StepShares().of(-2), 1e-10);
  }
}
