package trayward.host.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static trayward.host.store.LogScenes.EVENING;
import static trayward.host.store.LogScenes.at;
import static trayward.host.store.LogScenes.marked;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import trayward.host.bath.Amount;
import trayward.host.bath.BathContents;
import trayward.host.bath.BookEntry;
import trayward.host.bath.Checked;
import trayward.host.bath.EntryKind;
import trayward.host.bath.PrintUse;
import trayward.host.bath.Problem;
import trayward.host.bath.Vapour;
import trayward.host.heat.PoolEvaporation;
import trayward.host.session.MarkKind;
import trayward.host.session.PrintBath;
import trayward.host.session.Session;
import trayward.host.session.ShelfItem;
import trayward.host.session.ShelfKind;
import trayward.host.session.TraceSample;

/** A bath from an empty tray through prints and additions to the bath made of it. */
class BathBookTest {

  /** Exactly a gram of bromide as KBr for each square metre would be hard to pour: by silver. */
  private static final PrintUse USE = new PrintUse(new Amount(1.5, 0.3), new Amount(200, 50));

  private static final PoolEvaporation TRAY = new PoolEvaporation(0.072, 0.15, 20, 0.5, 1);

  @TempDir Path folder;
  private TrayLog log;

  @BeforeEach
  void open() throws LogRefused {
    log = LogFile.open(folder, new BookModel(USE, BookModel.vapour(TRAY)));
  }

  @AfterEach
  void close() {
    log.close();
  }

  private static BathBook.Now now(double sessionS) {
    return new BathBook.Now(at(sessionS).wall(), sessionS);
  }

  private static <T> T good(Checked<T> checked) {
    assertInstanceOf(Checked.Good.class, checked, checked::toString);
    return ((Checked.Good<T>) checked).value();
  }

  private static <T> Problem bad(Checked<T> checked) {
    assertInstanceOf(Checked.Bad.class, checked, checked::toString);
    return ((Checked.Bad<T>) checked).problem();
  }

  private BookEntry pour(long bath, double sessionS, String what, double ml) {
    return good(
        log.baths()
            .enter(
                now(sessionS), BookEntry.poured(0, bath, at(sessionS).wall(), sessionS, what, ml)));
  }

  private BookEntry enter(long bath, double sessionS, EntryKind kind, double ml, long other) {
    BookEntry entry =
        BookEntry.poured(0, bath, at(sessionS).wall(), sessionS, "x", ml)
            .as(kind, other == 0 ? OptionalLong.empty() : OptionalLong.of(other));
    return good(log.baths().enter(now(sessionS), entry));
  }

  private long made(String name, double sessionS) {
    return good(log.baths().make(now(sessionS), name, 0, "", List.of())).bath().id();
  }

  private BathContents holds(long bath) {
    return log.baths().whole(bath).orElseThrow().now();
  }

  private ShelfItem concentrate(String name, double sulfite) {
    return good(
        log.shelf()
            .add(
                EVENING,
                ShelfKind.CONCENTRATE,
                name,
                Map.of("sulfite_g_per_l", Double.toString(sulfite))));
  }

  private static List<TraceSample> bathAt(double celsius, int fromS, int seconds) {
    List<TraceSample> samples = new ArrayList<>();
    for (int s = fromS; s < fromS + seconds; s++) {
      samples.add(new TraceSample(s, celsius, Double.NaN, celsius, 0.4, "HOLDING", true));
    }
    return samples;
  }

  private void sized(long print, double widthMm, double heightMm) {
    PrintUpdate update =
        log.record()
            .change(
                print,
                Map.of(
                    "width_mm", Double.toString(widthMm), "height_mm", Double.toString(heightMm)),
                EVENING);
    assertInstanceOf(PrintUpdate.Updated.class, update);
  }

