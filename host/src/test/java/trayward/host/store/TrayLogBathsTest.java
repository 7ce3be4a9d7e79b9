package trayward.host.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static trayward.host.store.LogScenes.EVENING;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import trayward.host.bath.Addition;
import trayward.host.bath.Bath;
import trayward.host.bath.Checked;
import trayward.host.bath.Problem;

class TrayLogBathsTest {

  @TempDir Path folder;
  private TrayLog log;

  @BeforeEach
  void open() throws LogRefused {
    log = LogFile.open(folder);
  }

  @AfterEach
  void close() {
    log.close();
  }

  @Test
  void a_bath_and_its_additions_come_back_as_they_were_entered() {
    Bath bath = new Bath(1, EVENING, "1+20, a third old", 1.25, "old from January");
    assertEquals(
        new Checked.Good<>(bath),
        log.addBath(EVENING, "1+20, a third old", 1.25, "old from January"));
    Addition water = new Addition(1, 1, EVENING, 12.5, "water", 150);
    assertEquals(new Checked.Good<>(water), log.addAddition(1, EVENING, 12.5, "water", 150));
    Addition before = new Addition(2, 1, EVENING, Double.NaN, "stock A", 12.5);
    assertEquals(
        new Checked.Good<>(before), log.addAddition(1, EVENING, Double.NaN, "stock A", 12.5));
    assertEquals(Optional.of(bath), log.bath(1));
    assertEquals(List.of(water, before), log.additions(1));
    assertEquals(1.4125, bath.litresWith(log.additions(1)), 1e-12);
  }

  @Test
  void baths_are_listed_newest_first() {
    log.addBath(EVENING, "first", 1, "");
    log.addBath(EVENING, "second", 1, "");
    assertEquals(List.of("second", "first"), log.baths(10, 0).stream().map(Bath::name).toList());
    assertEquals("first", log.baths(1, 1).get(0).name());
  }

  @Test
  void what_is_out_of_range_is_a_value_and_not_kept() {
    assertInstanceOf(Checked.Bad.class, log.addBath(EVENING, "", 1, ""));
    log.addBath(EVENING, "x", 1, "");
    assertInstanceOf(Checked.Bad.class, log.addAddition(1, EVENING, 0, "water", 0));
    assertEquals(1, log.counts().baths());
    assertEquals(0, log.counts().additions());
  }

  @Test
  void an_addition_to_a_bath_that_is_not_there_is_a_value() {
    assertEquals(
        new Checked.Bad<>(new Problem("bath", "7", "a bath that is in the log")),
        log.addAddition(7, EVENING, 0, "water", 100));
  }

  @Test
  void the_additions_to_one_bath_are_bounded() {
    log.addBath(EVENING, "x", 1, "");
    log.connection()
        .write(
            handle ->
                handle.execute(
                    """
                    INSERT INTO additions (bath_id, wall_ms, what, millilitres)
                      WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < ?)
                      SELECT 1, 0, 'water', 1 FROM n
                    """,
                    TrayLog.ADDITIONS_MAX));
    assertInstanceOf(Checked.Bad.class, log.addAddition(1, EVENING, 0, "water", 100));
    log.addBath(EVENING, "y", 1, "");
    assertInstanceOf(Checked.Good.class, log.addAddition(2, EVENING, 0, "water", 100));
  }

  @Test
  void events_come_back_newest_first_for_a_session_or_for_all() {
    long session = log.startSession(EVENING, true).id();
    log.addEvent(OptionalLong.empty(), EVENING, 0.5, "POWER_UP", "controller", "");
    log.addEvent(OptionalLong.of(session), EVENING, 12.345, "TRIP", "AIR_LOST", "duct");
    LogEvent trip =
        new LogEvent(2, OptionalLong.of(session), EVENING, 12.345, "TRIP", "AIR_LOST", "duct");
    assertEquals(List.of(trip), log.events(OptionalLong.of(session), 10));
    assertEquals(2, log.events(OptionalLong.empty(), 10).size());
    assertEquals(List.of(trip), log.events(OptionalLong.empty(), 1));
    assertEquals(OptionalLong.empty(), log.events(OptionalLong.empty(), 10).get(1).sessionId());
  }

  @Test
  void an_event_of_a_session_that_is_not_in_the_log_is_kept_without_it() {
    log.addEvent(OptionalLong.of(99), EVENING, Double.NaN, "NOTE", "x", "");
    assertEquals(OptionalLong.empty(), log.events(OptionalLong.empty(), 1).get(0).sessionId());
  }

  @Test
  void long_texts_of_events_are_cut() {
    log.addEvent(OptionalLong.empty(), EVENING, 1, "k".repeat(99), "s".repeat(99), "d".repeat(999));
    LogEvent event = log.events(OptionalLong.empty(), 1).get(0);
    assertEquals(32, event.kind().length());
    assertEquals(80, event.subject().length());
    assertEquals(500, event.detail().length());
  }

  @Test
  void of_a_flood_of_events_the_newest_stay() {
    for (int i = 1; i <= 8; i++) {
      String subject = "e" + i;
      log.connection()
          .write(
              handle -> {
                EventRows.add(handle, OptionalLong.empty(), EVENING, 0, "NOTE", subject, "", 5);
                return true;
              });
    }
    List<LogEvent> left = log.events(OptionalLong.empty(), 100);
    assertEquals(5, left.size());
    assertEquals("e8", left.get(0).subject());
    assertEquals("e4", left.get(4).subject());
  }

  @Test
  void the_counts_tell_what_is_in_the_log() {
    log.startSession(EVENING, true);
    log.addBath(EVENING, "x", 1, "");
    log.addEvent(OptionalLong.empty(), EVENING, 0, "NOTE", "", "");
    assertTrue(log.addTrace(1, LogScenes.samples(0, 1).get(0)));
    assertEquals(new LogCounts(1, 0, 0, 0, 1, 0, 1, 1), log.counts());
  }
}
