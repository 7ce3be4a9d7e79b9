package trayward.controller.scan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.event.EventKind;
import trayward.controller.event.TrayEvent;
import trayward.controller.event.TripCause;
import trayward.controller.event.WithheldReason;
import trayward.controller.port.LineReadings;
import trayward.controller.safety.Request;
import trayward.controller.safety.State;

/** Whole sessions of scan and simulated tray in virtual time. */
class SessionTest {

  private static List<String> told(Deck deck, EventKind kind) {
    return deck.told.stream().filter(e -> e.kind() == kind).map(TrayEvent::subject).toList();
  }

  private static LineReadings with(LineReadings in, boolean stopClosed, boolean reset) {
    return new LineReadings(
        in.present(), in.airflow(), in.fanRpm(), stopClosed, reset, false, false);
  }

  @Test
  @Verifies(value = "SR-01", side = Side.ALLOWS)
  void aStartLeadsThroughEveryStateToAHeldBathAndAStopBackToOff() throws Exception {
    Deck deck = new Deck();
    var answer = deck.ask(Request.START);
    deck.until(State.HOLDING).run(600);
    assertEquals(Answer.DONE, answer.get());
    assertEquals(40, deck.tray.plant().bathC(), 0.5);
    var stop = deck.mailbox.stop();
    Snapshot stopped = deck.scan();
    assertEquals(State.AFTER_RUN, stopped.state());
    assertEquals(Answer.DONE, stop.get());
    assertFalse(deck.heater.active || deck.safety.active);
    deck.tray.plant().pour(5, 15);
    deck.run(400);
    assertEquals(
        List.of("PROVING", "PURGING", "READY", "HEATING", "HOLDING", "AFTER_RUN", "OFF"),
        told(deck, EventKind.STATE));
    assertFalse(deck.fan.active);
  }

  @Test
  @Verifies(value = "SR-13", side = Side.WITHHOLDS)
  void powerLostInTheMiddleOfHeatNeverHeatsAgainWithoutAStart() {
    Deck deck = Deck.heating();
    deck.run(60);
    deck.powerLossAndBack();
    Snapshot first = deck.scan();
    assertEquals(State.OFF, first.state());
    assertEquals(List.of("OFF", "OFF"), told(deck, EventKind.POWER_UP));
    for (int i = 0; i < 6000; i++) {
      assertFalse(deck.scan().permitted());
      assertFalse(deck.heater.active || deck.safety.active);
    }
    var unused = deck.ask(Request.START);
    deck.until(State.HEATING);
  }

  @Test
  @Verifies(value = "SR-12", side = Side.WITHHOLDS)
  void powerLostInALockoutComesBackToTheLockout() {
    Deck deck = Deck.heating();
    deck.lines = in -> new LineReadings(true, false, 0, true, false, false, false);
    deck.run(1);
    deck.powerLossAndBack();
    Snapshot back = deck.scan();
    assertEquals(State.LOCKOUT, back.state());
    assertEquals(TripCause.AIR_LOST, back.firstOut().orElseThrow());
  }

  @Test
  @Verifies(value = "SR-12", side = Side.ALLOWS)
  void theResetButtonAtTheTrayClearsAndAPageFromAfarDoesNot() throws Exception {
    Deck deck = Deck.heating();
    deck.scanAfter(2 * 1_000_000_000L);
    var ack = deck.ask(Request.ACKNOWLEDGE);
    deck.run(1);
    assertTrue(ack.get().accepted());
    var afar = deck.mailbox.ask(Request.RESET, false);
    assertEquals(State.LOCKOUT, deck.scan().state());
    assertFalse(afar.get().accepted());
    assertFalse(afar.get().reason().isBlank());
    deck.lines = in -> with(in, true, true);
    assertEquals(State.OFF, deck.scan().state());
  }

  @Test
  @Verifies(value = "SR-14", side = Side.WITHHOLDS)
  void theStopCircuitOpensTheRelaysInTheSameScanAndAMissingInputBoardDoesToo() {
    Deck deck = Deck.heating();
    assertTrue(deck.safety.active);
    deck.lines = in -> with(in, false, false);
    assertEquals(State.AFTER_RUN, deck.scan().state());
    assertFalse(deck.heater.active || deck.safety.active);
    Deck other = Deck.heating();
    other.lines = in -> LineReadings.ABSENT;
    assertEquals(State.AFTER_RUN, other.scan().state());
    assertFalse(other.heater.active || other.safety.active);
  }