  @Test
  void fromAnEmptyTrayABathIsWhatWasPouredIntoIt() {
    concentrate("A", 80);
    long id = made("first", 0);
    pour(id, 1, "water", 900);
    pour(id, 2, "A", 50);
    pour(id, 3, "water", 50);
    assertEquals(1.0, holds(id).litres().value(), 1e-12);
    assertEquals(0.05, holds(id).strength().value(), 1e-12);
    assertEquals(4.0, holds(id).sulfiteGPerL().value(), 1e-12);
    pour(id, 4, "potassium bromide 10 %", 8);
    // 8 mL of 10 % weight in volume into 1000 mL: 0.8 g in 1.008 L, own arithmetic.
    assertEquals(0.79365, holds(id).bromideGPerL().value(), 1e-5);
    assertEquals(4, log.additions(id).size());
  }

  /** Vapour by the plant's equation over the recorded temperatures; the dissolved stays. */
  @Test
  void waterGoesAsVapourByTheRecordedTemperaturesAndTheLevelReadCorrectsIt() {
    Session session = log.startSession(EVENING, true);
    long id = made("first", 0);
    pour(id, 0, "water", 1000);
    pour(id, 0, "bromide 10 %", 10);
    log.addTrace(session.id(), bathAt(42, 1, 1800));
    log.addTrace(session.id(), bathAt(25, 1801, 600));
    double gone =
        (TRAY.millilitresPerHourAt(42) * 1800 + TRAY.millilitresPerHourAt(25) * 600) / 3600;
    assertEquals(1010 - gone, 1000 * holds(id).litres().value(), 1e-6);
    assertEquals(1800, holds(id).hotS(), 1e-9);
    assertEquals(
        Vapour.SHARE * gone,
        Math.sqrt(
            Math.pow(1000 * holds(id).litres().standard(), 2) - Math.pow(20, 2) - Math.pow(0.2, 2)),
        1e-6);
    // Entering a line counts what went before it; the same stretch is never counted twice.
    pour(id, 2400, "water", 30);
    assertEquals(1040 - gone, 1000 * holds(id).litres().value(), 1e-6);
    assertEquals(1.0 / (1.040 - gone / 1000), holds(id).bromideGPerL().value(), 1e-6);
    enter(id, 2401, EntryKind.LEVEL_READ, 900, 0);
    assertEquals(0.9, holds(id).litres().value(), 1e-12);
    assertEquals(1 / 0.9, holds(id).bromideGPerL().value(), 1e-9);
  }

  @Test
  void aSheetIsALineInTheBookAndThePrintKeepsWhatTheBathWas() {
    Session session = log.startSession(EVENING, true);
    long id = made("first", 0);
    pour(id, 0, "water", 1000);
    long print = marked(log, MarkKind.IN, session, 10).number();
    marked(log, MarkKind.PULL, session, 200);
    assertEquals(0, holds(id).areaM2(), "no size is told yet");
    sized(print, 203, 254);
    double area = 0.203 * 0.254;
    assertEquals(area, holds(id).areaM2(), 1e-12);
    // 1.5 g of silver are 1.6548 g of KBr for each square metre, carry-out 200 mL of it.
    assertEquals(1.6548 * area, holds(id).dissolved().bromideG().value(), 1e-4);
    assertEquals(1000 - 200 * area, holds(id).millilitres().value(), 1e-9);
    long second = marked(log, MarkKind.IN, session, 300).number();
    PrintBath was = log.baths().atPrint(second).orElseThrow();
    assertEquals(area, was.areaM2(), 1e-12);
    assertEquals(0, log.baths().atPrint(print).orElseThrow().areaM2(), 1e-12);
    log.undoLastMark(session.id(), at(301).wall());
    assertTrue(log.baths().atPrint(second).isEmpty(), "an in taken back is no sheet");
  }

