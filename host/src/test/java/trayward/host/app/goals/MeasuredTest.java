package trayward.host.app.goals;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Spreads and verdicts of figures known by hand. */
class MeasuredTest {

  private static final GoalCase CASE = GoalCase.TWO_PROBES;

  /** Nearest rank (common practice): of ten the ninth and the fifth. */
  @Test
  void worstNinetyPercentAndMedianAreNearestRanks() {
    Measured m = Known.heatUps(1.04, 1.00, 1.09, 1.02, 1.03, 1.05, 1.01, 1.07, 1.06, 1.08);
    Spread spread = m.spread(CASE, Contender.OURS, Measure.HEAT_UP);
    assertEquals(new Spread(1.09, 1.08, 1.04, 3, 0), spread);
  }

  @Test
  void whatNeverArrivesIsTheWorstAndIsCounted() {
    Measured m = Known.heatUps(1, Double.POSITIVE_INFINITY, 2, Double.POSITIVE_INFINITY);
    Spread spread = m.spread(CASE, Contender.OURS, Measure.HEAT_UP);
    assertEquals(Double.POSITIVE_INFINITY, spread.worst());
    assertEquals(2, spread.median());
    assertEquals(2, spread.worstSeed());
    assertEquals(2, spread.never());
  }

  @Test
  void aGoalIsMetByTheWorstTrayOrNotAtAll() {
    assertTrue(Known.heatUps(1.00, 1.05).met(CASE, Measure.HEAT_UP));
    assertEquals(List.of(), Known.heatUps(1.00, 1.05).missed());
    Measured missing = Known.heatUps(1.00, 1.0501, 1.06, Double.POSITIVE_INFINITY);
    assertFalse(missing.met(CASE, Measure.HEAT_UP));
    assertEquals(List.of(new Measured.Missed(CASE, Measure.HEAT_UP, 3)), missing.missed());
  }

  @Test
  void theGoalsAreThoseOfTheTable() {
    // Four cases of six goals, the covered one, and no trip in any of the six.
    assertEquals(4 * 6 + 1 + 6, Measured.goals());
    assertEquals(1.05, CASE.goal(Measure.HEAT_UP).orElseThrow());
    assertEquals(0.01, GoalCase.LEARNED.goal(Measure.STANDING_ERROR).orElseThrow());
    assertEquals(1.30, GoalCase.ONE_PROBE.goal(Measure.POUR).orElseThrow());
    assertEquals(0.25, GoalCase.COVERED.goal(Measure.COVERED).orElseThrow());
    assertTrue(GoalCase.SLOW_RELAY.goal(Measure.HEAT_UP).isEmpty());
  }

  @Test
  void theOthersMeetALearnedTrayAsTheyMeetAnUnknownOne() {
    Spread pid = Known.heatUps(1).spread(GoalCase.LEARNED, Contender.PID, Measure.POUR);
    assertEquals(2.02, pid.worst());
  }
}
