package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.event.TripCause;

/** What the interlock makes of the contact test; how it is judged stands in its own tests. */
class ContactTestTest {

  private static Bench wants(Bench bench, Relay relay) {
    return bench.given(c -> c.contactTest = Optional.of(relay));
  }

  @ParameterizedTest
  @EnumSource(Relay.class)
  @Verifies(value = "SR-26", side = Side.ALLOWS)
  void inAPurgeOneRelayIsClosedAloneAndNoHeatIsPermitted(Relay relay) {
    Bench bench = Bench.in(State.PURGING);
    Verdict verdict = wants(bench, relay).scan();
    ContactPermit permit = assertInstanceOf(ContactPermit.class, verdict.permission());
    assertTrue(permit.lets(relay, bench.scanNumber()));
    assertFalse(permit.lets(relay.other(), bench.scanNumber()));
    assertFalse(permit.lets(relay, bench.scanNumber() + 1), "for this scan alone");
    assertEquals(relay == Relay.SAFETY, verdict.safetyRelay());
    assertFalse(verdict.permitted());
    assertFalse(verdict.next().run().heated());
  }

  @ParameterizedTest
  @EnumSource(value = State.class, names = "PURGING", mode = EnumSource.Mode.EXCLUDE)
  @Verifies(value = "SR-26", side = Side.WITHHOLDS)
  void inNoOtherStateIsARelayClosedForTheTest(State state) {
    for (Relay relay : Relay.values()) {
      Bench bench = wants(Bench.in(state), relay);
      Verdict verdict = bench.scan();
      assertFalse(verdict.permission() instanceof ContactPermit);
      assertEquals(state.purged(), verdict.safetyRelay());
    }
  }

  static Stream<Consumer<Conditions>> broken() {
    return Stream.of(
        c -> c.airflow = Proof.ABSENT,
        c -> c.lateMs = 200,
        c -> c.store = false,
        c -> c.bath = new Temperature(true, false, Double.NaN),
        c -> c.circuit = false,
        c -> c.plate = new Temperature(true, false, Double.NaN));
  }

  @ParameterizedTest
  @MethodSource("broken")
  @Verifies(value = "SR-26", side = Side.WITHHOLDS)
  void whatBarsHeatBarsTheTestInThatScan(Consumer<Conditions> change) {
    Bench bench = wants(Bench.in(State.PURGING), Relay.SAFETY);
    Verdict verdict = bench.given(change).scan();
    assertFalse(verdict.permission() instanceof ContactPermit);
    assertFalse(verdict.safetyRelay());
  }

  @Test
  @Verifies(value = "SR-26", side = Side.WITHHOLDS)
  void untilBothContactsHaveBeenSeenToOpenThePurgeGoesOn() {
    Bench bench = Bench.in(State.PURGING).given(c -> c.contactsSound = false);
    bench.run(600);
    assertEquals(State.PURGING, bench.state());
    bench.given(c -> c.contactsSound = true).scan();
    assertTrue(bench.state().purged());
  }

  @Test
  @Verifies(value = "SR-26", side = Side.WITHHOLDS)
  void aWeldedContactFoundInThePurgeLocksOut() {
    Bench bench = wants(Bench.in(State.PURGING), Relay.HEATER);
    bench.given(c -> c.findings = Set.of(TripCause.RELAY_STUCK)).scan();
    assertEquals(State.LOCKOUT, bench.state());
    assertEquals(TripCause.RELAY_STUCK, bench.firstOut());
    assertInstanceOf(Permission.Withheld.class, bench.last().permission());
  }
}
