package trayward.host.store;

import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Random;
import trayward.host.bath.BookEntry;
import trayward.host.bath.EntryKind;
import trayward.host.forecast.Forecaster;
import trayward.host.session.MarkKind;
import trayward.host.session.Moment;
import trayward.host.session.Print;
import trayward.host.session.Session;

/**
 * A log of ten years of daily sessions, invented, and what it costs to use: some 20,000 prints and
 * 50 million samples. A measurement, not a test: {@code mvn -q -Pbench -pl host test-compile
 * exec:exec@log}. Two arguments: folder, number of days.
 */
final class TenYears {

  private static final Instant FIRST = Instant.parse("2016-01-04T18:00:00Z");

  /** 3.8 hours of samples a session: 50 million in 3,650 days. */
  private static final int SAMPLES = 13_700;

  private static final String[] PAPERS = {"Bark", "Moss", "Lichen", "Fern matt", "Fern gloss"};
  private static final String[] PLACES = {
    "weir", "quarry", "orchard", "ferry", "kiln", "signal box"
  };

  private final Random random = new Random(9);
  private final TrayLog log;
  private final PrintStream out;

  private TenYears(TrayLog log, PrintStream out) {
    this.log = log;
    this.out = out;
  }

  public static void main(String[] args) throws Exception {
    Path folder = Path.of(args[0]);
    int days = Integer.parseInt(args[1]);
    if (Files.notExists(folder.resolve(LogFile.NAME))) {
      Files.createDirectories(folder);
      try (TrayLog log = LogFile.open(folder)) {
        new TenYears(log, System.out).made(days);
      }
    }
    long size = Files.size(folder.resolve(LogFile.NAME));
    double[] opens = new double[5];
    for (int i = 0; i < opens.length; i++) {
      long from = System.nanoTime();
      try (TrayLog log = LogFile.open(folder)) {
        opens[i] = ms(from);
        if (i == opens.length - 1) {
          told(System.out, "open", opens);
          new TenYears(log, System.out).measured(size);
        }
      }
    }
  }

  private void made(int days) {
    log.connection().raw(handle -> handle.execute("PRAGMA synchronous = OFF"));
    long from = System.nanoTime();
    long before = 0;
    for (int day = 0; day < days; day++) {
      before = session(FIRST.plus(Duration.ofDays(day)), before);
      if (day % 365 == 364) {
        out.printf("year %d made, %.0f s%n", (day + 1) / 365, ms(from) / 1000);
      }
    }
  }

  /** A session with a bath that is half the one before, five or six prints, a top-up each. */
  private long session(Instant wall, long before) {
    Session session = log.startSession(wall, true);
    trace(session.id());
    BathBook.Now now = new BathBook.Now(wall, 0);
    List<BookEntry> parts =
        before == 0
            ? List.of(BookEntry.poured(0, 0, wall, 0, "water", 1000))
            : List.of(
                BookEntry.poured(0, 0, wall, 0, "water", 500),
                BookEntry.poured(0, 0, wall, 0, "x", 400)
                    .as(EntryKind.CARRIED_OVER, OptionalLong.of(before)));
    long bath =
        ((trayward.host.bath.Checked.Good<BathBook.Whole>)
                log.baths().make(now, "evening", 0, "", parts))
            .value()
            .bath()
            .id();
    double s = 600;
    int prints = random.nextInt(100) < 48 ? 6 : 5;
    for (int i = 0; i < prints; i++) {
      double emergenceS = 150 + 60 * random.nextDouble();
      print(session, wall, s, emergenceS);
      s += 2.5 * emergenceS + 600;
      Instant later = wall.plusMillis((long) (1000 * s));
      log.baths()
          .enter(new BathBook.Now(later, s), BookEntry.poured(0, bath, later, s, "water", 40));
    }
    log.endSession(session.id(), wall.plusSeconds(SAMPLES), "off");
    return bath;
  }

  private void trace(long session) {
    log.connection()
        .write(
            handle ->
                handle.execute(
                        """
                    INSERT INTO states (word) SELECT 'HOLDING'
                      WHERE NOT EXISTS (SELECT 1 FROM states WHERE word = 'HOLDING')
                    """)
                    + handle.execute(
                        """
                        INSERT INTO trace
                          WITH RECURSIVE n (i) AS
                            (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < ?)
                          SELECT ?, 1000 * i + 3, 4000 + (i * 7919 + i / 60) % 11 - 5,
                            4620 + (i * 104729) % 31, 4000, 400 + (i * 31) % 60,
                            (SELECT code FROM states WHERE word = 'HOLDING'), 1 FROM n
                        """,
                        SAMPLES, session));
  }

