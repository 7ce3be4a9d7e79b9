package trayward.controller.gpio;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** What a scan is told of a contact whose edges are heard between scans. */
class PressTest {

  private final Press press = new Press();

  @Test
  void aPressBetweenTwoScansIsToldOnce() {
    press.edge(true);
    press.edge(false);
    assertTrue(press.take(false));
    assertFalse(press.take(false));
  }

  @Test
  void aContactKeptDownIsDownUntilItIsLetGo() {
    press.edge(true);
    assertTrue(press.take(true));
    assertTrue(press.take(true));
    press.edge(false);
    assertFalse(press.take(false));
  }

  @Test
  void aLevelWithoutAnEdgeThatStoodStillIsASparkAndNoPress() {
    assertFalse(press.take(true));
  }

  @Test
  void aLineThatIsUpAgainIsUpEvenWhereItsEdgeWasLost() {
    press.edge(true);
    assertTrue(press.take(true));
    assertFalse(press.take(false));
  }
}
