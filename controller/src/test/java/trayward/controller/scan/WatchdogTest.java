package trayward.controller.scan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.safety.Request;
import trayward.controller.safety.State;

/** SR-17, SR-18: the watchdog line toggles from complete scans alone, in every state. */
class WatchdogTest {

  private static void togglesEachScan(Deck deck, Set<State> seen) {
    boolean before = deck.watchdog.active;
    Snapshot snapshot = deck.scan();
    assertEquals(!before, deck.watchdog.active);
    assertEquals(deck.watchdog.active, snapshot.watchdogLevel());
    seen.add(snapshot.state());
  }

  @Test
  @Verifies(value = "SR-18", side = Side.ALLOWS)
  void everyCompleteScanTogglesItInEveryState() {
    Deck deck = new Deck();
    Set<State> seen = EnumSet.noneOf(State.class);
    for (int i = 0; i < 100; i++) {
      togglesEachScan(deck, seen);
    }
    var unused = deck.ask(Request.START);
    for (int i = 0; i < 12_000; i++) {
      togglesEachScan(deck, seen);
    }
    unused = deck.mailbox.stop();
    for (int i = 0; i < 100; i++) {
      togglesEachScan(deck, seen);
    }
    deck.scanAfter(3_000_000_000L);
    for (int i = 0; i < 100; i++) {
      togglesEachScan(deck, seen);
    }
    assertEquals(EnumSet.allOf(State.class), seen);
  }

  @ParameterizedTest
  @EnumSource(
      value = Deck.Part.class,
      names = {"WATCHDOG"},
      mode = EnumSource.Mode.EXCLUDE)
  @Verifies(value = "SR-18", side = Side.WITHHOLDS)
  void aScanThatBreaksOffBeforeItsEndDoesNotToggleIt(Deck.Part part) {
    Deck deck = Deck.heating();
    boolean level = deck.watchdog.active;
    int changes = deck.watchdog.changes;
    deck.broken = part;
    assertThrows(IllegalStateException.class, deck::scan);
    assertEquals(level, deck.watchdog.active);
    assertEquals(changes, deck.watchdog.changes);
  }

  @Test
  @Verifies(value = "SR-18", side = Side.WITHHOLDS)
  void aProcessThatFreezesWithItsRelaysClosedIsWithoutHeatWithinTwoSeconds() {
    Deck deck = Deck.heating();
    while (!deck.heater.active) {
      deck.scan();
    }
    assertTrue(deck.tray.heatW() > 0);
    deck.tray.advanceTo(deck.now + 2_000_000_000L); // no scan: outputs stay as they were
    assertTrue(deck.heater.active && deck.safety.active);
    assertEquals(0, deck.tray.heatW());
    assertFalse(deck.tray.safetyContact());
  }

  @Test
  @Verifies(value = "SR-17", side = Side.WITHHOLDS)
  void aStallOfAScanWithheldAndOneOfASecondLocksOut() {
    Deck deck = Deck.heating();
    assertFalse(deck.scanAfter(300_000_000L).permitted());
    assertTrue(deck.scan().permitted());
    assertFalse(deck.scanAfter(1_100_000_000L).permitted());
    assertEquals(State.LOCKOUT, deck.scan().state());
  }
}
