package trayward.controller.scan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.event.EventKind;
import trayward.controller.keep.UpkeepDesk;
import trayward.controller.keep.UpkeepPlan;
import trayward.controller.safety.Request;
import trayward.controller.safety.State;

/** Starts with maintenance overdue (SR-23) and a wall clock that jumps (SR-22). */
class StartConfirmedTest {

  private static final long DAY_S = 24 * 3600;
  private static final long INSTALLED_S = 20_782 * DAY_S; // 2026-11-25
  private static final long YEAR_S = 365 * DAY_S;

  @TempDir private Path folder;
  private long clockS = INSTALLED_S;

  private UpkeepDesk desk(String name) {
    return new UpkeepDesk(folder.resolve(name), UpkeepPlan.STANDARD, () -> clockS);
  }

  private Deck deck(String name) {
    return new Deck(false, new Mailbox(desk(name)::startUnconfirmed));
  }

  @Test
  @Verifies(value = "SR-23", side = Side.WITHHOLDS)
  void aStartWithTheBreakerTestOverdueIsRefusedUntilItIsConfirmed() throws Exception {
    Deck deck = deck("a");
    clockS += 40 * DAY_S;
    var bare = deck.ask(Request.START);
    assertEquals(State.OFF, deck.scan().state());
    assertFalse(bare.get().accepted());
    assertTrue(bare.get().confirmable());
    assertTrue(bare.get().reason().contains("breaker test was due on 2026-12-25"));
    assertEquals(
        List.of("START"),
        deck.told.stream()
            .filter(e -> e.kind() == EventKind.REFUSED)
            .map(e -> e.subject())
            .toList());
    var confirmed = deck.mailbox.start(true, true);
    assertEquals(State.PROVING, deck.scan().state());
    assertEquals(Answer.DONE, confirmed.get());
  }

  @ParameterizedTest
  @ValueSource(longs = {0, 30 * DAY_S})
  @Verifies(value = "SR-23", side = Side.ALLOWS)
  void aStartWithNothingOverdueNeedsNoConfirmation(long laterS) throws Exception {
    Deck deck = deck("b");
    clockS += laterS;
    var bare = deck.mailbox.start(false, true);
    assertEquals(State.PROVING, deck.scan().state());
    assertEquals(Answer.DONE, bare.get());
  }

  @ParameterizedTest
  @ValueSource(longs = {-1, -YEAR_S, -INSTALLED_S})
  @Verifies(value = "SR-23", side = Side.WITHHOLDS)
  void aClockThatIsNotSetAsksForAConfirmation(long stepS) throws Exception {
    Deck deck = deck("c");
    clockS += stepS;
    var bare = deck.ask(Request.START);
    assertEquals(State.OFF, deck.scan().state());
    assertTrue(bare.get().reason().contains("the clock is not set"), bare.get().reason());
  }

  @Test
  @Verifies(value = "SR-23", side = Side.ALLOWS)
  void aConfirmedStartBesideOneThatIsNotStarts() throws Exception {
    for (boolean first : new boolean[] {true, false}) {
      Deck deck = deck("d" + first);
      clockS = INSTALLED_S + 40 * DAY_S;
      var one = deck.mailbox.start(first, true);
      var other = deck.mailbox.start(!first, true);
      assertEquals(State.PROVING, deck.scan().state());
      assertTrue(one.get().accepted() && other.get().accepted());
      clockS = INSTALLED_S;
    }
  }

  @Test
  @Verifies(value = "SR-23", side = Side.WITHHOLDS)
  void aConfirmationCarriesNoStartThroughAnotherRefusal() throws Exception {
    Deck deck = deck("e");
    clockS += 40 * DAY_S;
    deck.lines =
        in -> new trayward.controller.port.LineReadings(true, false, 0, false, false, false, false);
    var confirmed = deck.mailbox.start(true, true);
    assertEquals(State.OFF, deck.scan().state());
    assertFalse(confirmed.get().accepted() || confirmed.get().confirmable());
  }

  /** A run of ten minutes to the hold, with or without a clock that jumps by years all the time. */
  private List<Snapshot> session(String name, boolean steps) {
    clockS = INSTALLED_S;
    UpkeepDesk desk = desk(name);
    Deck deck = new Deck(false, new Mailbox(desk::startUnconfirmed));
    var unused = deck.ask(Request.START);
    List<Snapshot> all = new ArrayList<>();
    for (int i = 0; i < 12_000; i++) {
      clockS = steps && i % 50 == 0 ? INSTALLED_S + (i % 100 == 0 ? 10 : -20) * YEAR_S : clockS;
      if (i % 10 == 0) {
        desk.count(deck.now, true, true);
        desk.report();
      }
      if (i == 6000) {
        unused = deck.ask(Request.PRESENCE);
        unused = deck.mailbox.setTemperature(35, true);
      }
      all.add(deck.scan());
    }
    return all;
  }

  @Test
  @Verifies(value = "SR-22", side = Side.ALLOWS)
  void yearsOfTheWallClockForwardAndBackChangeNothingInAnyScan() {
    List<Snapshot> still = session("still", false);
    assertEquals(still, session("jumps", true));
    assertTrue(still.stream().filter(Snapshot::permitted).count() > 5000, "heat was permitted");
  }

  @Test
  @Verifies(value = "SR-22", side = Side.WITHHOLDS)
  void aJumpingWallClockNeitherEndsATripNorKeepsHeatOn() {
    Deck deck = deck("f");
    var unused = deck.ask(Request.START);
    deck.until(State.HEATING);
    clockS += 10 * YEAR_S;
    assertEquals(State.LOCKOUT, deck.scanAfter(2_000_000_000L).state());
    clockS -= 20 * YEAR_S;
    assertEquals(State.LOCKOUT, deck.run(60).state());
    assertFalse(deck.heater.active || deck.safety.active);
  }
}
