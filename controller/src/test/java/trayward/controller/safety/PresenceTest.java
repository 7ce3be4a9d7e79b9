package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.event.WithheldReason;

/** SR-15: presence renewed every 45 min. SR-16: a required host silent for 60 s. */
class PresenceTest {

  /** Heating, and a person was there in the last scan. */
  private static Bench attended() {
    Bench bench = Bench.in(State.HEATING);
    bench.ask(Request.PRESENCE).scan();
    return bench;
  }

  @Test
  @Verifies(value = "SR-15", side = Side.WITHHOLDS)
  void fortyFiveMinutesWithoutASignWithholdHeat() {
    Bench bench = attended();
    bench.run(45 * 60 - 0.1);
    assertTrue(bench.last().permitted());
    bench.scan();
    assertFalse(bench.last().permitted());
    assertEquals(Set.of(WithheldReason.PRESENCE_DUE), bench.withheld());
    assertEquals(State.READY, bench.state());
    bench.run(600);
    assertEquals(State.AFTER_RUN, bench.state(), "nobody came");
  }

  @ParameterizedTest
  @EnumSource(
      value = Request.class,
      names = {"STOP"},
      mode = EnumSource.Mode.EXCLUDE)
  @Verifies(value = "SR-15", side = Side.ALLOWS)
  void anySignOfAPersonRenewsPresence(Request sign) {
    Bench bench = attended();
    bench.run(44 * 60);
    bench.ask(sign).run(44 * 60);
    assertTrue(bench.last().permitted());
  }

  @Test
  @Verifies(value = "SR-15", side = Side.ALLOWS)
  void aSignThatComesLateBringsHeatBackInThatScan() {
    Bench bench = attended();
    bench.run(50 * 60);
    assertFalse(bench.last().permitted());
    bench.ask(Request.PRESENCE).scan();
    assertTrue(bench.last().permitted());
  }

  @Test
  @Verifies(value = "SR-15", side = Side.WITHHOLDS)
  void thePresenceOfThoseWhoStartedAnHourAgoDoesNotCount() {
    Bench bench = attended();
    bench.run(3 * 3600);
    assertFalse(bench.last().permitted());
    bench.ask(Request.START).run(45 * 60 + 1);
    assertFalse(bench.last().permitted());
  }

  @Test
  @Verifies(value = "SR-16", side = Side.WITHHOLDS)
  void aHostSilentForSixtySecondsWithholdsHeatWithoutATrip() {
    Bench bench = attended();
    bench.given(c -> c.hostSilentMs = 60_000).scan();
    assertEquals(Set.of(WithheldReason.HOST_LOST), bench.withheld());
    assertFalse(bench.between().latch().holds());
    assertFalse(bench.run(60).permitted());
  }

  @Test
  @Verifies(value = "SR-16", side = Side.ALLOWS)
  void aHostHeardWithinSixtySecondsLetsHeatGoOn() {
    Bench bench = attended();
    assertTrue(bench.given(c -> c.hostSilentMs = 59_999).scan().permitted());
    assertTrue(bench.given(c -> c.hostSilentMs = 0).scan().permitted());
  }

  @Test
  @Verifies(value = "SR-13", side = Side.WITHHOLDS)
  @Verifies(value = "SR-16", side = Side.WITHHOLDS)
  void aHostThatIsBackStartsNoHeatUntilAPersonStartsAnew() {
    Bench bench = attended();
    bench.given(c -> c.hostSilentMs = 60_000).scan();
    bench.given(c -> c.hostSilentMs = 0).scan();
    assertEquals(State.AFTER_RUN, bench.state());
    assertFalse(bench.run(120).permitted());
    bench.ask(Request.START).until(State.HEATING);
    assertTrue(bench.last().permitted());
  }

  @Test
  @Verifies(value = "SR-16", side = Side.WITHHOLDS)
  void aHostLostAndBackBeforeAnyHeatEndsTheRunToo() {
    Bench bench = Bench.in(State.PURGING);
    bench.given(c -> c.hostSilentMs = 60_000).scan();
    assertEquals(State.PURGING, bench.state());
    bench.given(c -> c.hostSilentMs = 0).scan();
    assertEquals(State.OFF, bench.state());
  }

  @Test
  @Verifies(value = "SR-16", side = Side.ALLOWS)
  void aHostLostInAnEarlierRunDoesNotEndTheNext() {
    Bench bench = Bench.in(State.PURGING);
    bench.given(c -> c.hostSilentMs = 60_000).scan();
    bench.given(c -> c.hostSilentMs = 0).run(20);
    bench.ask(Request.START).until(State.HEATING);
    assertTrue(bench.run(60).permitted());
  }
}