  @Test
  @Verifies(value = "SR-14", side = Side.WITHHOLDS)
  void aStopInACrowdOfOtherRequestsActsInTheNextScan() throws Exception {
    Deck deck = Deck.heating();
    for (int i = 0; i < 200; i++) {
      var unused = deck.ask(Request.START);
    }
    var stop = deck.mailbox.stop();
    assertEquals(State.AFTER_RUN, deck.scan().state());
    assertTrue(stop.get().accepted());
  }

  @ParameterizedTest
  @ValueSource(doubles = {14.9, 50.1, Double.NaN, Double.POSITIVE_INFINITY, -40})
  @Verifies(value = "SR-06", side = Side.WITHHOLDS)
  void aSetTemperatureOutsideOfFifteenToFiftyIsRefusedAndChangesNothing(double celsius)
      throws Exception {
    Deck deck = new Deck();
    var answer = deck.mailbox.setTemperature(celsius, true);
    assertEquals(40, deck.scan().setC());
    assertEquals(Answer.refused("15 to 50 °C"), answer.get());
  }

  @ParameterizedTest
  @ValueSource(doubles = {15, 50})
  @Verifies(value = "SR-06", side = Side.ALLOWS)
  void aSetTemperatureFromFifteenToFiftyIsTaken(double celsius) throws Exception {
    Deck deck = new Deck();
    var answer = deck.mailbox.setTemperature(celsius, true);
    assertEquals(celsius, deck.scan().setC());
    assertEquals(Answer.DONE, answer.get());
  }

  @Test
  @Verifies(value = "SR-15", side = Side.WITHHOLDS)
  void presenceIsWarnedOfFiveMinutesBeforeAndThePedalRenewsIt() {
    Deck deck = Deck.heating();
    deck.run(40 * 60 - 80);
    assertEquals(List.of(), told(deck, EventKind.PRESENCE_SOON));
    deck.run(15);
    assertEquals(List.of("5"), told(deck, EventKind.PRESENCE_SOON));
    Snapshot due = deck.run(300);
    assertEquals(Set.of(WithheldReason.PRESENCE_DUE), due.withheld());
    assertEquals(0, due.presenceDueMs());
    deck.lines = in -> new LineReadings(true, in.airflow(), in.fanRpm(), true, false, false, true);
    assertTrue(deck.scan().permitted());
    assertEquals(List.of("pressed"), told(deck, EventKind.PEDAL));
    deck.run(1);
    assertEquals(List.of("pressed", "LONG"), told(deck, EventKind.PEDAL), "kept down");
  }

  @Test
  @Verifies(value = "SR-15", side = Side.WITHHOLDS)
  void scansThatComeEachAMomentLateLoseNoTime() {
    Deck deck = Deck.heating();
    var unused = deck.ask(Request.PRESENCE);
    deck.scan();
    long from = deck.now;
    long period = 100_900_000L; // nine tenths of a millisecond late, each time
    while (deck.now - from < 45L * 60 * 1_000_000_000L + period) {
      deck.scanAfter(period);
    }
    assertFalse(deck.scanAfter(period).permitted(), "45 min are 45 min");
  }

  @Test
  @Verifies(value = "SR-16", side = Side.WITHHOLDS)
  void aRequiredHostThatFallsSilentWithholdsHeatAfterAMinute() {
    Deck deck = new Deck(true);
    var unused = deck.ask(Request.START);
    for (int i = 0; i < 1200; i++) {
      deck.host.beat(i);
      deck.scan();
    }
    assertTrue(deck.run(59.9).permitted());
    Snapshot lost = deck.run(0.2);
    assertEquals(Set.of(WithheldReason.HOST_LOST), lost.withheld());
    deck.host.beat(-1);
    assertEquals(State.AFTER_RUN, deck.scan().state());
  }
}
