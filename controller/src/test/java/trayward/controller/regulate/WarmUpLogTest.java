package trayward.controller.regulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class WarmUpLogTest {

  private static final long SECOND = 1_000_000_000L;

  @Test
  void heatIsKeptAsTheShareOfEachSecond() {
    WarmUpLog log = new WarmUpLog(0);
    for (int i = 0; i < 25; i++) {
      log.heat(0.1, i < 7 || i >= 20);
    }
    WarmUpLog.View view = log.view();
    assertEquals(2, view.seconds());
    assertEquals(0.7, view.heat(0), 1e-6);
    assertEquals(0, view.heat(1), 1e-6);
  }

  @Test
  void aScanThatIsLateFillsTheSecondsItTook() {
    WarmUpLog log = new WarmUpLog(0);
    log.heat(0.5, false);
    log.heat(2.0, true);
    log.heat(0.5, false);
    WarmUpLog.View view = log.view();
    assertEquals(3, view.seconds());
    assertEquals(0.5, view.heat(0), 1e-6);
    assertEquals(1, view.heat(1), 1e-6);
    assertEquals(0.5, view.heat(2), 1e-6);
  }

  @Test
  void readingsBearTheirTimeSinceTheBeginningAndOlderOnesAreLeftOut() {
    WarmUpLog log = new WarmUpLog(100 * SECOND);
    log.bath(20.5, 99 * SECOND);
    log.bath(20.25, 102 * SECOND);
    log.plate(30, 103 * SECOND);
    WarmUpLog.View view = log.view();
    assertEquals(1, view.bathCount());
    assertEquals(2, view.bathAtS(0), 1e-6);
    assertEquals(20.25, view.bathC(0), 0);
    assertEquals(1, view.plateCount());
    assertEquals(3, view.plateAtS(0), 1e-6);
    assertEquals(30, view.plateC(0), 0);
  }

  @Test
  void aViewDoesNotGrowWithItsLog() {
    WarmUpLog log = new WarmUpLog(0);
    log.heat(1, true);
    log.bath(20, SECOND);
    WarmUpLog.View view = log.view();
    log.heat(5, true);
    log.bath(21, 2 * SECOND);
    log.plate(21, 2 * SECOND);
    assertEquals(1, view.seconds());
    assertEquals(1, view.bathCount());
    assertEquals(0, view.plateCount());
  }

  @Test
  void whatGoesOnForMoreThanThreeHoursIsKeptNoFurther() {
    WarmUpLog log = new WarmUpLog(0);
    log.heat(WarmUpLog.MAX_S - 1, true);
    assertFalse(log.full());
    for (int s = 0; s < 100; s++) {
      log.heat(1, true);
    }
    for (int s = 0; s < WarmUpLog.MAX_S + 100; s++) {
      log.bath(40, s * SECOND);
    }
    assertTrue(log.full());
    assertEquals(WarmUpLog.MAX_S, log.seconds());
    assertEquals(WarmUpLog.MAX_S, log.view().bathCount());
  }
}
