package trayward.host.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static trayward.host.session.MarkKind.EMERGENCE;
import static trayward.host.session.MarkKind.IN;
import static trayward.host.session.MarkKind.PULL;
import static trayward.host.store.LogScenes.EVENING;
import static trayward.host.store.LogScenes.at;
import static trayward.host.store.LogScenes.mark;
import static trayward.host.store.LogScenes.marked;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import trayward.host.session.Mark;
import trayward.host.session.Print;
import trayward.host.session.Session;

class TrayLogMarksTest {

  @TempDir Path folder;
  private TrayLog log;
  private Session session;

  @BeforeEach
  void open() throws LogRefused {
    log = LogFile.open(folder);
    session = log.startSession(EVENING, true);
  }

  @AfterEach
  void close() {
    log.close();
  }

  @Test
  void a_mark_without_a_valid_reading_has_no_temperature() {
    for (OptionalDouble none : List.of(OptionalDouble.empty(), OptionalDouble.of(Double.NaN))) {
      log.mark(IN, 1, at(10 + 5.0 * log.counts().marks()), "page", none);
      Mark in = log.currentPrint().flatMap(Print::inAt).orElseThrow();
      assertEquals(OptionalDouble.empty(), in.bathC());
    }
  }

  @Test
  void a_double_mark_is_answered_with_the_print_that_has_it() {
    Print print = marked(log, IN, session, 10);
    MarkResult again = mark(log, IN, session, 10.8);
    assertEquals(new MarkResult.Duplicate(print), again);
    assertEquals(1, log.counts().marks());
    assertEquals(1, log.counts().prints());
  }

  @Test
  void what_the_rule_refuses_changes_nothing() {
    assertEquals(
        new MarkResult.Refused("no print is in the developer"), mark(log, PULL, session, 10));
    assertEquals(0, log.counts().marks());
    marked(log, IN, session, 20);
    assertInstanceOf(MarkResult.Refused.class, mark(log, PULL, session, 19));
    assertEquals(1, log.counts().marks());
  }

  @Test
  void a_mark_in_a_session_that_is_not_open_is_refused() {
    log.endSession(1, EVENING, "stopped");
    assertEquals(new MarkResult.Refused("session 1 is not open"), mark(log, IN, session, 10));
    log.startSession(EVENING, true);
    assertEquals(new MarkResult.Refused("session 1 is not open"), mark(log, IN, session, 10));
    MarkResult never = log.mark(IN, 99, at(1), "api", OptionalDouble.empty());
    assertEquals(new MarkResult.Refused("session 99 is not open"), never);
  }

  @Test
  void a_mark_later_than_any_session_lasts_is_refused() {
    assertInstanceOf(MarkResult.Refused.class, mark(log, IN, session, 31 * 86_400 + 1));
    assertInstanceOf(MarkResult.Marked.class, mark(log, IN, session, 31 * 86_400));
  }

  @Test
  void a_mark_taken_back_can_be_made_again_and_stays_in_the_log() {
    marked(log, IN, session, 10);
    marked(log, PULL, session, 50);
    Mark undone = log.undoLastMark(1, EVENING).orElseThrow();
    assertEquals(PULL, undone.kind());
    assertTrue(log.currentPrint().isPresent());
    assertEquals(OptionalDouble.of(70), marked(log, PULL, session, 80).elapsedS(PULL));
    assertEquals(1, log.counts().marksUndone());
    assertEquals(2, log.counts().marks());
  }

  @Test
  void an_in_taken_back_takes_its_print_away_and_brings_back_the_one_it_left() {
    Print first = marked(log, IN, session, 10);
    marked(log, IN, session, 60);
    assertTrue(log.undoLastMark(1, EVENING).isPresent());
    assertEquals(Optional.of(first), log.currentPrint());
    assertEquals(List.of(first), log.prints(10, 0));
    assertEquals(Optional.empty(), log.print(2));
    assertEquals(3, marked(log, IN, session, 70).number(), "a number is never given twice");
  }

  @Test
  void without_a_mark_or_an_open_session_nothing_is_taken_back() {
    assertEquals(Optional.empty(), log.undoLastMark(1, EVENING));
    marked(log, IN, session, 10);
    log.endSession(1, EVENING, "stopped");
    assertEquals(Optional.empty(), log.undoLastMark(1, EVENING));
  }

  @Test
  void the_marks_of_one_print_are_bounded_those_taken_back_included() {
    marked(log, IN, session, 10);
    for (int i = 1; i < Print.MARKS_MAX; i++) {
      marked(log, EMERGENCE, session, 10 + 2 * i);
      log.undoLastMark(1, EVENING);
    }
    assertInstanceOf(MarkResult.Refused.class, mark(log, EMERGENCE, session, 500));
    assertInstanceOf(MarkResult.Marked.class, mark(log, IN, session, 500));
  }
}
