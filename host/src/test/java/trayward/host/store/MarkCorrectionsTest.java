package trayward.host.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static trayward.host.session.MarkKind.EMERGENCE;
import static trayward.host.session.MarkKind.IN;
import static trayward.host.session.MarkKind.PULL;
import static trayward.host.store.LogScenes.EVENING;
import static trayward.host.store.LogScenes.marked;
import static trayward.host.store.LogScenes.samples;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import trayward.host.session.Correction;
import trayward.host.session.Mark;
import trayward.host.session.MarkKind;
import trayward.host.session.Print;
import trayward.host.session.Session;

class MarkCorrectionsTest {

  private static final Instant NOW = EVENING.plusSeconds(7200);

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

  private MarkResult correct(long number, MarkKind kind, double elapsedS, double nowS) {
    return log.record().correctMark(number, kind, elapsedS, OptionalDouble.of(nowS), NOW);
  }

  private Print corrected(long number, MarkKind kind, double elapsedS, double nowS) {
    MarkResult result = correct(number, kind, elapsedS, nowS);
    return assertInstanceOf(MarkResult.Marked.class, result).print();
  }

  private static String why(MarkResult result) {
    return assertInstanceOf(MarkResult.Refused.class, result).why();
  }

  @Test
  void aMarkIsPutElsewhereAndKeepsWhoMadeIt() {
    marked(log, IN, session, 10);
    marked(log, PULL, session, 210);
    Print print = corrected(1, PULL, 190, 300);
    Mark pull = print.pullAt().orElseThrow();
    assertEquals(200, pull.sessionS());
    assertEquals(EVENING.plusSeconds(200), pull.wall());
    assertEquals("pedal", pull.by());
    assertEquals(
        List.of(new Correction(NOW, Correction.Thing.PRINT, 1, "pull", "200.0 s", "190.0 s")),
        log.archive().entries(1).history());
  }

  @Test
  void aForgottenMarkIsEnteredByThePageWithTheBathAsItWasThen() {
    log.addTrace(session.id(), samples(0, 400));
    marked(log, IN, session, 10);
    marked(log, PULL, session, 310);
    Print print = corrected(1, EMERGENCE, 120, 400);
    Mark emergence = print.emergenceAt().orElseThrow();
    assertEquals("page", emergence.by());
    // samples(): 40 + 0.05 sin(t / 30), the last one before 130 s is of 129.003 s
    assertEquals(40 + 0.05 * Math.sin(129 / 30.0), emergence.bathC().orElseThrow(), 0.006);
    assertEquals("", log.archive().entries(1).history().get(0).was());
  }

  @Test
  void aForgottenPullEndsAPrintThatWasLeft() {
    marked(log, IN, session, 10);
    marked(log, IN, session, 400);
    assertTrue(log.print(1).orElseThrow().closed());
    Print print = corrected(1, PULL, 390, 500);
    assertFalse(print.closed());
    assertEquals(OptionalDouble.of(400), print.endS());
    assertEquals(Optional.of(log.print(2).orElseThrow()), log.currentPrint());
    assertTrue(why(correct(1, PULL, 390.1, 500)).contains("print 2"));
  }

  @Test
  void aForgottenPullEndsThePrintInTheDeveloper() {
    marked(log, IN, session, 10);
    assertTrue(why(correct(1, PULL, 91, 100)).contains("not come yet"));
    assertFalse(corrected(1, PULL, 90, 100).inProgress());
    assertEquals(Optional.empty(), log.currentPrint());
  }

  @Test
  void marksStayInOrder() {
    marked(log, IN, session, 10);
    marked(log, EMERGENCE, session, 110);
    marked(log, PULL, session, 210);
    assertTrue(why(correct(1, EMERGENCE, 200.1, 900)).contains("before pull"));
    assertTrue(why(correct(1, PULL, 99.9, 900)).contains("after emergence"));
    assertTrue(why(correct(1, IN, 100.1, 900)).contains("before emergence"));
    assertTrue(why(correct(1, EMERGENCE, -1, 900)).contains("after in"));
    assertEquals(3, log.print(1).orElseThrow().marks().size());
    assertEquals(List.of(), log.archive().entries(1).history());
  }

  @Test
  void afterTheEndOfTheSessionNothingCanHaveHappened() {
    marked(log, IN, session, 10);
    marked(log, EMERGENCE, session, 110);
    log.endSession(session.id(), EVENING.plusSeconds(600), "off");
    log.startSession(EVENING.plusSeconds(900), true);
    assertTrue(why(correct(1, PULL, 590.1, 5000)).contains("had ended"));
    assertEquals(OptionalDouble.of(590), corrected(1, PULL, 590, 5000).elapsedS(PULL));
  }

  @Test
  void anInMovesTheBeginningAndTheEndOfThePrintItLeft() {
    marked(log, IN, session, 10);
    marked(log, EMERGENCE, session, 100);
    marked(log, IN, session, 400);
    Print second = corrected(2, IN, -5, 500);
    assertEquals(EVENING.plusSeconds(395), second.startedWall());
    assertEquals(OptionalDouble.of(395), log.print(1).orElseThrow().closedS());
    assertTrue(why(correct(2, IN, -296, 500)).contains("print 1"));
    assertTrue(why(correct(1, IN, -10.1, 500)).contains("not begun"));
    assertTrue(why(correct(2, IN, 106, 500)).contains("not come yet"));
  }

  @Test
  void theSummaryFollowsTheMark() {
    log.addTrace(session.id(), samples(0, 400));
    marked(log, IN, session, 10);
    marked(log, PULL, session, 110);
    assertEquals(1, log.record().keepSummaries(10));
    assertEquals(100, log.summaryOf(log.print(1).orElseThrow()).samples());
    Print print = corrected(1, PULL, 200, 400);
    assertEquals(200, log.summaryOf(print).samples());
    assertEquals(OptionalDouble.of(200), log.summaryOf(print).pullS());
    assertEquals(0, log.record().keepSummaries(10), "it was kept anew at once");
  }

  @Test
  void aMarkTakenBackIsInTheHistoryAndItsSummaryIsGone() {
    log.addTrace(session.id(), samples(0, 400));
    marked(log, IN, session, 10);
    marked(log, PULL, session, 110);
    log.record().keepSummaries(10);
    log.undoLastMark(session.id(), NOW);
    assertEquals(OptionalDouble.empty(), log.summaryOf(log.print(1).orElseThrow()).pullS());
    Correction gone = log.archive().entries(1).history().get(0);
    assertEquals(List.of("pull", "100.0 s", ""), List.of(gone.field(), gone.was(), gone.became()));
  }

  @Test
  void noMarkIsAddedToAPrintThatHadTheMostThereCanBe() {
    marked(log, IN, session, 10);
    for (int i = 1; i < Print.MARKS_MAX; i++) {
      marked(log, EMERGENCE, session, 10 + 2 * i);
      log.undoLastMark(1, EVENING);
    }
    assertTrue(why(correct(1, PULL, 60, 500)).contains("most marks"));
    assertInstanceOf(MarkResult.Marked.class, correct(1, IN, 1, 500));
  }

  @Test
  void aPrintThatIsNotThereHasNoMarks() {
    assertTrue(why(correct(3, PULL, 1, 100)).contains("no print 3"));
  }
}