  @Test
  void whatIsCarriedOverLeavesOneBookAndComesIntoTheOtherWithItsLineage() {
    long old = made("old", 0);
    pour(old, 1, "water", 990);
    pour(old, 2, "bromide 10 %", 10);
    long next = made("new", 10);
    pour(next, 11, "water", 500);
    enter(next, 12, EntryKind.CARRIED_OVER, 500, old);
    assertEquals(0.5, holds(next).bromideGPerL().value(), 1e-12);
    assertEquals(0.5, holds(next).shares().getOrDefault(old, 0.0), 1e-12);
    assertEquals(0.5, holds(old).litres().value(), 1e-12);
    assertEquals(1.0, holds(old).bromideGPerL().value(), 1e-12);
    BookEntry more =
        BookEntry.poured(0, next, at(13).wall(), 13, "x", 501)
            .as(EntryKind.CARRIED_OVER, OptionalLong.of(old));
    assertEquals("millilitres", bad(log.baths().enter(now(13), more)).field());
    assertEquals(0.5, holds(old).litres().value(), 1e-12, "nothing is stored");
  }

  /** Correcting the first bath changes what the third holds; what stood there stays visible. */
  @Test
  void aCorrectionGoesThroughEveryBathMadeOfItAndKeepsWhatWas() {
    Session session = log.startSession(EVENING, true);
    long first = made("first", 0);
    pour(first, 1, "water", 900);
    BookEntry slip = pour(first, 2, "bromide 10 %", 100);
    long second = made("second", 10);
    pour(second, 11, "water", 500);
    enter(second, 12, EntryKind.CARRIED_OVER, 500, first);
    long third = made("third", 20);
    pour(third, 21, "water", 500);
    enter(third, 22, EntryKind.CARRIED_OVER, 500, second);
    long print = marked(log, MarkKind.IN, session, 30).number();
    assertEquals(2.5, holds(third).bromideGPerL().value(), 1e-12);
    good(
        log.baths().correct(now(40), first, slip.id(), was -> new Checked.Good<>(poured(was, 10))));
    // 10 mL are 1 g in 910 mL; half of half a litre of that, twice.
    assertEquals(1.0 / 0.910 / 4, holds(third).bromideGPerL().value(), 1e-12);
    assertEquals(1.0 / 0.910 / 4, log.baths().atPrint(print).orElseThrow().bromideGPerL(), 1e-12);
    var history = log.baths().whole(first).orElseThrow().corrections();
    assertEquals(1, history.size());
    assertEquals("100.0", history.get(0).was());
    assertEquals("10.0", history.get(0).became());
  }

  private static BookEntry poured(BookEntry was, double ml) {
    return BookEntry.poured(was.id(), was.bathId(), was.wall(), was.sessionS(), was.what(), ml);
  }

  /** 500 mL were kept of it: what is left after the correction must still give them. */
  @Test
  void aCorrectionThatLeavesTooLittleForWhatWasKeptIsRefusedWhole() {
    long first = made("first", 0);
    BookEntry water = pour(first, 1, "water", 900);
    long second = made("second", 10);
    enter(second, 12, EntryKind.CARRIED_OVER, 500, first);
    Checked<BookEntry> corrected =
        log.baths()
            .correct(now(20), first, water.id(), was -> new Checked.Good<>(poured(was, 400)));
    assertEquals("millilitres", bad(corrected).field());
    assertEquals(400, holds(first).millilitres().value(), 1e-9);
    assertEquals("addition", bad(log.baths().takeBack(now(21), second, water.id())).field());
    assertEquals("millilitres", bad(log.baths().takeBack(now(21), first, water.id())).field());
  }

  @Test
  void aLineTakenBackCountsNoMoreAndItsPairNeither() {
    long first = made("first", 0);
    pour(first, 1, "water", 900);
    long second = made("second", 10);
    BookEntry kept = enter(second, 12, EntryKind.CARRIED_OVER, 500, first);
    good(log.baths().takeBack(now(20), second, kept.id()));
    assertEquals(900, holds(first).millilitres().value(), 1e-9);
    assertEquals(0, holds(second).millilitres().value(), 1e-9);
    assertEquals(1, log.baths().whole(second).orElseThrow().corrections().size());
  }

