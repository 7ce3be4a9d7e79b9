package trayward.controller.regulate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TrayLessonTest {

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
    TrayLesson lesson = lesson(seenL, doubt, setL);
    assertEquals(against, lesson.against());
    assertEquals(words, lesson.words());
    assertEquals(seenL, lesson.litres(), 1e-12);
    assertEquals(seenL * doubt, lesson.litresDoubt(), 1e-12);
  }

  private static TrayLesson lesson(double seenL, double doubt, double setL) {
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
    v[3] = doubt;
    FitJob job =
        new FitJob(
            new WarmUpLog(0).view(),
            Believed.ROOM,
            belief,
            TrayDoubt.DECLARED,
            20,
            20,
            FitPoint.PRIOR);
    TrayRun run = new TrayRun(Believed.rates(), 5, 3, 20, 20);
    return new TrayLesson(
        setL, new FitResult(job, belief, TrayDoubt.of(v), run, 0.03, FitPoint.PRIOR), true);
  }
}
