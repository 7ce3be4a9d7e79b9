package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** Commanded heat through the lags a plate probe may have. */
class HeatLagTest {

  private static double left(double seconds, double lagS) {
    return Math.exp(-seconds / lagS);
  }

  @Test
  void eachLagFollowsTheCommandByItsOwnTime() {
    HeatLag on = HeatLag.START.next(true, 2);
    assertEquals(1 - left(2, 2.7), on.quick(), 1e-12);
    assertEquals(1 - left(2, 5), on.middle(), 1e-12);
    assertEquals(1 - left(2, 9.5), on.slow(), 1e-12);
    HeatLag off = on.next(false, 3);
    assertEquals(on.quick() * left(3, 2.7), off.quick(), 1e-12);
    assertEquals(on.middle() * left(3, 5), off.middle(), 1e-12);
    assertEquals(on.slow() * left(3, 9.5), off.slow(), 1e-12);
  }

  @Test
  void theDoubtIsTheMeanBetweenQuickAndSlowSinceTheLastReading() {
    HeatLag one = HeatLag.START.next(true, 2);
    HeatLag two = one.next(true, 3);
    double both = 2 * (one.quick() - one.slow()) + 3 * (two.quick() - two.slow());
    assertEquals(both / 5, two.apart(), 1e-12);
    assertEquals(two.quick() - two.slow(), two.taken().apart(), 1e-12);
    HeatLag three = two.taken().next(false, 4);
    assertEquals(three.quick() - three.slow(), three.apart(), 1e-12);
    assertEquals(0, HeatLag.START.apart());
  }

  @Test
  void theMeanIsThatSinceTheLastReading() {
    HeatLag one = HeatLag.START.next(true, 2);
    HeatLag two = one.next(true, 3);
    assertEquals((2 * one.middle() + 3 * two.middle()) / 5, two.mean(), 1e-12);
    assertEquals(two.middle(), two.taken().mean());
    HeatLag three = two.taken().next(false, 4);
    assertEquals(three.middle(), three.mean(), 1e-12);
    assertEquals(0, HeatLag.START.mean());
  }

  @Test
  void theTimeWithoutHeatCountsFromTheLastCommand() {
    HeatLag on = HeatLag.START.next(true, 1);
    assertEquals(0, on.offS());
    HeatLag off = on.next(false, 1).taken().next(false, 2);
    assertEquals(3, off.offS());
    assertEquals(0, off.next(true, 1).offS());
    assertEquals(0, HeatLag.START.offS(), "nobody knows what was before power-up");
    assertEquals(1e6, new HeatLag(0, 0, 0, 0, 0, 0, 1e6).next(false, 1).offS(), "saturates");
  }
}
