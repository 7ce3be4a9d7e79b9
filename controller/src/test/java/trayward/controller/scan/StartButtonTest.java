package trayward.controller.scan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.concurrent.CompletableFuture;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.event.EventKind;
import trayward.controller.port.Contact;
import trayward.controller.port.LineReadings;
import trayward.controller.safety.LevelTold;
import trayward.controller.safety.Request;
import trayward.controller.safety.State;

/** The start button at the tray, and what an asker elsewhere may not do instead. */
class StartButtonTest {

  private static final String BREAKER = "the ground-fault breaker test was due";

  private static LineReadings button(LineReadings in, boolean down) {
    return new LineReadings(
        in.present(),
        in.airflow(),
        in.fanRpm(),
        in.stopCircuitClosed(),
        false,
        false,
        false,
        down,
        Contact.NOT_WIRED,
        Contact.NOT_WIRED);
  }

  private static State after(Deck deck, double seconds, boolean down) {
    deck.lines = in -> button(in, down);
    return deck.run(seconds).state();
  }

  private static long starts(Deck deck, EventKind answered) {
    return deck.told.stream()
        .filter(e -> e.kind() == answered && e.subject().equals("START"))
        .count();
  }

  @Test
  @Verifies(value = "SR-13", side = Side.ALLOWS)
  void aPressStartsOnceHoweverLongItLasts() {
    Deck deck = new Deck();
    assertEquals(State.OFF, after(deck, 1, false));
    assertEquals(State.PROVING, after(deck, 0.1, true));
    after(deck, 10, true);
    after(deck, 1, false);
    assertEquals(1, starts(deck, EventKind.DONE));
    assertEquals(0, starts(deck, EventKind.REFUSED));
  }

  @Test
  @Verifies(value = "SR-13", side = Side.WITHHOLDS)
  void aButtonDownAtPowerUpOrWhenTheInputsComeBackStartsNothing() {
    Deck deck = new Deck();
    assertEquals(State.OFF, after(deck, 10, true));
    after(deck, 1, false);
    deck.lines = in -> LineReadings.ABSENT;
    deck.run(1);
    assertEquals(State.OFF, after(deck, 10, true));
    assertEquals(0, starts(deck, EventKind.DONE) + starts(deck, EventKind.REFUSED));
    after(deck, 0.1, false);
    assertEquals(State.PROVING, after(deck, 0.1, true), "a press after that is one");
  }

  @Test
  @Verifies(value = "SR-23", side = Side.WITHHOLDS)
  void aPressWithTheBreakerTestOverdueIsRefusedUntilItIsKeptDownForThreeSeconds() {
    Deck deck = new Deck(false, new Mailbox(() -> BREAKER));
    after(deck, 1, false);
    assertEquals(State.OFF, after(deck, 3.0, true), "2.9 s after it went down");
    assertEquals(1, starts(deck, EventKind.REFUSED));
    assertEquals(State.PROVING, after(deck, 0.1, true));
    after(deck, 10, true);
    assertEquals(1, starts(deck, EventKind.DONE));
  }

  @Test
  @Verifies(value = "SR-23", side = Side.WITHHOLDS)
  void twoPressesTogetherOfThreeSecondsConfirmNothing() {
    Deck deck = new Deck(false, new Mailbox(() -> BREAKER));
    after(deck, 1, false);
    after(deck, 2, true);
    after(deck, 0.1, false);
    assertEquals(State.OFF, after(deck, 2, true));
    assertEquals(0, starts(deck, EventKind.DONE));
    assertEquals(2, starts(deck, EventKind.REFUSED));
  }

  @Test
  @Verifies(value = "SR-23", side = Side.ALLOWS)
  void aButtonKeptDownWithNothingOverdueAsksOnce() {
    Deck deck = new Deck(false, new Mailbox(() -> ""));
    after(deck, 1, false);
    assertEquals(State.PROVING, after(deck, 10, true));
    assertEquals(0, starts(deck, EventKind.REFUSED));
  }

  @Test
  @Verifies(value = "SR-12", side = Side.WITHHOLDS)
  void aPressInALockoutStartsNothing() {
    Deck deck = Deck.heating();
    deck.scanAfter(2 * 1_000_000_000L);
    after(deck, 1, false);
    assertEquals(State.LOCKOUT, after(deck, 10, true));
    assertEquals(1, starts(deck, EventKind.REFUSED));
  }

  @Test
  @Verifies(value = "SR-13", side = Side.WITHHOLDS)
  void aStartFromAfarIsRefusedAtOnceConfirmedOrNot() throws Exception {
    Deck deck = new Deck();
    for (boolean confirmed : new boolean[] {false, true}) {
      assertFalse(deck.mailbox.start(confirmed, false).get().accepted());
    }
    assertFalse(deck.mailbox.ask(Request.START, false).get().accepted());
    assertEquals(State.OFF, deck.run(10).state());
  }

  /**
   * Milliseconds until presence is due, after something that was asked for ten minutes into heat.
   */
  private static int dueMs(Function<Mailbox, CompletableFuture<Answer>> asks) {
    Deck deck = Deck.heating();
    deck.run(600);
    var unused = asks.apply(deck.mailbox);
    return deck.scan().presenceDueMs();
  }

  @Test
  @Verifies(value = "SR-15", side = Side.WITHHOLDS)
  void whatIsAskedFromAfarIsNoSignOfPresence() {
    int nothing = dueMs(mailbox -> mailbox.call(Call.MARKED));
    assertEquals(nothing, dueMs(mailbox -> mailbox.ask(Request.PRESENCE, false)));
    assertEquals(nothing, dueMs(mailbox -> mailbox.setTemperature(38, false)));
    assertEquals(nothing, dueMs(mailbox -> mailbox.level(new LevelTold.AsSaid(), false)));
  }

  @Test
  @Verifies(value = "SR-15", side = Side.ALLOWS)
  void theSameAskedAtTheTrayIs() {
    int nothing = dueMs(mailbox -> mailbox.call(Call.MARKED));
    assertTrue(nothing < dueMs(mailbox -> mailbox.ask(Request.PRESENCE, true)));
    assertTrue(nothing < dueMs(mailbox -> mailbox.setTemperature(38, true)));
    assertTrue(nothing < dueMs(mailbox -> mailbox.level(new LevelTold.AsSaid(), true)));
  }
}
