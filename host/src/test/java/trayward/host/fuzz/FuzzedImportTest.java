package trayward.host.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import trayward.host.bath.BookEntry;
import trayward.host.report.LogExport;
import trayward.host.report.LogFolder;
import trayward.host.session.MarkKind;
import trayward.host.session.Moment;
import trayward.host.session.TraceSample;
import trayward.host.store.BathBook;
import trayward.host.store.BookModel;
import trayward.host.store.LogCopies;
import trayward.host.store.LogFile;
import trayward.host.store.LogReader;
import trayward.host.store.RowRefused;
import trayward.host.store.TrayLog;

/** A spoilt export is refused in one line and leaves no log, or it makes one with nothing wrong. */
@Timeout(1800)
class FuzzedImportTest {

  private static final int TRIED = 25 * Integer.getInteger("trayward.fuzz", 1);

  private static final Instant EVENING = Instant.parse("2031-05-06T19:00:00Z");

  @TempDir private Path folder;

  private Path exported() throws Exception {
    Path data = folder.resolve("data");
    try (TrayLog log = LogFile.open(data)) {
      long session = log.startSession(EVENING, true).id();
      BathBook.Now now = new BathBook.Now(EVENING, 1);
      log.baths().make(now, "e", 0, "", List.of(BookEntry.poured(0, 0, EVENING, 1, "water", 900)));
      log.mark(MarkKind.IN, session, new Moment(5, EVENING), "page", OptionalDouble.of(40));
      log.addTrace(session, new TraceSample(6, 40, 45, 40, 0.4, "HOLDING", true));
      log.mark(MarkKind.PULL, session, new Moment(65, EVENING), "pedal", OptionalDouble.empty());
      log.record().change(1, Map.of("paper", "matt", "aperture", "5.6"), EVENING);
      log.record().addStep(1, "fix", "60", "1+4", "rapid", EVENING);
    }
    Path out = folder.resolve("out");
    try (LogReader log = LogFile.openToRead(data)) {
      LogExport.write(out, log.whole());
    }
    return out;
  }

  @Test
  void whatIsNotTakenWholeLeavesNothing() throws Exception {
    Path out = exported();
    List<Path> files;
    try (Stream<Path> all = Files.walk(out)) {
      files = all.filter(Files::isRegularFile).filter(f -> !f.endsWith("columns.md")).toList();
    }
    Mutations mutations = new Mutations(8);
    int taken = 0;
    for (int i = 0; i < TRIED; i++) {
      Path spoilt = mutations.one(files);
      byte[] good = Files.readAllBytes(spoilt);
      Files.write(spoilt, mutations.bytes(good));
      Path log = folder.resolve("log-" + i);
      try {
        LogFile.takeIn(log, BookModel.STANDARD, new LogFolder(out));
        taken++;
        assertEquals(List.of(), LogCopies.check(log, BookModel.STANDARD).findings());
      } catch (RowRefused refused) {
        String line = String.valueOf(refused.getMessage());
        assertEquals(1, line.lines().count(), line);
        assertTrue(line.length() < 2000, "a line for a person: " + line.length());
        assertFalse(Files.exists(log.resolve(LogFile.NAME)), line);
      }
      Files.write(spoilt, good);
    }
    System.out.println(taken + " of " + TRIED + " spoilt exports taken");
  }
}
