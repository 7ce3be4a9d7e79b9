package trayward.controller.sense;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import trayward.controller.sense.Presence.News;

/** A lost probe is told once, a found one once, and a loose contact does not fill the log. */
class PresenceTest {

  private static final long SECOND = 1_000_000_000L;

  private Presence presence = Presence.START;

  private News after(boolean answers, double seconds) {
    presence = presence.next(answers, (long) (seconds * SECOND));
    return presence.news();
  }

  @Test
  void aProbeThatAnswersIsNoNews() {
    assertEquals(News.NONE, after(true, 0));
    assertEquals(News.NONE, after(true, 1));
  }

  @Test
  void aSilenceOfThreeSecondsIsALossToldOnce() {
    assertEquals(News.NONE, after(true, 10));
    assertEquals(News.NONE, after(false, 11));
    assertEquals(News.NONE, after(false, 13.9));
    assertEquals(News.LOST, after(false, 14));
    assertEquals(News.NONE, after(false, 15));
    assertEquals(News.NONE, after(false, 900));
    assertEquals(News.FOUND, after(true, 901));
    assertEquals(News.NONE, after(true, 902));
  }

  @Test
  void aSingleMissIsNeitherLostNorFound() {
    after(true, 0);
    assertEquals(News.NONE, after(false, 1));
    assertEquals(News.NONE, after(true, 2));
    assertEquals(News.NONE, after(false, 3));
    assertEquals(News.NONE, after(false, 5.9));
  }

  @Test
  void aProbeThatNeverAnsweredIsToldToo() {
    assertEquals(News.NONE, after(false, -5));
    assertEquals(News.LOST, after(false, -2));
  }

  @Test
  void aLooseContactMakesOnePairOfLinesAMinute() {
    int lines = 0;
    for (int s = 0; s < 600; s++) {
      boolean answers = s % 5 == 0;
      lines += after(answers, s) == News.NONE ? 0 : 1;
    }
    assertEquals(20, lines);
  }

  @Test
  void aLossWithinTheMinuteIsToldWhenTheMinuteIsOver() {
    after(false, 0);
    assertEquals(News.LOST, after(false, 3));
    assertEquals(News.FOUND, after(true, 4));
    assertEquals(News.NONE, after(false, 5));
    assertEquals(News.NONE, after(false, 62.9));
    assertEquals(News.LOST, after(false, 63));
  }
}
