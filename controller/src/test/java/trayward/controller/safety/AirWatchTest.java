package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;

/** Breaks of the proof of air and how recent they are. */
class AirWatchTest {

  private static final int WINDOW_MS = 60_000;

  /** A break now, the last two having been so long ago. */
  private static int breaks(int lastMs, int olderMs) {
    return new AirWatch(1000, 0, lastMs - 100, olderMs - 100, 2)
        .next(false, 100, WINDOW_MS)
        .breaks();
  }

  @Test
  @Verifies(value = "SR-05", side = Side.WITHHOLDS)
  void breaksWithinTheWindowCount() {
    assertEquals(3, breaks(1000, 59_999));
    assertEquals(2, breaks(59_999, 70_000));
  }

  @Test
  @Verifies(value = "SR-05", side = Side.ALLOWS)
  void breaksAsOldAsTheWindowDoNot() {
    assertEquals(2, breaks(1000, 60_000));
    assertEquals(1, breaks(60_000, 70_000));
  }

  @Test
  void aProofFirstSeenNowIsAsYoungAsThisScan() {
    AirWatch seen = AirWatch.START.next(true, 100, WINDOW_MS);
    assertEquals(0, seen.provenMs());
    assertEquals(100, seen.next(true, 100, WINDOW_MS).provenMs());
    AirWatch broken = seen.next(false, 100, WINDOW_MS);
    assertEquals(100, broken.brokenMs());
    assertEquals(0, broken.lastBreakMs());
    assertEquals(200, broken.next(false, 100, WINDOW_MS).brokenMs());
    assertEquals(0, broken.forgetBreaks().breaks());
  }
}
