package trayward.controller.regulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** When a warm-up is taken down and fitted, and what is made of a fit. */
class WarmUpTutorTest {

  /** Fits by hand. */
  private static final class Hand implements Fits {
    final List<FitJob> asked = new ArrayList<>();
    boolean busy;
    @Nullable FitResult next;

    @Override
    public boolean ask(FitJob job) {
      asked.add(job);
      return !busy;
    }

    @Override
    public @Nullable FitResult take() {
      FitResult result = next;
      next = null;
      return result;
    }

    /** The answer to the last that was asked. */
    FitResult answer(double rmsK) {
      FitJob job = asked.get(asked.size() - 1);
      TrayRun run = new TrayRun(Believed.rates(), 5, 3, 20, 20);
      next = new FitResult(job, Believed.REFERENCE, TrayDoubt.LEARNED, run, rmsK, FitPoint.PRIOR);
      return next;
    }
  }

  private final Hand fits = new Hand();
  private final WarmUpTutor tutor =
      new WarmUpTutor(Believed.REFERENCE, TrayDoubt.DECLARED, Believed.ROOM, fits);
  private int second;

  private static RegulatorInput in(int second, double setC, boolean allowed) {
    long at = second * 1_000_000_000L;
    return new RegulatorInput(1, setC, 20, at, 20, at, allowed, true, at);
  }

  private static TrayObserver bathAt(double bathC) {
    return new TrayObserver(Believed.REFERENCE, Believed.ROOM, bathC, bathC);
  }

  private void begin() {
    tutor.begin(in(0, 40, true), bathAt(20));
  }

  private void go(int seconds, TrayPhase phase) {
    for (int end = second + seconds; second < end; second++) {
      tutor.see(in(second, 40, true), true, true);
      tutor.ask(phase);
    }
  }

  @ParameterizedTest(name = "set {0}, bath {1}, heat allowed {2}: {3}")
  @CsvSource({
    "40, 20, true, true", "40, 36.9, true, true", "40, 37, true, false",
    "40, 40, true, false", "40, 20, false, false", "20, 40, true, false"
  })
  void aLessonBeginsOnlyWhereHeatIsAllowedAndTheWayIsFar(
      double setC, double bathC, boolean allowed, boolean begins) {
    tutor.begin(in(0, setC, allowed), bathAt(bathC));
    assertEquals(begins, tutor.learning());
  }

  @Test
  void fitsAreAskedForFromHalfAMinuteOnEveryEightSecondsOfFullHeat() {
    begin();
    go(29, TrayPhase.FULL);
    assertEquals(0, fits.asked.size());
    go(1, TrayPhase.FULL);
    assertEquals(1, fits.asked.size());
    go(7, TrayPhase.FULL);
    assertEquals(1, fits.asked.size());
    go(1, TrayPhase.FULL);
    assertEquals(2, fits.asked.size());
    go(40, TrayPhase.COAST);
    assertEquals(2, fits.asked.size());
    assertEquals(38, fits.asked.get(1).view().seconds());
    assertEquals(38, fits.asked.get(1).view().bathCount());
    assertEquals(38, fits.asked.get(1).view().plateCount());
  }

  @Test
  void theLastFitComesFiveMinutesAfterTheBathHasArrivedAndEndsTheLesson() {
    begin();
    go(100, TrayPhase.FULL);
    int before = fits.asked.size();
    go(300, TrayPhase.HOLD);
    assertEquals(before, fits.asked.size());
    go(1, TrayPhase.HOLD);
    assertEquals(before + 1, fits.asked.size());
    go(50, TrayPhase.HOLD);
    assertEquals(before + 1, fits.asked.size(), "once");
    FitResult last = fits.answer(0.03);
    assertSame(last, tutor.take());
    assertFalse(tutor.learning());
    TrayLesson lesson = tutor.lesson();
    assertNotNull(lesson);
    assertTrue(lesson.complete());
    begin();
    assertFalse(tutor.learning(), "one warm-up a run");
  }

  @Test
  void theLastFitIsAskedForAgainWhereTheFirstAskWasRefused() {
    begin();
    go(100, TrayPhase.FULL);
    fits.busy = true;
    go(302, TrayPhase.HOLD);
    int refused = fits.asked.size();
    go(3, TrayPhase.HOLD);
    assertEquals(refused + 3, fits.asked.size());
    fits.busy = false;
    go(3, TrayPhase.HOLD);
    assertEquals(refused + 4, fits.asked.size());
  }

  /** What was heated while a fit was under way is run after it: a second of full heat each. */
  @Test
  void aFitIsBroughtUpToNow() {
    begin();
    go(30, TrayPhase.FULL);
    FitResult found = fits.answer(0.03);
    go(5, TrayPhase.COAST);
    double before = found.run().plateC;
    assertSame(found, tutor.take());
    TrayRun ahead = new TrayRun(Believed.rates(), 5, 3, before, 20);
    for (int i = 0; i < 5; i++) {
      ahead.second(1);
    }
    assertEquals(ahead.plateC, found.run().plateC, 1e-9);
    TrayLesson lesson = tutor.lesson();
    assertNotNull(lesson);
    assertFalse(lesson.complete());
    assertEquals(1, lesson.declaredL(), 0);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.5, 2, Double.NaN, Double.POSITIVE_INFINITY})
  void aFitThatMissesItsReadingsLeavesTheLastGoodOne(double rmsK) {
    begin();
    go(30, TrayPhase.FULL);
    FitResult good = fits.answer(0.49);
    assertSame(good, tutor.take());
    go(8, TrayPhase.FULL);
    FitResult bad = fits.answer(rmsK);
    assertNull(tutor.take());
    TrayLesson lesson = tutor.lesson();
    assertNotNull(lesson);
    assertSame(good, lesson.found());
    assertSame(bad.job(), fits.asked.get(1));
  }

  @Test
  void afterAPourNothingMoreIsLearnedAndALateFitIsNotActedUpon() {
    begin();
    go(30, TrayPhase.FULL);
    fits.answer(0.03);
    tutor.disturbed();
    assertNull(tutor.take());
    assertNull(tutor.lesson());
    begin();
    assertFalse(tutor.learning());
    go(60, TrayPhase.FULL);
    assertEquals(1, fits.asked.size());
  }

  @Test
  void aDisturbanceBeforeAnyLessonForbidsNone() {
    tutor.disturbed();
    begin();
    assertTrue(tutor.learning());
  }

  @Test
  void aFitOfAnotherLogIsNotActedUpon() {
    begin();
    go(30, TrayPhase.FULL);
    FitJob job = fits.asked.get(0);
    FitJob other =
        new FitJob(
            new WarmUpLog(0).view(), job.room(), job.prior(), job.doubt(), 20, 20, job.from());
    fits.asked.add(other);
    fits.answer(0.03);
    assertNull(tutor.take());
  }

  @Test
  void aWarmUpOfThreeHoursIsGivenUp() {
    begin();
    go(WarmUpLog.MAX_S, TrayPhase.COAST);
    assertFalse(tutor.learning());
  }
}