  @Test
  void whatAConcentrateHoldsMayBeToldLater() {
    ShelfItem a = concentrate("A", 0);
    long id = made("first", 0);
    pour(id, 1, "water", 950);
    pour(id, 2, "a", 50);
    assertEquals(0, holds(id).sulfiteGPerL().value());
    good(log.shelf().change(EVENING, a.id(), "A", Map.of("sulfite_g_per_l", "100")));
    assertEquals(5, holds(id).sulfiteGPerL().value(), 1e-12);
    assertEquals("name", bad(log.shelf().change(EVENING, a.id(), "B", Map.of())).field());
    good(log.shelf().takeOff(EVENING, a.id()));
    assertEquals(5, holds(id).sulfiteGPerL().value(), 1e-12, "an old book still balances");
    BookEntry more = BookEntry.poured(0, id, EVENING, 3, "A", 10);
    assertEquals("what", bad(log.baths().enter(now(3), more)).field());
    Session session = log.startSession(EVENING, true);
    long print = marked(log, MarkKind.IN, session, 5).number();
    concentrate("A", 60);
    assertEquals(3, holds(id).sulfiteGPerL().value(), 1e-12, "a name stands for one thing");
    assertEquals(3, log.baths().atPrint(print).orElseThrow().sulfiteGPerL(), 1e-12);
  }

  /** A restrainer at its stated dilution: 10 mL of 1+9 bring what 1 mL of it brings. */
  @Test
  void somethingPouredAtADilutionBringsItsShare() {
    good(log.shelf().add(EVENING, ShelfKind.STOCK, "restrainer", Map.of("bromide_percent", "20")));
    long id = made("first", 0);
    pour(id, 1, "water", 990);
    BookEntry entry =
        BookEntry.poured(0, id, at(2).wall(), 2, "restrainer", 10)
            .with("1+9", OptionalDouble.of(18));
    good(log.baths().enter(now(2), entry));
    assertEquals(0.2, holds(id).bromideGPerL().value(), 1e-12);
    assertEquals(0, holds(id).strength().value(), "a restrainer is no developer");
  }

  @Test
  void aProgramThatWasKilledLosesNoVapour() throws Exception {
    Session session = log.startSession(EVENING, true);
    long id = made("first", 0);
    pour(id, 0, "water", 1000);
    log.addTrace(session.id(), bathAt(42, 1, 3600));
    double gone = TRAY.millilitresPerHourAt(42);
    log.connection().close(); // as if it were gone, with the session open
    log.close();
    open();
    assertEquals(1000 - gone, holds(id).millilitres().value(), 1e-6);
    assertEquals(3600, holds(id).hotS(), 1e-9);
  }

  @Test
  void aClockThatIsSetBackDoesNotPutLinesOutOfOrder() {
    Session session = log.startSession(EVENING, true);
    long id = made("first", 100);
    pour(id, 100, "water", 1000);
    Instant back = EVENING.minusSeconds(3600);
    log.mark(
        MarkKind.IN,
        session.id(),
        new trayward.host.session.Moment(200, back),
        "pedal",
        OptionalDouble.empty());
    var lines = log.baths().whole(id).orElseThrow().lines();
    assertEquals(EntryKind.PRINTED, lines.get(lines.size() - 1).entry().kind());
  }

  @Test
  void aBookThatDoesNotBalanceLosesNoMark() {
    Session session = log.startSession(EVENING, true);
    long id = made("first", 0);
    pour(id, 1, "water", 500);
    log.connection()
        .write(handle -> handle.execute("UPDATE additions SET what = 'spoilt by another hand'"));
    long print = marked(log, MarkKind.IN, session, 30).number();
    assertTrue(log.print(print).isPresent());
    assertTrue(log.baths().atPrint(print).isEmpty());
    assertThrows(LogFailed.class, () -> log.baths().now());
  }
}
