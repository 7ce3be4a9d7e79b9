package trayward.host.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static trayward.host.session.MarkKind.EMERGENCE;
import static trayward.host.session.MarkKind.IN;
import static trayward.host.session.MarkKind.PULL;
import static trayward.host.store.LogScenes.EVENING;
import static trayward.host.store.LogScenes.marked;
import static trayward.host.store.LogScenes.otherProgramDoes;
import static trayward.host.store.LogScenes.samples;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import trayward.host.session.Print;
import trayward.host.session.PrintSummary;
import trayward.host.session.Session;

class SummariesKeptTest {

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

  private PrintSummary summary(long number) {
    return log.summaryOf(log.print(number).orElseThrow());
  }

  @Test
  void aSummaryIsKeptOnceTheTraceGoesTenSecondsBeyondThePull() {
    marked(log, IN, session, 10);
    marked(log, EMERGENCE, session, 60.25);
    marked(log, PULL, session, 110.5);
    log.addTrace(session.id(), samples(0, 120));
    assertEquals(0, log.record().keepSummaries(10), "119.003 s is within 10 s of the pull");
    PrintSummary before = summary(1);
    log.addTrace(session.id(), samples(120, 5));
    assertEquals(1, log.record().keepSummaries(10));
    assertEquals(0, log.record().keepSummaries(10));
    assertEquals(before, summary(1), "kept or worked out, it is the same");
  }

  @Test
  void aPrintThatWasLeftIsKeptOnceItsSessionHasEnded() {
    marked(log, IN, session, 10);
    log.addTrace(session.id(), samples(0, 50));
    assertEquals(0, log.record().keepSummaries(10));
    log.endSession(session.id(), EVENING.plusSeconds(60), "off");
    assertEquals(1, log.record().keepSummaries(10));
    assertEquals(40, summary(1).samples());
  }

  @Test
  void listAndSearchReadNoTraceOfAPrintWhoseSummaryIsKept() throws Exception {
    log.addTrace(session.id(), samples(0, 400));
    marked(log, IN, session, 10);
    marked(log, PULL, session, 110);
    marked(log, IN, session, 200);
    marked(log, PULL, session, 300);
    assertEquals(2, log.record().keepSummaries(10));
    List<Print> prints = log.archive().find(PrintQuery.ALL, 10, 0);
    List<PrintSummary> kept = log.archive().summaries(prints);
    otherProgramDoes(log.file(), "DELETE FROM trace");
    assertEquals(kept, log.archive().summaries(prints));
    assertEquals(100, kept.get(1).samples());
  }

  @Test
  void aFewAreKeptAtATimeTheNewestFirst() {
    log.addTrace(session.id(), samples(0, 400));
    for (int i = 0; i < 5; i++) {
      marked(log, IN, session, 10 + 50 * i);
      marked(log, PULL, session, 40 + 50 * i);
    }
    assertEquals(2, log.record().keepSummaries(2));
    assertEquals(2, log.record().keepSummaries(2));
    assertEquals(1, log.record().keepSummaries(2));
  }

  @Test
  void aPrintInTheDeveloperAgainLosesItsSummary() {
    log.addTrace(session.id(), samples(0, 400));
    marked(log, IN, session, 10);
    marked(log, IN, session, 100);
    assertEquals(1, log.record().keepSummaries(10));
    assertEquals(90, summary(1).samples());
    log.undoLastMark(session.id(), EVENING);
    assertEquals(390, summary(1).samples(), "in progress again, up to the last sample");
  }
}
