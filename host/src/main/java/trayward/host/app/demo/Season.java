package trayward.host.app.demo;

import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Random;
import trayward.host.bath.BookEntry;
import trayward.host.bath.Checked;
import trayward.host.session.ShelfKind;
import trayward.host.store.BathBook;
import trayward.host.store.LogReader;
import trayward.host.store.TrayLog;

/**
 * Writes an invented season into an empty log: evenings over some weeks, baths that go on in one
 * another, prints that follow {@link TrueLaw}. The same seed writes the same. One thread.
 */
public final class Season {

  /** How its sessions ended; by this a log is known as invented. */
  public static final String ENDING = LogReader.INVENTED;

  /** The seed of the season that {@code run --demo} shows. */
  public static final long SEED = 7;

  private static final Instant FIRST = Instant.parse("2025-01-10T18:30:00Z");

  /** Evenings of 3 to 6 prints: 42 to 84 are possible, some sixty are likely. */
  private static final int EVENINGS = 14;

  private static final int[] PARTS_WATER = {20, 24, 20, 30, 16};

  private final TrayLog log;
  private final Random random;

  private Season(TrayLog log, long seed) {
    this.log = log;
    this.random = new Random(seed);
  }

  /** Writes it. */
  public static void write(TrayLog log, long seed) {
    new Season(log, seed).written();
  }

  private void written() {
    shelf();
    Instant wall = FIRST;
    for (int evening = 0; evening < EVENINGS; evening++) {
      Tray tray = new Tray(log, wall, random, 32 + 1.5 * random.nextInt(8));
      bath(tray, evening);
      tray.waits(2100);
      int prints = 3 + random.nextInt(4);
      Sheet sheet = new Sheet(log, tray, random, evening);
      for (int i = 0; i < prints; i++) {
        sheet.print(evening == 4 && i == 1, evening < EVENINGS - 1);
        tray.waits(120 + random.nextInt(300));
        tend(tray, i);
      }
      tray.end();
      String felt = Scenery.symptoms(random);
      if (!felt.isEmpty()) {
        Tray.good(
            log.record().setSymptoms(tray.session().id(), felt, tray.wall(tray.nowS() + 600)));
      }
      wall = wall.plus(Duration.ofDays(2 + random.nextInt(4))).plusSeconds(random.nextInt(1800));
    }
  }

  private void shelf() {
    var shelf = log.shelf();
    for (String paper : Scenery.PAPERS) {
      Tray.good(
          shelf.add(FIRST, ShelfKind.PAPER, paper, Map.of("note", "Invented: nobody makes it.")));
    }
    Tray.good(
        shelf.add(
            FIRST,
            ShelfKind.CONCENTRATE,
            Scenery.PART_A,
            Map.of(
                "bromide_g_per_l", "6",
                "bromide_doubt_g_per_l", "1.5",
                "sulfite_g_per_l", "90",
                "sulfite_doubt_g_per_l", "15",
                "note", "Invented.")));
    Tray.good(shelf.add(FIRST, ShelfKind.CONCENTRATE, Scenery.PART_B, Map.of("note", "Invented.")));
    Tray.good(
        shelf.add(
            FIRST,
            ShelfKind.MAKE_UP,
            "Sedgewater, usual",
            Map.of(
                "litres", "1",
                "concentrates", Scenery.PART_A + ", " + Scenery.PART_B,
                "dilution", "1+1+20",
                "note", "Invented.")));
  }

  /** A fresh bath now and then; else a part of the one before goes on in it. */
  private void bath(Tray tray, int evening) {
    boolean fresh = evening % 5 == 0;
    tray.make(
        "Evening " + (evening + 1),
        PARTS_WATER[random.nextInt(PARTS_WATER.length)],
        fresh ? 0 : 150 + 25 * random.nextInt(9),
        fresh || random.nextInt(3) == 0 ? 3 + random.nextInt(8) : 0);
  }

  /** Water for what vapour and sheets took; bromide when blotches threaten; once a slip. */
  private void tend(Tray tray, int print) {
    var water = tray.pour("water", 25 + 5 * random.nextInt(5));
    if (random.nextInt(4) == 0) {
      tray.pour("bromide 10 %", 2 + random.nextInt(5));
    }
    if (print == 3) {
      tray.pour(Scenery.PART_A, 6);
      tray.pour(Scenery.PART_B, 6);
    }
    if (random.nextInt(15) == 0) {
      var now = new BathBook.Now(tray.wall(tray.nowS() + 5), tray.nowS() + 5);
      Tray.good(
          log.baths()
              .correct(
                  now,
                  tray.bath(),
                  water.id(),
                  was ->
                      new Checked.Good<>(
                          BookEntry.poured(
                              was.id(),
                              was.bathId(),
                              was.wall(),
                              was.sessionS(),
                              was.what(),
                              was.millilitres() + 10))));
    }
  }
}
