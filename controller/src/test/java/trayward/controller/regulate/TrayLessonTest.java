package trayward.controller.regulate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TrayLessonTest {

  /** Doubt of a heater whose watts are as good as known. */
  private static final double MEASURED = 1e-3;

  /** Told only beyond 8 % and beyond two standard deviations. */
  @ParameterizedTest(name = "{0} L seen within {1}, {2} L set: {3}")
  @CsvSource({
    "1.0, 0.02, 1.0, 0, 'about 1.0 L, as set'",
    "1.08, 0.02, 1.0, 0, 'about 1.1 L, as set'",
    "1.09, 0.02, 1.0, 1, 'about 1.1 L, more liquid than set'",
    "0.92, 0.02, 1.0, -1, 'about 0.9 L, less liquid than set'",
    "0.93, 0.02, 1.0, 0, 'about 0.9 L, as set'",
    "1.15, 0.08, 1.0, 0, 'about 1.2 L, as set'",
    "1.18, 0.08, 1.0, 1, 'about 1.2 L, more liquid than set'",
    "1.4, 0.05, 2.0, -1, 'about 1.4 L, less liquid than set'",
  })
  void aPersonIsToldOfLiquidThatIsSurelyOtherThanSet(
      double seenL, double doubt, double setL, int against, String words) {
    TrayLesson lesson = lesson(seenL, doubt, setL, MEASURED);
    assertEquals(against, lesson.against());
    assertEquals(words, lesson.words());
    assertEquals(seenL, lesson.litres(), 1e-12);
    assertEquals(seenL * doubt, lesson.litresDoubt(), 1e-12);
  }

  /** Watts known to 8 % and litres to 8 % leave each other 0.08/sqrt(2), whatever a fit says. */
  @Test
  void littleIsSureOfLitresWhereTheWattsAreOnlyDeclared() {
    TrayLesson lesson = lesson(1.09, 0.02, 1.0, TrayDoubt.DECLARED.heater());
    assertEquals(1.09 * 0.08 / Math.sqrt(2), lesson.litresDoubt(), 1e-12);
    assertEquals(0, lesson.against());
    assertEquals(1, lesson(1.13, 0.02, 1.0, TrayDoubt.DECLARED.heater()).against());
  }

  private static TrayLesson lesson(double seenL, double doubt, double setL, double heater) {
    TrayModel m = TrayModel.REFERENCE;
    TrayBelief belief =
        TrayBelief.declared(
            new TrayModel(
                seenL,
                m.areaM2(),
                m.plateJPerK(),
                m.plateToBathWPerK(),
                m.bathLossWPerK(),
                m.plateLossWPerK(),
                m.heaterW(),
                m.evaporationFactor()));
    double[] v = TrayDoubt.DECLARED.vector();
    v[0] = heater;
    TrayDoubt before = TrayDoubt.of(v);
    v[3] = doubt;
    FitJob job =
        new FitJob(new WarmUpLog(0).view(), Believed.ROOM, belief, before, 20, 20, FitPoint.PRIOR);
    TrayRun run = new TrayRun(Believed.rates(), 5, 3, 20, 20);
    return new TrayLesson(
        setL, new FitResult(job, belief, TrayDoubt.of(v), run, 0.03, FitPoint.PRIOR), true);
  }
}
