package trayward.host.app.demo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import trayward.host.WrittenFiles;
import trayward.host.bath.Balance;
import trayward.host.bath.EntryKind;
import trayward.host.forecast.Coefficient;
import trayward.host.forecast.Forecaster;
import trayward.host.forecast.PastPrint;
import trayward.host.report.LogExport;
import trayward.host.report.LogFolder;
import trayward.host.session.MarkKind;
import trayward.host.session.Print;
import trayward.host.session.PrintField;
import trayward.host.store.BathBook;
import trayward.host.store.BookModel;
import trayward.host.store.LogCopies;
import trayward.host.store.LogFile;
import trayward.host.store.TrayLog;

/** The invented season holds what it promises. */
class SeasonTest {

  @TempDir private static Path folder;
  private static TrayLog log;

  @BeforeAll
  static void write() throws Exception {
    log = LogFile.open(folder);
    long from = System.nanoTime();
    Season.write(log, Season.SEED);
    if (Boolean.getBoolean("trayward.print")) {
      System.out.printf("written in %.1f s, %s%n", (System.nanoTime() - from) / 1e9, log.counts());
    }
  }

  @AfterAll
  static void close() {
    log.close();
  }

  private static List<PastPrint> past() {
    return log.pastPrints().before(Long.MAX_VALUE, Optional.empty());
  }

  @Test
  void fortyToEightyPrintsOverSomeWeeksAllCalledInvented() {
    List<Print> prints = log.prints(1000, 0);
    assertTrue(prints.size() >= 40 && prints.size() <= 80, prints.size() + " prints");
    assertTrue(prints.stream().allMatch(p -> p.notes().startsWith("Invented")));
    assertTrue(log.invented());
    assertEquals(1, prints.stream().filter(Print::closed).count(), "one sheet was lost");
    Map<Long, Map<PrintField, String>> said = log.archive().fields(prints);
    assertTrue(said.values().stream().allMatch(f -> f.containsKey(PrintField.WIDTH_MM)));
  }

  @Test
  void someMarksWereTakenBackAndSomePutRight() {
    var histories =
        log.prints(1000, 0).stream()
            .flatMap(p -> log.archive().entries(p.number()).history().stream())
            .filter(c -> c.field().equals(MarkKind.EMERGENCE.word()))
            .toList();
    assertTrue(histories.stream().anyMatch(c -> c.became().isEmpty()), "taken back");
    assertTrue(
        histories.stream().anyMatch(c -> !c.was().isEmpty() && !c.became().isEmpty()), "put right");
  }

  @Test
  void theTraceOfEachPrintBeginsAMinuteBeforeInAndEndsAMinuteAfterThePull() {
    for (Print print : log.prints(1000, 0)) {
      double inS = print.inAt().orElseThrow().sessionS();
      double endS = print.endS().orElseThrow();
      int samples = log.trace(print.sessionId(), inS - 60, endS + 60).size();
      assertTrue(samples >= endS - inS + 119, "print " + print.number() + ": " + samples);
    }
  }

  @Test
  void everyBookBalancesAndBathsGoOnInOneAnother() {
    List<BathBook.Whole> books = log.baths().newestFirst(100, 0);
    int carried = 0;
    for (BathBook.Whole book : books) {
      double ml = 0;
      double before = Balance.beginning(book.bath()).millilitres().value();
      for (Balance.Line line : book.lines()) {
        ml = line.after().millilitres().value();
        EntryKind kind = line.entry().kind();
        carried += kind == EntryKind.CARRIED_OVER ? 1 : 0;
        if (kind == EntryKind.POURED || kind == EntryKind.CARRIED_OVER) {
          assertEquals(before + line.entry().millilitres(), ml, 1e-6, line.toString());
        } else {
          assertTrue(ml < before, line.toString());
        }
        before = ml;
      }
      assertTrue(ml > 0, book.bath().name());
      double shares = book.now().shares().values().stream().mapToDouble(Double::doubleValue).sum();
      assertEquals(1, shares, 1e-9, book.bath().name());
    }
    assertTrue(carried >= 8, carried + " carried over");
    assertTrue(books.stream().anyMatch(b -> b.now().shares().size() >= 3));
  }

