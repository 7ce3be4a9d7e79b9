package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Means of five seconds and their course. */
class BlocksTest {

  private static Blocks line(int seconds, double from, double perS) {
    Blocks blocks = Blocks.START;
    for (int i = 0; i < 10 * seconds; i++) {
      blocks = blocks.next(from + perS * (i + 0.5) / 10, 0.1);
    }
    return blocks;
  }

  @Test
  void aBlockIsFilledAfterFiveSeconds() {
    Blocks open = line(4, 40, 0).next(42, 0.9);
    assertFalse(open.filled());
    assertFalse(Blocks.START.filled());
    assertEquals(0, open.count());
    Blocks full = open.next(42, 0.1);
    assertTrue(full.filled());
    assertEquals(1, full.count());
    assertEquals(40.4, full.means().at(0), 1e-9);
    assertFalse(full.next(42, 0.1).filled());
    assertEquals(4.2, full.next(42, 0.1).sum(), 1e-9);
  }

  /** Fifty tenths of a second add up to a little less than five seconds. */
  @Test
  void aBlockMayBeShortByWhatRoundingTakes() {
    assertTrue(new Blocks(5 - 1e-6, 200, Blocks.START.means(), 0).next(40, 0).filled());
    assertFalse(new Blocks(5 - 2e-6, 200, Blocks.START.means(), 0).next(40, 0).filled());
  }

  @Test
  void aStraightLineHasItsMeanAndItsSlopeOverAnyBlocks() {
    Blocks blocks = line(60, 40, -0.02);
    assertEquals(12, blocks.count());
    assertEquals(40 - 0.02 * 30, blocks.mean(0, 12), 1e-9);
    assertEquals(40 - 0.02 * 45, blocks.mean(0, 6), 1e-9);
    assertEquals(40 - 0.02 * 15, blocks.mean(6, 12), 1e-9);
    assertEquals(-0.02, blocks.slope(0, 12), 1e-12);
    assertEquals(-0.02, blocks.slope(6, 12), 1e-12);
    assertEquals(0.01, line(60, 40, 0.01).slope(3, 7), 1e-12);
  }

  @Test
  void twoMinutesAreKept() {
    Blocks blocks = line(200, 40, 0.1);
    assertEquals(24, blocks.count());
    assertEquals(40 + 0.1 * 140, blocks.mean(0, 24), 1e-9);
  }
}
