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
import trayward.host.bath.Bath;
import trayward.host.bath.BookEntry;
import trayward.host.bath.Checked;
import trayward.host.bath.EntryKind;
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

  private static final BathBook.Now EARLY = new BathBook.Now(EVENING, Double.NaN);

  private static <T> T good(Checked<T> checked) {
    assertInstanceOf(Checked.Good.class, checked, checked::toString);
    return ((Checked.Good<T>) checked).value();
  }

  private static <T> Problem bad(Checked<T> checked) {
    assertInstanceOf(Checked.Bad.class, checked, checked::toString);
    return ((Checked.Bad<T>) checked).problem();
  }

  private Bath made(String name, double litres) {
    return good(log.baths().make(EARLY, name, litres, "", List.of())).bath();
  }

  private Checked<BookEntry> pour(long bath, String what, double millilitres) {
    return log.baths().enter(EARLY, BookEntry.poured(0, bath, EVENING, 5, what, millilitres));
  }

  @Test
  void a_bath_and_what_was_poured_come_back_as_they_were_entered() {
    Bath bath = made("1+20, a third old", 1.25);
    assertEquals(new Bath(1, EVENING, "1+20, a third old", 1.25, ""), bath);
    BookEntry water = good(pour(1, "water", 150));
    assertEquals(BookEntry.poured(1, 1, EVENING, 5, "water", 150), water);
    assertEquals(Optional.of(bath), log.bath(1));
    assertEquals(List.of(water), log.additions(1));
    assertEquals(1.4, log.baths().whole(1).orElseThrow().now().litres().value(), 1e-12);
  }

  @Test
  void baths_are_listed_newest_first_and_the_newest_is_in_the_tray() {
    made("first", 1);
    made("second", 1);
    assertEquals(List.of("second", "first"), log.baths(10, 0).stream().map(Bath::name).toList());
    assertEquals("first", log.baths(1, 1).get(0).name());
    assertEquals("second", log.baths().inTray().orElseThrow().name());
    good(log.baths().putInTray(EARLY, OptionalLong.of(1)));
    assertEquals("first", log.baths().inTray().orElseThrow().name());
    good(log.baths().putInTray(EARLY, OptionalLong.empty()));
    assertEquals(Optional.empty(), log.baths().inTray());
    assertEquals("bath", bad(log.baths().putInTray(EARLY, OptionalLong.of(9))).field());
  }

  @Test
  void what_is_not_accepted_is_a_value_and_nothing_is_stored() {
    assertEquals("name", bad(log.baths().make(EARLY, "", 1, "", List.of())).field());
    made("x", 1);
    assertEquals("bath", bad(pour(7, "water", 100)).field());
    Problem unknown = bad(pour(1, "unlabelled", 10));
    assertEquals("what", unknown.field());
    assertTrue(unknown.accepted().startsWith("water, bromide N %"), unknown.accepted());
    Problem more =
        bad(
            log.baths()
                .enter(
                    EARLY,
                    BookEntry.poured(0, 1, EVENING, 5, "x", 1001)
                        .as(EntryKind.POURED_AWAY, OptionalLong.empty())));
    assertEquals("millilitres", more.field());
    assertTrue(more.accepted().startsWith("at most the 1000 mL"), more.accepted());
    BookEntry future = BookEntry.poured(0, 1, EVENING.plusSeconds(1), 5, "water", 10);
    assertEquals("at", bad(log.baths().enter(EARLY, future)).field());
    BookEntry before = BookEntry.poured(0, 1, EVENING.minusSeconds(1), 5, "water", 10);
    assertEquals("at", bad(log.baths().enter(EARLY, before)).field());
    assertEquals(1, log.counts().baths());
    assertEquals(0, log.counts().additions());
  }

  @Test
  void what_is_entered_for_one_bath_is_bounded() {
    made("x", 1);
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
    assertEquals("bath", bad(pour(1, "water", 100)).field());
    made("y", 1);
    good(pour(2, "water", 100));
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
    made("x", 1);
    log.addEvent(OptionalLong.empty(), EVENING, 0, "NOTE", "", "");
    assertTrue(log.addTrace(1, LogScenes.samples(0, 1).get(0)));
    assertEquals(new LogCounts(1, 0, 0, 0, 1, 0, 1, 1), log.counts());
  }
}
