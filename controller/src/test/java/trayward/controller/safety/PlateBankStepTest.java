package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;

/** Each candidate of the bank by its own equation, and what ends it. */
class PlateBankStepTest {

  private static final TrayModel TRAY = TrayModel.REFERENCE;
  private static final int SIZE = PlateGrid.SIZE;

  /** Heat of which a middling probe has felt {@code middle} and a quick one {@code apart} more. */
  private static HeatLag felt(double middle, double apart) {
    return new HeatLag(apart, middle, 0, 0, 0, 0, 0);
  }

  private static ReadingTrail bath(double celsius, double perS) {
    ReadingTrail trail = ReadingTrail.START;
    for (int i = 0; i < 9; i++) {
      trail = trail.next(new ThermalInput.Sample(celsius + perS * (i - 7), i * 1_000_000_000L));
    }
    return trail;
  }

  /** A bank in which only {@code living} live. */
  private static PlateBank only(double low, double high, int... living) {
    PlateRow start = PlateRow.of(50);
    double[] lows = Row.of(SIZE, Double.POSITIVE_INFINITY).copy();
    double[] highs = Row.of(SIZE, Double.NEGATIVE_INFINITY).copy();
    for (int i : living) {
      lows[i] = low;
      highs[i] = high;
    }
    Row apart = Row.of(PlateGrid.TIMES, 0);
    return new PlateBank(
        TRAY, start, apart, PlateRow.copyOf(lows), PlateRow.copyOf(highs), 1e6, 0, 0);
  }

  private static int at(int t, int g) {
    return t * PlateGrid.LIFTS + g;
  }

  /** Two steps: half of full heat under a bath that rises, then none over one at rest. */
  @Test
  void theCandidatesFollowTheirEquationAndKeepTheOffsetsTheyNeed() {
    PlateBank bank =
        PlateBank.start(TRAY, 50)
            .next(2, felt(0.5, 0.4), bath(40, 0.1), 50.5, RoomModel.REFERENCE)
            .next(3, felt(0.1, -0.2), bath(41, 0), 50, RoomModel.REFERENCE);
    double stirred = 12 * 0.08 * Math.exp(-3 / 40.0);
    int judged = 0;
    for (int i = 0; i < SIZE; i++) {
      if (PlateGrid.possible(i)) {
        double t = PlateGrid.timeS(i / PlateGrid.LIFTS);
        double lift = 250 * PlateGrid.kelvinPerW(i % PlateGrid.LIFTS);
        double loss = 0.5 * PlateGrid.kelvinPerW(i % PlateGrid.LIFTS);
        double one = followed(50, (lift * 0.5 + 40.8 + loss * 20) / (1 + loss), 2, t);
        double two = followed(one, (lift * 0.1 + 41 + loss * 20) / (1 + loss), 3, t);
        double apart1 = followed(0, 0.4, 2, t);
        double apart2 = followed(apart1, -0.2, 3, t);
        double[] first = bounds(50.5, one, 40.8, apart1 * lift, 12 * 0.08, 2, t);
        double[] last = bounds(50, two, 41, apart2 * lift, stirred, 5, t);
        double low1 = Math.max(-1.1, first[0]);
        double high1 = Math.min(1.1, first[1]);
        if (low1 - high1 <= 1) {
          assertEquals(two, bank.plateC().at(i), 1e-6);
          assertEquals(
              Math.max(-1.1, Math.max(low1 - 3 / 1800.0, last[0])), bank.low().at(i), 1e-6);
          assertEquals(
              Math.min(1.1, Math.min(high1 + 3 / 1800.0, last[1])), bank.high().at(i), 1e-6);
          judged++;
        } else {
          assertEquals(one, bank.plateC().at(i), 1e-6, "ended for good");
        }
      } else {
        assertEquals(50, bank.plateC().at(i));
      }
    }
    assertEquals(stirred, bank.stirK(), 1e-6);
    assertEquals(5, bank.ageS());
    assertTrue(judged > 100, judged + " judged");
  }

  private static double followed(double from, double to, double seconds, double timeS) {
    return to + (from - to) * Math.exp(-seconds / timeS);
  }

