package trayward.controller.scan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.event.TripCause;
import trayward.controller.safety.Request;
import trayward.controller.safety.State;

/** Buzzer and lamp in whole scans: what is asked of them reaches nothing else. */
class SignalsInScanTest {

  private static String outputs(Deck deck, Snapshot s) {
    return s.state()
        + " "
        + s.permitted()
        + s.heaterOn()
        + s.safetyRelay()
        + s.fanCommanded()
        + deck.heater.active
        + deck.safety.active
        + " "
        + s.duty()
        + " "
        + s.presenceDueMs()
        + s.withheld();
  }

  /** Every call and silence in every scan of a run, beside the same run without. */
  @Test
  @Verifies(value = "SR-01", side = Side.WITHHOLDS)
  @Verifies(value = "SR-15", side = Side.WITHHOLDS)
  void callsAndSilencesReachNeitherHeatNorFanNorPresence() {
    Deck plain = new Deck();
    Deck called = new Deck();
    var one = plain.ask(Request.START);
    var other = called.ask(Request.START);
    int heated = 0;
    for (int i = 0; i < 2500; i++) {
      for (Call call : Call.values()) {
        var unusedCall = called.mailbox.call(call);
      }
      var unusedSilence = called.mailbox.silence(TripCause.AIR_LOST);
      assertEquals(outputs(plain, plain.scan()), outputs(called, called.scan()));
      heated += called.heater.active ? 1 : 0;
    }
    assertTrue(heated > 100, "it did heat");
    assertTrue(one.join().accepted() && other.join().accepted());
  }

  @Test
  @Verifies(value = "SR-05", side = Side.WITHHOLDS)
  void aTripIsHeardAndSeenInItsOwnScanAndUntilItIsAcknowledged() {
    Deck deck = Deck.heating();
    assertFalse(deck.buzzer.active || deck.lamp.active);
    deck.bathProbe =
        raw ->
            trayward.controller.port.RawReading.failed(
                trayward.controller.port.RawReading.Kind.ABSENT, deck.now);
    deck.until(State.LOCKOUT);
    assertTrue(deck.buzzer.active && deck.lamp.active);
    CompletableFuture<Answer> silence = deck.mailbox.silence(TripCause.BATH_PROBE_BAD);
    CompletableFuture<Answer> none = deck.mailbox.silence(TripCause.PLATE_TOO_HOT);
    boolean lit = false;
    for (int i = 0; i < 20; i++) {
      deck.scan();
      assertFalse(deck.buzzer.active);
      lit |= deck.lamp.active;
    }
    assertTrue(lit && silence.join().accepted());
    assertEquals("it does not sound", none.join().reason());
    assertEquals(State.LOCKOUT, deck.run(1).state(), "silence is not acknowledging");
    var reset = deck.ask(Request.RESET);
    deck.scan();
    assertFalse(reset.join().accepted());
    var acknowledged = deck.ask(Request.ACKNOWLEDGE);
    deck.scan();
    deck.scan();
    assertFalse(deck.buzzer.active || deck.lamp.active);
    assertTrue(acknowledged.join().accepted());
  }

  @Test
  void aCallIsAnsweredAndIsOver() {
    Deck deck = new Deck();
    deck.scan();
    CompletableFuture<Answer> marked = deck.mailbox.call(Call.MARKED);
    deck.scan();
    assertTrue(marked.join().accepted());
    assertTrue(deck.buzzer.active && deck.lamp.active);
    deck.run(0.3);
    assertFalse(deck.buzzer.active || deck.lamp.active);
  }
}
