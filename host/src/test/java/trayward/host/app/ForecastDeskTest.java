package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import trayward.host.bath.BookEntry;
import trayward.host.forecast.Forecast;
import trayward.host.session.MarkKind;
import trayward.host.session.Moment;
import trayward.host.session.Session;
import trayward.host.session.TraceSample;
import trayward.host.store.BathBook;
import trayward.host.store.LogFile;
import trayward.host.store.TrayLog;
import trayward.host.web.Outlook;

/** The forecast over a real log: a printer whose law is known, print by print. */
class ForecastDeskTest {

  private static final Instant EVENING = Instant.parse("2031-03-01T20:00:00Z");
  private static final double KELVIN = 273.15;

  /** Apparent activation energy of the printer, kJ/mol; any would do. */
  private static final double ENERGY = 70;

  @TempDir private Path folder;
  private final Random random = new Random(11);
  private TrayLog log;
  private Session session;
  private double nowS;

  @BeforeEach
  void open() throws Exception {
    log = LogFile.open(folder);
    session = log.startSession(EVENING, true);
    BathBook.Now now = new BathBook.Now(EVENING, 0);
    log.baths().make(now, "x", 0, "", List.of(BookEntry.poured(0, 0, EVENING, 0, "water", 1000)));
  }

  @AfterEach
  void close() {
    log.close();
  }

  private void bath(double celsius, double seconds) {
    List<TraceSample> samples = new ArrayList<>();
    for (double end = nowS + seconds; nowS < end; nowS++) {
      samples.add(new TraceSample(nowS, celsius, 46, 40, 0.4, "HOLDING", true));
    }
    log.addTrace(session.id(), samples);
  }

  private void mark(MarkKind kind, double celsius) {
    Moment at = new Moment(nowS, EVENING.plusMillis(Math.round(1000 * nowS)));
    log.mark(kind, session.id(), at, "pedal", OptionalDouble.of(celsius));
  }

  /** Three minutes at 40 °C, faster when hotter, with a hand that is not exact. */
  private double lawS(double celsius) {
    double rate = 1 / (celsius + KELVIN) - 1 / (40 + KELVIN);
    return 180 * Math.exp(ENERGY * 1000 / 8.314462618 * rate);
  }

  private void print(double celsius) {
    bath(celsius, 30);
    mark(MarkKind.IN, celsius);
    double emergenceS = lawS(celsius) * Math.exp(0.05 * random.nextGaussian());
    bath(celsius, Math.rint(emergenceS));
    mark(MarkKind.EMERGENCE, celsius);
    bath(celsius, Math.rint(0.25 * emergenceS));
    mark(MarkKind.PULL, celsius);
    bath(celsius, 20);
  }

  private ForecastDesk desk() {
    return new ForecastDesk(log, Runnable::run);
  }

  private static Outlook followed(ForecastDesk desk, double sessionS, double bathC) {
    desk.follow(sessionS, bathC);
    desk.follow(sessionS, bathC); // what was learned meanwhile is used
    return desk.outlook().orElseThrow();
  }

  private static Forecast.Window window(Forecast forecast) {
    return assertInstanceOf(Forecast.Window.class, forecast, forecast.words());
  }

  @Test
  void withoutPrintsThereIsNoForecast() {
    Outlook outlook = followed(desk(), nowS, 40);
    assertEquals("no forecast: no prints yet", outlook.next().words());
    assertEquals(Optional.empty(), outlook.print());
  }

  @Test
  void aPrintersOwnLawIsFoundAndNoneIsToldBeyondItsTemperatures() {
    for (int i = 0; i < 24; i++) {
      print(38 + i % 5);
    }
    ForecastDesk desk = desk();
    Forecast.Window at39 = window(followed(desk, nowS, 39).next());
    assertEquals(lawS(39), at39.expectedS(), 0.06 * lawS(39));
    assertTrue(at39.eighty().holds(lawS(39)), at39.words());
    assertEquals(24, at39.prints());
    Forecast beyond = followed(desk, nowS, 44).next();
    assertTrue(beyond.words().contains("38.0 to 42.0"), beyond.words());
    assertInstanceOf(Forecast.Refused.class, beyond);
  }

  @Test
  void theWindowMovesWithTheBathAndAfterEmergenceItIsThatOfThePull() {
    for (int i = 0; i < 24; i++) {
      print(38 + i % 5);
    }
    ForecastDesk desk = desk();
    mark(MarkKind.IN, 42);
    double warmS = followed(desk, nowS, 42).elapsedS();
    assertEquals(0, warmS, 1e-9);
    double at42 = window(desk.outlook().orElseThrow().next()).expectedS();
    double inS = nowS;
    bath(42, 30);
    desk.follow(nowS, 42);
    bath(38, 30);
    for (double s = inS + 31; s <= nowS; s++) {
      desk.follow(s, 38);
    }
    Outlook cooled = desk.outlook().orElseThrow();
    double expected = window(cooled.next()).expectedS();
    assertTrue(expected > at42 + 20 && expected < lawS(38), at42 + " then " + expected);
    mark(MarkKind.EMERGENCE, 38);
    desk.follow(nowS, 38);
    Forecast.Window pull = window(desk.outlook().orElseThrow().next());
    assertEquals(Forecast.Moment.PULL, pull.moment());
    assertTrue(pull.expectedS() > nowS - inS, pull.words());
  }

  @Test
  void aRestartInTheMiddleOfAPrintKnowsHowFarItHasCome() {
    for (int i = 0; i < 12; i++) {
      print(40);
    }
    mark(MarkKind.IN, 40);
    double inS = nowS;
    ForecastDesk before = desk();
    before.follow(nowS, 40);
    bath(40, 100);
    for (double s = inS + 1; s < nowS; s++) {
      before.follow(s, 40);
    }
    Outlook was = before.outlook().orElseThrow();
    Outlook is = followed(desk(), nowS - 1, 40);
    assertEquals(was.elapsedS(), is.elapsedS(), 1e-9);
    assertEquals(window(was.next()).expectedS(), window(is.next()).expectedS(), 0.5);
  }

  @Test
  void withThreePrintsOnAPaperOnlyThatPaperCounts() {
    for (int i = 1; i <= 8; i++) {
      print(40);
      String paper = i <= 4 ? "Bark" : "Moss";
      log.record().change(i, Map.of("paper", paper), EVENING);
    }
    Outlook outlook = followed(desk(), nowS, 40);
    assertEquals(Optional.of("Moss"), outlook.paper());
    assertEquals(4, window(outlook.next()).prints());
  }
}