  @Test
  void theForecastFindsTheTrueLawWithinItsStatedUncertainty() {
    Forecaster forecaster = Forecaster.of(past());
    TrueLaw law = TrueLaw.CHOSEN;
    for (Coefficient c : forecaster.emergenceCoefficients()) {
      double truth =
          switch (c.term()) {
            case CONSTANT -> law.constant();
            case TEMPERATURE -> law.activationKjPerMol();
            case EXHAUSTION -> law.perM2PerL();
            case BROMIDE -> law.perGPerL();
            case STRENGTH -> law.power();
            case STOPS -> law.perStop();
          };
      if (Boolean.getBoolean("trayward.print")) {
        System.out.println(c + " true " + truth);
      }
      assertEquals(truth, c.value(), 2 * c.standardError(), c.term().word());
    }
  }

  @Test
  void theSameSeedMakesTheSameSeasonAndAnotherSeedAnother(@TempDir Path other) throws Exception {
    List<PastPrint> here = past();
    for (long seed : new long[] {Season.SEED, Season.SEED + 1}) {
      Path place = Files.createDirectory(other.resolve("seed-" + seed));
      try (TrayLog again = LogFile.open(place)) {
        Season.write(again, seed);
        List<PastPrint> there = again.pastPrints().before(Long.MAX_VALUE, Optional.empty());
        assertEquals(seed == Season.SEED, here.equals(there));
        if (seed == Season.SEED) {
          assertEquals(log.counts(), again.counts());
          assertEquals(log.prints(1000, 0), again.prints(1000, 0));
        }
      }
    }
  }

  @Test
  void theFolderIsMadeOnceUsedAgainAndNeverThePersonsOwn(@TempDir Path place) throws Exception {
    Path demo = DemoFolder.beside(place.resolve("trayward-data"));
    assertEquals(place.resolve("trayward-demo"), demo);
    assertTrue(DemoFolder.ready(demo));
    List<Path> inside = new ArrayList<>();
    try (var all = Files.list(place)) {
      all.forEach(inside::add);
    }
    assertEquals(List.of(demo), inside, "nothing is left beside it");
    assertFalse(DemoFolder.ready(demo));
    Path own = Files.createDirectory(place.resolve("own"));
    LogFile.open(own).close();
    DemoFolder.Taken taken = assertThrows(DemoFolder.Taken.class, () -> DemoFolder.ready(own));
    String line = String.valueOf(taken.getMessage());
    assertTrue(line.contains("no invented season") && line.lines().count() == 1, line);
    Path letters = Files.createDirectory(place.resolve("letters"));
    Files.writeString(letters.resolve("letter.txt"), "Dear");
    assertThrows(DemoFolder.Taken.class, () -> DemoFolder.ready(letters));
    assertEquals("Dear", Files.readString(letters.resolve("letter.txt")));
  }

  @Test
  void takenOutAndInAgainItIsTheSameSeasonAndTheForecastFindsTheSameInIt(@TempDir Path place)
      throws Exception {
    LogExport.write(place.resolve("first"), log.whole());
    Path again = place.resolve("again");
    LogFile.takeIn(again, BookModel.STANDARD, new LogFolder(place.resolve("first")));
    try (TrayLog read = LogFile.open(again)) {
      LogExport.write(place.resolve("second"), read.whole());
      assertTrue(read.invented());
      assertEquals(past(), read.pastPrints().before(Long.MAX_VALUE, Optional.empty()));
    }
    assertEquals(WrittenFiles.of(place.resolve("first")), WrittenFiles.of(place.resolve("second")));
    assertEquals(List.of(), LogCopies.check(again, BookModel.STANDARD).findings());
  }
}
