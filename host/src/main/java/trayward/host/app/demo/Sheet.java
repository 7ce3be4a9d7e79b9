package trayward.host.app.demo;

import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.TreeMap;
import trayward.host.forecast.Features;
import trayward.host.session.MarkKind;
import trayward.host.session.PrintBath;
import trayward.host.session.PrintField;
import trayward.host.store.PrintUpdate;
import trayward.host.store.TrayLog;

/** An invented sheet from in to dry, by the true law. One thread. */
final class Sheet {

  private static final int[][] SIZES_MM = {{178, 240}, {203, 254}, {240, 300}};
  private static final String[] APERTURES = {"5.6", "8", "8", "11"};

  private final TrayLog log;
  private final Tray tray;
  private final Random random;
  private final int evening;

  Sheet(TrayLog log, Tray tray, Random random, int evening) {
    this.log = log;
    this.tray = tray;
    this.random = random;
    this.evening = evening;
  }

  /**
   * One sheet.
   *
   * @param lost whether it is left without a pull
   * @param dried whether it is judged dry too
   */
  void print(boolean lost, boolean dried) {
    TrueLaw law = TrueLaw.CHOSEN;
    double inS = tray.nowS();
    long number = tray.mark(MarkKind.IN, inS).number();
    PrintBath bath = log.baths().atPrint(number).orElseThrow();
    double stops = 1.5 + 0.5 * random.nextInt(6);
    Features features = Features.of(bath.areaM2PerL(), bath.bromideGPerL(), bath.strength(), stops);
    say(number, stops);
    tray.course().sheet();
    double emergenceS = develop(law, features, random.nextInt(12) == 0);
    mark(number, emergenceS, emergenceS - inS);
    double late = law.pullScatter() * random.nextGaussian();
    double pullS = inS + (emergenceS - inS) * law.pullRatio() * Math.exp(late);
    tray.waits(Math.max(10, Math.ceil(pullS - tray.nowS())));
    if (!lost) {
      tray.mark(MarkKind.PULL, tray.nowS());
      after(number, late, dried);
    } else {
      change(number, Map.of("faults", "slipped off the tongs and tore; thrown away"));
    }
    tray.waits(90);
  }

  /** Lets time pass until the first blacks; gives when they came, session seconds. */
  private double develop(TrueLaw law, Features features, boolean hasty) {
    double goal = Math.exp(law.scatter() * random.nextGaussian());
    double done = 0;
    double pace = 0;
    boolean pressed = false;
    while (done < goal) {
      pace = 1 / law.emergenceS(tray.second(), features);
      done += pace;
      if (hasty && !pressed && done > 0.7 * goal) {
        // A finger too early: marked, and taken back.
        pressed = true;
        tray.mark(MarkKind.EMERGENCE, tray.nowS());
        tray.takeBack();
      }
    }
    return tray.nowS() - (done - goal) / pace;
  }

  /** Marks the emergence, now and then late and then put right. */
  private void mark(long number, double emergenceS, double elapsedS) {
    if (random.nextInt(15) == 0) {
      tray.waits(8);
      tray.mark(MarkKind.EMERGENCE, tray.nowS());
      double nowS = tray.nowS() + 1;
      log.record()
          .correctMark(
              number, MarkKind.EMERGENCE, elapsedS, OptionalDouble.of(nowS), tray.wall(nowS));
    } else {
      tray.mark(MarkKind.EMERGENCE, emergenceS);
    }
  }

  private void say(long number, double stops) {
    Scenery.Negative negative = Scenery.negative(random);
    int[] size = SIZES_MM[random.nextInt(SIZES_MM.length)];
    Map<String, String> said = new TreeMap<>();
    said.put(PrintField.TITLE.name(), negative.place());
    said.put(PrintField.NOTES.name(), "Invented: this print was never made.");
    said.put(PrintField.NEGATIVE.word(), negative.name());
    said.put(PrintField.PAPER.word(), Scenery.paper(evening));
    said.put(PrintField.WIDTH_MM.word(), Integer.toString(size[0]));
    said.put(PrintField.HEIGHT_MM.word(), Integer.toString(size[1]));
    said.put(PrintField.APERTURE.word(), APERTURES[random.nextInt(APERTURES.length)]);
    said.put(PrintField.BASE_EXPOSURE_S.word(), Integer.toString(8 + 2 * random.nextInt(6)));
    said.put(PrintField.STOPS_OVER.word(), Double.toString(stops));
    said.put(PrintField.AGITATION.word(), "rocked every 10 s until emergence");
    change(number, said);
  }

  private void after(long number, double late, boolean dried) {
    var record = log.record();
    var wall = tray.wall(tray.nowS() + 60);
    Tray.good(record.addStep(number, "stop", "30", "", "citric acid, 2 %", wall));
    Tray.good(record.addStep(number, "fix", "60", "1+4", "rapid", wall));
    Tray.good(record.addStep(number, "wash", "2400", "", "", wall));
    change(number, Map.of("verdict_wet", Scenery.wet(late)));
    if (dried && random.nextInt(3) > 0) {
      change(number, Map.of("verdict_dry", Scenery.dry(late)));
    }
    if (dried && random.nextInt(8) == 0) {
      Tray.good(record.addStep(number, "tone", "180", "1+15", "selenium, invented", wall));
      Tray.good(record.addStep(number, "wash", "2400", "", "", wall));
    }
    if (random.nextInt(12) == 0) {
      change(number, Map.of("paper_batch", "B-2"));
      change(number, Map.of("paper_batch", "B-3"));
    }
  }

  private void change(long number, Map<String, String> said) {
    PrintUpdate update = log.record().change(number, said, tray.wall(tray.nowS() + 30));
    if (!(update instanceof PrintUpdate.Updated)) {
      throw new IllegalStateException("the invented season was refused: " + update);
    }
  }
}
