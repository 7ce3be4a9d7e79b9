package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.event.TripCause;
import trayward.controller.port.Contact;

class ReadBackTest {

  private static ReadBack after(
      int ms, Contact heater, boolean heaterOn, Contact safety, boolean safetyOn) {
    ReadBack watch = ReadBack.start(Limits.STANDARD);
    for (int t = 0; t < ms; t += 100) {
      watch = watch.next(100, heater, heaterOn, safety, safetyOn);
    }
    return watch;
  }

  @Test
  @Verifies(value = "SR-11", side = Side.WITHHOLDS)
  void aContactThatReadsClosedUnderAnOpenCommandForHalfASecondIsStuck() {
    ReadBack heater = after(500, Contact.CLOSED, false, Contact.OPEN, false);
    assertEquals(Optional.of(Relay.HEATER), heater.welded());
    assertEquals(Set.of(TripCause.RELAY_STUCK), heater.findings());
    ReadBack safety = after(500, Contact.OPEN, false, Contact.CLOSED, false);
    assertEquals(Optional.of(Relay.SAFETY), safety.welded());
    assertEquals(Set.of(TripCause.RELAY_STUCK), safety.findings());
  }

  @Test
  @Verifies(value = "SR-11", side = Side.WITHHOLDS)
  @Verifies(value = "SR-10", side = Side.WITHHOLDS)
  void aContactThatReadsOpenUnderAClosedCommandLetsNoHeatThrough() {
    ReadBack heater = after(500, Contact.OPEN, true, Contact.CLOSED, true);
    assertEquals(Optional.of(Relay.HEATER), heater.notClosing());
    assertEquals(Optional.empty(), heater.welded());
    assertEquals(Set.of(TripCause.HEAT_NOT_ARRIVING), heater.findings());
    ReadBack safety = after(500, Contact.CLOSED, true, Contact.OPEN, true);
    assertEquals(Optional.of(Relay.SAFETY), safety.notClosing());
  }

  @Test
  @Verifies(value = "SR-11", side = Side.ALLOWS)
  void aContactThatTakesUnderHalfASecondIsNoFault() {
    assertEquals(Set.of(), after(400, Contact.CLOSED, false, Contact.CLOSED, false).findings());
    assertEquals(Set.of(), after(400, Contact.OPEN, true, Contact.OPEN, true).findings());
    ReadBack late = after(400, Contact.CLOSED, false, Contact.CLOSED, false);
    late = late.next(100, Contact.OPEN, false, Contact.OPEN, false);
    assertEquals(ReadBack.start(Limits.STANDARD), late, "and the time before is forgotten");
  }

  @Test
  @Verifies(value = "SR-11", side = Side.ALLOWS)
  void contactsThatFollowTheirCommandsOrAreNotWiredAreWell() {
    assertEquals(Set.of(), after(60_000, Contact.CLOSED, true, Contact.OPEN, false).findings());
    assertEquals(Set.of(), after(60_000, Contact.OPEN, false, Contact.CLOSED, true).findings());
    Contact none = Contact.NOT_WIRED;
    assertEquals(Set.of(), after(60_000, none, true, none, false).findings());
    assertEquals(Set.of(), after(60_000, none, false, none, true).findings());
  }

  @Test
  void bothAtOnceNameTheSafetyRelayFirst() {
    ReadBack both = after(500, Contact.CLOSED, false, Contact.CLOSED, false);
    assertEquals(Optional.of(Relay.SAFETY), both.welded());
    assertEquals(
        Optional.of(Relay.SAFETY), after(500, Contact.OPEN, true, Contact.OPEN, true).notClosing());
  }
}
