package trayward.controller.scan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Buzzer and lamp are told apart by rhythm alone, and flash no more than eyes stand. */
class RhythmTest {

  private static final int TENTH = 100;

  /** A minute of a rhythm, a character for each scan. */
  private static String minute(Rhythm rhythm) {
    StringBuilder out = new StringBuilder();
    for (int ms = 0; ms < 60_000; ms += TENTH) {
      out.append(rhythm.on(ms) ? '#' : '.');
    }
    return out.toString();
  }

  @Test
  void eachBeginsAtOnceAndNoTwoAreAlike() {
    Set<String> seen = new HashSet<>();
    for (Rhythm rhythm : Rhythm.values()) {
      assertTrue(rhythm.on(0), "the scan that brings it shows it: " + rhythm);
      assertTrue(seen.add(minute(rhythm)), rhythm.toString());
    }
  }

  /** WCAG 2.2, 2.3.1: no more than three flashes within any second. Two here. */
  @Test
  void noneFlashesMoreThanTwiceInAnySecond() {
    for (Rhythm rhythm : Rhythm.values()) {
      String minute = minute(rhythm);
      for (int from = 0; from + 10 <= minute.length(); from++) {
        String second = minute.substring(from, from + 10);
        long rises = 0;
        for (int i = 1; i < second.length(); i++) {
          rises += second.charAt(i) == '#' && second.charAt(i - 1) == '.' ? 1 : 0;
        }
        assertTrue(rises <= 2, rhythm + " " + second);
      }
    }
  }

  @Test
  void anAlarmAndPresenceGoOnAndWhatIsAskedForEnds() {
    assertEquals("###..###..", minute(Rhythm.ALARM).substring(590));
    assertEquals("##...##...", minute(Rhythm.PRESENCE_DUE).substring(560, 570));
    assertEquals(
        "###############.....###############.....", minute(Rhythm.WATCH_NOW).substring(0, 40));
    for (Rhythm asked : new Rhythm[] {Rhythm.WATCH_NOW, Rhythm.MARKED, Rhythm.TAKEN_BACK}) {
      assertTrue(asked.lastsMs() > 0 && asked.lastsMs() <= 10_000);
      assertTrue(asked.over(asked.lastsMs()) && !asked.over(asked.lastsMs() - 1));
      assertFalse(minute(asked).substring(asked.lastsMs() / TENTH).contains("#"));
    }
    assertEquals("##..", minute(Rhythm.MARKED).substring(0, 4));
    assertEquals("########..", minute(Rhythm.TAKEN_BACK).substring(0, 10));
  }

  @Test
  void alarmsOutrankPresenceAndPresenceWhateverIsAskedFor() {
    assertEquals(Rhythm.ALARM, Rhythm.first(Rhythm.PRESENCE_DUE, Rhythm.ALARM));
    assertEquals(Rhythm.PRESENCE_DUE, Rhythm.first(Rhythm.PRESENCE_DUE, Rhythm.WATCH_NOW));
    assertEquals(Rhythm.MARKED, Rhythm.first(null, Rhythm.MARKED));
    assertEquals(Rhythm.ALARM, Rhythm.first(Rhythm.ALARM, null));
  }
}
