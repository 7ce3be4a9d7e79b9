package trayward.host.store;

import static trayward.host.store.LogScenes.EVENING;

import java.io.ByteArrayInputStream;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Random;
import trayward.host.bath.BookEntry;
import trayward.host.bath.Checked;
import trayward.host.bath.EntryKind;
import trayward.host.session.MarkKind;
import trayward.host.session.Moment;
import trayward.host.session.Session;
import trayward.host.session.ShelfKind;
import trayward.host.session.TraceSample;

/** A log made by the store's own calls out of a seed, with texts of every sort. */
final class RandomLog {

  private static final List<String> TEXTS =
      List.of(
          "plain",
          "with, comma",
          "with \"quotes\"",
          "two\nlines",
          "carriage\r\nreturn",
          "=1+2",
          "<script>alert(1)</script>",
          "Größe 日本 😀",
          "'; DROP TABLE prints; --",
          "\t tab ",
          "a,\"b\"\n,");

  private final TrayLog log;
  private final Random random;
  private long bath;

  private RandomLog(TrayLog log, long seed) {
    this.log = log;
    this.random = new Random(seed);
  }

  /** So many sessions of two or three prints. */
  static void make(Path folder, long seed, int sessions) throws Exception {
    try (TrayLog log = LogFile.open(folder)) {
      RandomLog made = new RandomLog(log, seed);
      good(
          log.shelf()
              .add(EVENING, ShelfKind.CONCENTRATE, "A \"strong\"", Map.of("bromide_g_per_l", "3")));
      var gone = good(log.shelf().add(EVENING, ShelfKind.PAPER, "Bark, matt", Map.of()));
      good(log.shelf().takeOff(EVENING, gone.id()));
      for (int i = 0; i < sessions; i++) {
        made.session(EVENING.plusSeconds(86_400L * i), i == sessions - 1 && seed % 2 == 0);
      }
    }
  }

  private String text() {
    return TEXTS.get(random.nextInt(TEXTS.size()));
  }

  private void session(Instant from, boolean open) throws Exception {
    Session session = log.startSession(from, true);
    log.addTrace(session.id(), trace());
    bath(from);
    double s = 60;
    int prints = 2 + random.nextInt(2);
    for (int i = 0; i < prints; i++) {
      s = print(session, from, s) + 20;
    }
    log.addEvent(OptionalLong.of(session.id()), from, 1.5, "STATE", "off", text());
    good(log.record().setSymptoms(session.id(), text(), from.plusSeconds(700)));
    if (!open) {
      log.endSession(session.id(), from.plusSeconds(1000), "off");
    }
  }

  private List<TraceSample> trace() {
    return java.util.stream.IntStream.range(0, 900)
        .mapToObj(
            i ->
                new TraceSample(
                    i + 0.003,
                    random.nextInt(20) == 0 ? Double.NaN : 40 + random.nextGaussian(),
                    46,
                    40,
                    random.nextDouble(),
                    random.nextInt(9) == 0 ? "a,\"b\"" : "HOLDING",
                    random.nextBoolean()))
        .toList();
  }

  private void bath(Instant at) {
    var now = new BathBook.Now(at, 10);
    List<BookEntry> parts =
        bath == 0
            ? List.of(BookEntry.poured(0, 0, at, 10, "water", 900))
            : List.of(
                BookEntry.poured(0, 0, at, 10, "water", 600.25),
                BookEntry.poured(0, 0, at, 10, "x", 200 + random.nextInt(50))
                    .as(EntryKind.CARRIED_OVER, OptionalLong.of(bath)));
    bath = good(log.baths().make(now, text(), 0, text(), parts)).bath().id();
    BookEntry a = good(enter(at, 20, "A \"strong\"", 40 + random.nextDouble()));
    good(enter(at, 21, "water", 33));
    if (random.nextBoolean()) {
      good(log.baths().takeBack(new BathBook.Now(at.plusSeconds(30), 30), bath, a.id()));
    }
  }

  private Checked<BookEntry> enter(Instant from, int s, String what, double ml) {
    Instant at = from.plusSeconds(s);
    BookEntry entry = BookEntry.poured(0, bath, at, s, what, ml).with("", OptionalDouble.of(20));
    return log.baths().enter(new BathBook.Now(at, s), entry);
  }

  private void mark(MarkKind kind, Session session, Instant from, double s) {
    Instant wall = from.plusMillis(Math.round(1000 * s));
    log.mark(kind, session.id(), new Moment(s, wall), "pedal", OptionalDouble.of(40.06));
  }

  private double print(Session session, Instant from, double s) throws Exception {
    double end = s + 150 + random.nextInt(40);
    Instant wall = from.plusMillis(Math.round(1000 * end));
    mark(MarkKind.IN, session, from, s);
    if (random.nextInt(5) == 0) {
      log.undoLastMark(session.id(), wall);
      mark(MarkKind.IN, session, from, s + 2);
    }
    mark(MarkKind.EMERGENCE, session, from, s + 50 + random.nextDouble());
    if (random.nextInt(4) > 0) {
      mark(MarkKind.PULL, session, from, end);
    }
    long number = log.latestPrint(session.id()).orElseThrow().number();
    log.record()
        .change(
            number,
            Map.of("title", text(), "notes", text(), "paper", text(), "width_mm", "200.5"),
            wall);
    log.record().change(number, Map.of("height_mm", "250", "title", text()), wall);
    log.record().addStep(number, "stop", "30", "1+4", text(), wall);
    log.record().addStep(number, "fix", "60.5", "", text(), wall);
    log.record().takeBackStep(number, 1, wall);
    log.record()
        .correctMark(
            number, MarkKind.EMERGENCE, 40 + random.nextInt(20), OptionalDouble.of(end), wall);
    if (number % 3 == 1) {
      byte[] jpeg = PictureScenes.jpeg(40 + random.nextInt(9), 30);
      var picture = good(log.pictures().add(number, new ByteArrayInputStream(jpeg), wall));
      if (random.nextInt(3) == 0) {
        log.pictures().takeBack(picture.id(), wall);
      }
    }
    return end;
  }

  static <T> T good(Checked<T> checked) {
    if (checked instanceof Checked.Good<T> good) {
      return good.value();
    }
    throw new AssertionError(checked.toString());
  }
}
