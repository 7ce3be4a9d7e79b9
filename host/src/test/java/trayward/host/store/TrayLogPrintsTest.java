package trayward.host.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static trayward.host.session.MarkKind.EMERGENCE;
import static trayward.host.session.MarkKind.IN;
import static trayward.host.session.MarkKind.PULL;
import static trayward.host.store.LogScenes.EVENING;
import static trayward.host.store.LogScenes.marked;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import trayward.host.bath.Problem;
import trayward.host.session.Mark;
import trayward.host.session.Print;
import trayward.host.session.Session;

class TrayLogPrintsTest {

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
  void a_session_is_open_from_start_to_end() {
    assertEquals(new Session(1, EVENING, Optional.empty(), "", true), session);
    assertEquals(Optional.of(session), log.openSession());
    Session ended = log.endSession(1, EVENING.plusSeconds(60), "stopped").orElseThrow();
    assertEquals(
        new Session(1, EVENING, Optional.of(EVENING.plusSeconds(60)), "stopped", true), ended);
    assertEquals(Optional.empty(), log.openSession());
    assertEquals(Optional.empty(), log.endSession(1, EVENING, "stopped"));
    assertEquals(Optional.of(ended), log.session(1));
  }

  @Test
  void a_new_session_ends_the_one_before_it() {
    marked(log, IN, session, 10);
    Session second = log.startSession(EVENING.plusSeconds(100), false);
    assertEquals("superseded", log.session(1).orElseThrow().ending());
    assertTrue(log.print(1).orElseThrow().closed());
    assertEquals(List.of(second, log.session(1).orElseThrow()), log.sessions(10, 0));
    assertEquals(1, log.sessions(1, 1).size());
  }

  @Test
  void a_print_goes_from_in_to_pull_and_comes_back_as_it_was() {
    marked(log, IN, session, 10.5);
    marked(log, EMERGENCE, session, 130.25);
    Print print = marked(log, PULL, session, 190.125);
    assertEquals(Optional.of(print), log.print(1));
    assertEquals(EVENING.plusMillis(10_500), print.startedWall());
    assertEquals(
        new Mark(3, PULL, 190.125, EVENING.plusMillis(190_125), "pedal", OptionalDouble.of(40.06)),
        print.pullAt().orElseThrow());
    assertEquals(OptionalDouble.of(119.75), print.elapsedS(EMERGENCE));
    assertEquals(Optional.empty(), log.currentPrint());
    assertEquals(Optional.of(print), log.latestPrint(session.id()));
  }

  @Test
  void in_leaves_a_print_in_progress_without_a_pull() {
    marked(log, IN, session, 10);
    Print second = marked(log, IN, session, 60);
    Print first = log.print(1).orElseThrow();
    assertEquals(OptionalDouble.of(60), first.closedS());
    assertFalse(first.inProgress());
    assertEquals(2, second.number());
    assertEquals(Optional.of(second), log.currentPrint());
  }

  @Test
  void in_leaves_a_pulled_print_as_it_is() {
    marked(log, IN, session, 10);
    Print first = marked(log, PULL, session, 50);
    marked(log, IN, session, 60);
    assertEquals(Optional.of(first), log.print(1));
  }

  @Test
  void the_end_of_the_session_leaves_the_print_at_the_last_thing_known() {
    marked(log, IN, session, 10);
    log.addTrace(session.id(), LogScenes.samples(20, 5));
    log.endSession(session.id(), EVENING.plusSeconds(60), "stopped");
    assertEquals(OptionalDouble.of(24.003), log.print(1).orElseThrow().closedS());
    assertEquals(Optional.empty(), log.currentPrint());
  }

  @Test
  void prints_are_listed_newest_first_in_pages() {
    for (int i = 1; i <= 5; i++) {
      marked(log, IN, session, 10 * i);
      marked(log, EMERGENCE, session, 10 * i + 3);
      marked(log, PULL, session, 10 * i + 5);
    }
    assertEquals(List.of(5L, 4L), numbers(log.prints(2, 0)));
    assertEquals(List.of(3L, 2L), numbers(log.prints(2, 2)));
    assertEquals(List.of(1L), numbers(log.prints(2, 4)));
    assertEquals(List.of(), log.prints(-1, 0));
    assertEquals(5, log.prints(Integer.MAX_VALUE, -3).size());
    assertEquals(log.print(4), Optional.of(log.prints(2, 0).get(1)));
  }

  @Test
  void title_and_notes_are_changed_one_by_one() {
    marked(log, IN, session, 10);
    log.updatePrint(1, Optional.of("Harbour, third"), Optional.of("f/11, 90 s\n+ ½ stop sky"));
    PrintUpdate update = log.updatePrint(1, Optional.empty(), Optional.of(""));
    Print print = assertInstanceOf(PrintUpdate.Updated.class, update).print();
    assertEquals("Harbour, third", print.title());
    assertEquals("", print.notes());
    assertEquals(Optional.of(print), log.print(1));
  }

  @Test
  void texts_too_long_and_prints_that_are_not_there_are_values() {
    marked(log, IN, session, 10);
    assertEquals(
        new PrintUpdate.NoSuchPrint(), log.updatePrint(2, Optional.of("x"), Optional.empty()));
    Problem problem =
        assertInstanceOf(
                PrintUpdate.Refused.class,
                log.updatePrint(1, Optional.of("x"), Optional.of("n".repeat(2001))))
            .problem();
    assertEquals("notes", problem.field());
    assertEquals("", log.print(1).orElseThrow().title());
  }

  @Test
  void a_session_cannot_end_without_saying_how() {
    assertThrows(IllegalArgumentException.class, () -> log.endSession(1, EVENING, " "));
  }

  private static List<Long> numbers(List<Print> prints) {
    return prints.stream().map(Print::number).toList();
  }
}