  private static double[] bounds(
      double read, double plate, double bath, double lag, double stir, double age, double timeS) {
    double doubt = 0.3 + 0.06 * Math.abs(plate - bath) + 0.75 * Math.abs(lag) + stir;
    double share = 1 - Math.exp(-age / timeS);
    return new double[] {(read - plate - doubt) / share, (read - plate + doubt) / share};
  }

  private static PlateBank read(PlateBank bank, double celsius) {
    return bank.next(1, felt(0, 0), bath(50, 0), celsius, RoomModel.REFERENCE);
  }

  @Test
  void theSideOnWhichTheLastEndedIsTold() {
    int one = at(8, 3);
    assertEquals(0, read(only(-1.1, 1.1, one), 51).side());
    assertEquals(1, read(only(-1.1, 1.1, one), 52).side());
    assertEquals(-1, read(only(-1.1, 1.1, one), 48).side());
    PlateBank hot = read(only(-1.1, 1.1, one), 52);
    assertEquals(1, read(hot, 40).side(), "once told it stays so");
    assertEquals(1, read(only(0.2, 0.3, one, at(8, 40)), 54).side());
  }

  @Test
  void anOffsetOutsideOfTheIntervalByMoreThanTheDoubtEndsACandidate() {
    int one = at(0, 0); // the plate that rests nearest to its bath, here of 50 °C as itself
    assertEquals(0, read(only(-0.5, 0.5, one), 50.9).alive());
    assertEquals(1, read(only(-0.5, 0.5, one), 50.7).alive());
    assertEquals(1, read(only(-0.5, 0.5, one), 49.3).alive());
    assertEquals(0, read(only(-0.5, 0.5, one), 49.1).alive());
  }

  @Test
  void aCandidateJustEndedIsTakenBackAsTheTrayMayHaveChanged() {
    PlateBank ended = only(0.25, -0.25, at(8, 3));
    assertEquals(0, ended.alive());
    PlateBank later = ended.next(900, felt(0, 0), bath(50, 0), 50, RoomModel.REFERENCE);
    assertEquals(1, later.alive());
    assertEquals(0, later.side());
    PlateBank long1 = only(0.75, -0.75, at(8, 3));
    assertEquals(0, long1.next(9000, felt(0, 0), bath(50, 0), 50, RoomModel.REFERENCE).alive());
  }

  @Test
  void coolingAndCouplingAreThoseOfTheLiving() {
    PlateBank two = only(-1, 1, at(3, 20), at(9, 10));
    assertEquals(2 / (PlateGrid.timeS(3) + PlateGrid.timeS(9)), two.coolingPerS(), 1e-12);
    assertEquals(0.65 / PlateGrid.kelvinPerW(20), two.leastWPerK(), 1e-12);
    assertEquals(4, only(-1, 1, at(3, PlateGrid.LIFTS - 1)).leastWPerK(), "no tray has less");
    assertEquals(0.65 / PlateGrid.kelvinPerW(0), only(-1, 1, at(15, 0)).leastWPerK(), 1e-12);
    assertEquals(4, only(-1, 1).leastWPerK());
    assertEquals(0, only(-1, 1).coolingPerS());
    assertEquals(1, only(0.5, 0.5, at(2, 2)).alive(), "a single offset is enough");
    assertEquals(1 / PlateGrid.timeS(2), only(0.5, 0.5, at(2, 2)).coolingPerS(), 1e-12);
  }

  @Test
  void aTieIsTakenForTooHotAndASingleOffsetHasAVote() {
    int rests = at(0, 0);
    int rises = at(0, PlateGrid.LIFTS - 1);
    PlateBank both = only(-1, 1, rests, rises);
    PlateBank tie = both.next(1, felt(1, 0), bath(50, 0), 55, RoomModel.REFERENCE);
    assertEquals(0, tie.alive());
    assertEquals(1, tie.side());
    assertEquals(-1, read(only(0.5, 0.5, rests), 40).side());
    PlateBank same = only(0.5, 0.5, rests);
    assertEquals(0, same.next(0, felt(0, 0), bath(50, 0), 50.5, RoomModel.REFERENCE).side());
    PlateBank edge = only(0.5, -0.5, rests);
    assertEquals(1, edge.next(1000, felt(0, 0), bath(50, 0), 50, RoomModel.REFERENCE).alive());
  }
}
