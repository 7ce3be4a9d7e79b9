package trayward.controller.scan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.LongFunction;
import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.event.EventKind;
import trayward.controller.event.TrayEvent;
import trayward.controller.event.TripCause;
import trayward.controller.onewire.Frames;
import trayward.controller.onewire.W1Slave;
import trayward.controller.port.RawReading;
import trayward.controller.safety.State;

/** What a person learns of a probe that is lost, found, or stands still, from its file on. */
class ProbeNewsTest {

  private static List<String> bathNews(Deck deck) {
    return deck.told.stream()
        .filter(e -> e.kind() == EventKind.PROBE && e.subject().equals("BATH"))
        .map(TrayEvent::detail)
        .toList();
  }

  /** From now on the bath probe's file holds this. */
  private static void holds(Deck deck, LongFunction<String> text) {
    deck.bathProbe =
        raw -> W1Slave.parse(text.apply(Math.round(raw.celsius() * 16)), raw.takenNanos());
  }

  @Test
  void aProbeThatVanishesAndComesBackIsOneEventEach() {
    Deck deck = new Deck();
    holds(deck, steps -> Frames.steps((int) steps));
    deck.run(5);
    holds(deck, steps -> ""); // the usual sign of a probe that does not answer
    deck.run(10);
    holds(deck, steps -> Frames.steps((int) steps));
    deck.run(10);
    assertEquals(List.of("VALID", "ABSENT", "VALID"), bathNews(deck));
  }

  /** The classes are those of SR-08; the value that stands still is found by the heat it misses. */
  @Test
  @Verifies(value = "SR-08", side = Verifies.Side.WITHHOLDS)
  void aFileThatIsWrittenAfreshWithTheSameValueForEverTripsWhileTheBathHeats() {
    Deck deck = Deck.heating();
    RawReading last = deck.tray.latest(trayward.controller.port.ProbeRole.BATH, deck.now);
    String frozen = Frames.steps((int) Math.round(last.celsius() * 16));
    holds(deck, steps -> frozen);
    deck.until(State.LOCKOUT);
    List<String> trips =
        deck.told.stream().filter(e -> e.kind() == EventKind.TRIP).map(TrayEvent::subject).toList();
    assertEquals(List.of(TripCause.BATH_PROBE_BAD.name()), trips);
    assertTrue(bathNews(deck).stream().allMatch("VALID"::equals), "each frame by itself is sound");
  }
}
