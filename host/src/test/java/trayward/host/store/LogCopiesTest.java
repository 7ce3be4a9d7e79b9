package trayward.host.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static trayward.host.store.LogScenes.EVENING;
import static trayward.host.store.LogScenes.garble;
import static trayward.host.store.LogScenes.marked;
import static trayward.host.store.LogScenes.otherProgramDoes;
import static trayward.host.store.LogScenes.samples;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import trayward.host.session.MarkKind;
import trayward.host.session.Session;

/** A check that finds what was planted, and a copy that is whole beside a program that writes. */
class LogCopiesTest {

  @TempDir Path folder;

  private static List<String> found(Path log) throws Exception {
    return LogCopies.check(log, BookModel.STANDARD).findings().stream()
        .map(LogFinding::line)
        .toList();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "UPDATE marks SET print = 999 WHERE id = 1 | marks 1: reference",
        "UPDATE marks SET bath_centi_c = 99999 WHERE id = 1 | marks 1: bath_centi_c: found '99999'",
        "UPDATE marks SET session_ms = -5 WHERE id = 1 | marks 1: session_ms: found '-5'",
        "UPDATE marks SET session_ms = 1 WHERE id = (SELECT max(id) FROM marks WHERE undone = 0)"
            + " | session_ms: found '1', accepted is in, emergence, pull in order of time",
        "DELETE FROM marks WHERE kind = 'in' AND print = 1 | prints 1: marks: found 'no in'",
        "UPDATE prints SET closed_by = 1 WHERE number = 2 | prints 2: closed_by",
        "UPDATE baths SET litres = -1 WHERE id = 2 | baths 2: litres",
        "UPDATE additions SET kind = 'tipped' WHERE id = 1 | additions 1: kind: found 'tipped'",
        "UPDATE additions SET millilitres = 1e9 WHERE id = 1 | additions 1: millilitres",
        "UPDATE additions SET millilitres = millilitres + 1 WHERE kind = 'taken-over' | additions",
        "UPDATE additions SET millilitres = 620 WHERE id = 1 | accepted is as worked out anew",
        "UPDATE additions SET other = 999 WHERE kind = 'printed' | a print of the log",
        "UPDATE print_baths SET bromide_g_per_l = 77 WHERE print = 3 | print_baths 3: bath",
        "DELETE FROM print_baths WHERE print = 4 | print_baths 4: bath: found 'nothing'",
        "UPDATE print_fields SET value = 'wide' WHERE field = 'width_mm' | print_fields",
        "UPDATE print_fields SET field = 'luck' WHERE field = 'width_mm' | field: found 'luck'",
        "UPDATE print_summaries SET mean_c = 1 WHERE print = 2 | print_summaries 2: summary",
        "UPDATE pictures SET width = 7 WHERE id = 1 | pictures 1: file",
        "UPDATE shelf SET body = 'x' WHERE id = 1 | shelf 1: body: found 'x'",
        "UPDATE corrections SET thing_id = 999 WHERE id = 1 | corrections 1: thing_id",
        "UPDATE trace SET t_ms = -1 WHERE t_ms = 3 AND session_id = 1 | trace 1 -1: t_ms",
        "UPDATE trace SET duty_permille = 1001 WHERE t_ms = 3 | trace 1 3: duty_permille",
        "DELETE FROM print_words WHERE rowid IN (SELECT number FROM prints WHERE notes <> '')"
            + " | print_words",
        "DROP INDEX one_live_mark_of_a_kind | schema one_live_mark_of_a_kind: sql: found 'nothing'"
      })
  void whatWasPlantedInARowIsFoundAndNamed(String planted, String line) throws Exception {
    Path log = folder.resolve("log");
    RandomLog.make(log, 3, 3);
    otherProgramDoes(log.resolve(LogFile.NAME), planted);
    List<String> found;
    try {
      found = found(log);
    } catch (LogRefused e) {
      found = List.of(String.valueOf(e.getMessage()));
    }
    assertFalse(found.isEmpty(), planted);
    assertTrue(found.stream().anyMatch(f -> f.contains(line)), found.toString());
  }

  /** A page that holds nothing may be anything: then what stands in the log is as it was. */
  @Test
  void aPageOverwrittenIsFoundWhereverItLiesOrHeldNothing() throws Exception {
    Path log = folder.resolve("log");
    RandomLog.make(log, 3, 3);
    Path file = log.resolve(LogFile.NAME);
    byte[] whole = Files.readAllBytes(file);
    String before = dump(log);
    int pages = whole.length / 4096;
    int told = 0;
    // Every fifth, and the last two: enough to meet each table, few enough for an ordinary run.
    List<Integer> tried =
        IntStream.range(1, pages).filter(p -> p % 5 == 1 || p > pages - 3).boxed().toList();
    for (int page : tried) {
      Files.write(file, whole);
      garble(file, page * 4096, 4096);
      boolean found;
      try {
        found = !found(log).isEmpty();
      } catch (LogRefused | LogFailed e) {
        found = true;
      }
      told += found ? 1 : 0;
      assertTrue(found || dump(log).equals(before), "page " + page + " of " + pages);
    }
    assertTrue(told > tried.size() * 3 / 4, told + " of " + tried.size());
  }

  private static String dump(Path log) throws Exception {
    StringBuilder all = new StringBuilder();
    try (LogReader reader = LogFile.openToRead(log)) {
      WholeLog.tables().forEach(table -> reader.whole().each(table, all::append));
      for (long session : reader.whole().traced()) {
        reader.whole().eachSample(session, all::append);
      }
    }
    return all.toString();
  }

  @Test
  void aPictureCutShortOrGoneIsFound() throws Exception {
    Path log = folder.resolve("log");
    RandomLog.make(log, 3, 3);
    Path picture;
    try (Stream<Path> all = Files.list(log.resolve("pictures"))) {
      picture = all.filter(p -> !p.toString().contains("small")).sorted().findFirst().orElseThrow();
    }
    byte[] bytes = Files.readAllBytes(picture);
    Files.write(picture, Arrays.copyOf(bytes, bytes.length / 2));
    assertTrue(found(log).get(0).startsWith("pictures 1: bytes: found"), found(log).toString());
    Files.delete(picture);
    assertTrue(found(log).get(0).contains("missing"), found(log).toString());
  }

  @Test
  void aCopyMadeBesideAProgramThatWritesIsWholeAsOfOneMoment() throws Exception {
    Path log = folder.resolve("log");
    RandomLog.make(log, 4, 2);
    Path copy = folder.resolve("deeper/copy");
    AtomicBoolean copied = new AtomicBoolean();
    long after;
    try (TrayLog open = LogFile.open(log)) {
      Session session = open.startSession(EVENING.plusSeconds(86_400L * 9), true);
      marked(open, MarkKind.IN, session, 100);
      Thread copying =
          new Thread(
              () -> {
                try {
                  copied.set(LogCopies.copy(log, copy) == 0);
                } catch (LogRefused | IOException e) {
                  throw new AssertionError(e);
                }
              });
      copying.start();
      int second = 0;
      while (copying.isAlive()) {
        assertEquals(10, open.addTrace(session.id(), samples(second, 10)));
        second += 10;
      }
      copying.join();
      after = open.counts().traceSamples();
    }
    assertTrue(copied.get());
    assertEquals(List.of(), found(copy));
    LogCounts counts = LogCopies.check(copy, BookModel.STANDARD).counts();
    assertEquals(0, counts.traceSamples() % 10, "no half of what was written at once");
    assertTrue(counts.traceSamples() <= after);
    try (TrayLog opened = LogFile.open(copy)) {
      assertEquals(counts.prints(), opened.counts().prints());
    }
  }

  @Test
  void aCopyTakesNoPlaceThatIsTakenAndLeavesNothingWhereItFails() throws Exception {
    Path log = folder.resolve("log");
    RandomLog.make(log, 1, 2);
    byte[] before = Files.readAllBytes(log.resolve(LogFile.NAME));
    RowRefused taken = assertThrows(RowRefused.class, () -> LogCopies.copy(log, log));
    assertTrue(taken.getMessage().startsWith("--out: found"), taken.getMessage());
    Path copies = Files.createDirectory(folder.resolve("copies"));
    assertThrows(
        LogRefused.class,
        () -> LogCopies.copy(folder.resolve("none"), copies.resolve("of-nothing")));
    try (Stream<Path> left = Files.list(copies)) {
      assertEquals(List.of(), left.toList());
    }
    assertArrayEquals(before, Files.readAllBytes(log.resolve(LogFile.NAME)));
  }
}