  private void print(Session session, Instant wall, double inS, double emergenceS) {
    long number = 0;
    for (MarkKind kind : MarkKind.values()) {
      double atS =
          inS
              + switch (kind) {
                case IN -> 0;
                case EMERGENCE -> emergenceS;
                case PULL -> 1.3 * emergenceS;
              };
      Moment at = new Moment(atS, wall.plusMillis((long) (1000 * atS)));
      if (log.mark(kind, session.id(), at, "pedal", OptionalDouble.of(40))
          instanceof MarkResult.Marked marked) {
        number = marked.print().number();
      }
    }
    log.record()
        .change(
            number,
            Map.of(
                "title", PLACES[random.nextInt(PLACES.length)] + " " + random.nextInt(1000),
                "notes", "pulled when the shadows closed",
                "paper", PAPERS[random.nextInt(PAPERS.length)],
                "width_mm", "203",
                "height_mm", "254",
                "aperture", "8",
                "base_exposure_s", "20",
                "stops_over", "2.5",
                "verdict_wet", "blotched at the edge"),
            wall);
  }

  private void measured(long size) {
    while (log.record().keepSummaries(1000) > 0) {
      // what the running program does in its pauses
    }
    LogCounts counts = log.counts();
    out.printf(
        "%d sessions, %d prints, %d samples, %d baths; %.1f MB: %.0f kB a print, %.1f bytes a"
            + " sample%n",
        counts.sessions(),
        counts.prints(),
        counts.traceSamples(),
        counts.baths(),
        size / 1e6,
        size / 1e3 / counts.prints(),
        (double) size / counts.traceSamples());
    int prints = (int) counts.prints();
    timed("list of 100", () -> list(PrintQuery.ALL, random.nextInt(Math.max(1, prints - 100))));
    timed("newest 100", () -> list(PrintQuery.ALL, 0));
    timed("search of a word", () -> list(query(PLACES[random.nextInt(6)]), 0));
    timed(
        "search of two words",
        () -> list(query(PLACES[random.nextInt(6)] + " " + random.nextInt(1000)), 0));
    timed("one print with its trace", () -> whole(1 + random.nextInt(prints)));
    timed("100 baths with their books", () -> log.baths().newestFirst(100, 0).size());
    timed("the bath in the tray", () -> log.baths().now().isPresent() ? 1 : 0);
    long from = System.nanoTime();
    var past = log.pastPrints().before(Long.MAX_VALUE, Optional.empty());
    out.printf("temperatures of every print worked out once: %.0f ms%n", ms(from));
    timed("what the forecast learns from", () -> learned(Optional.empty()));
    timed("the same of one paper", () -> learned(Optional.of("Moss")));
    timed("a forecast learned", () -> Forecaster.of(past).prints().size());
  }

  private int learned(Optional<String> paper) {
    return log.pastPrints().before(Long.MAX_VALUE, paper).size();
  }

  private static PrintQuery query(String words) {
    return new PrintQuery(words, Map.of());
  }

  private int list(PrintQuery query, int offset) {
    List<Print> prints = log.archive().find(query, 100, offset);
    return log.archive().summaries(prints).size() + log.archive().fields(prints).size();
  }

  private int whole(long number) {
    Print print = log.print(number).orElseThrow();
    return log.traceOf(print).size()
        + log.archive().entries(number).fields().size()
        + log.archive().summaries(List.of(print)).size();
  }

  private interface Work {
    int done();
  }

  private void timed(String what, Work work) {
    double[] each = new double[50];
    int found = 0;
    for (int i = 0; i < each.length; i++) {
      long from = System.nanoTime();
      found = work.done();
      each[i] = ms(from);
    }
    told(out, what + " (" + found + ")", each);
  }

  private static void told(PrintStream out, String what, double[] each) {
    double first = each[0];
    Arrays.sort(each);
    out.printf(
        "%-40s first %7.1f ms, median %7.1f ms, most %7.1f ms%n",
        what, first, each[each.length / 2], each[each.length - 1]);
  }

  private static double ms(long fromNanos) {
    return (System.nanoTime() - fromNanos) / 1e6;
  }
}
