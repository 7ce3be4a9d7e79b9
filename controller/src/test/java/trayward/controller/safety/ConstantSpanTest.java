package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;

/** A value that stands, and what was given meanwhile. */
class ConstantSpanTest {

  private static ConstantSpan aged(double ageS, double usualS) {
    return new ConstantSpan(40, ageS, 0, 0, usualS, 0, 0, 0, 1, Row.of(64, 0), 1, 0);
  }

  @Test
  void nothingReadIsNoSpan() {
    assertSame(ConstantSpan.START, aged(10, 1).next(Double.NaN, 1, 5, true));
  }

  @Test
  void theFirstValueBeginsWithoutHistory() {
    ConstantSpan first = ConstantSpan.START.next(40, 2, 7, true);
    assertEquals(new ConstantSpan(40, 0, 0, 1, 0, 0, 0, 0, 1, Row.of(64, 0), 1, 0), first);
    assertEquals(0, ConstantSpan.START.next(40, 2, 7, false).dutyBefore());
  }

  @Test
  void aValueThatStaysAgesAndSumsWhatIsGiven() {
    ConstantSpan span = aged(0, 3).next(40, 2, 7, true);
    assertEquals(2, span.ageS());
    assertEquals(14, span.sum());
    assertEquals(2, span.dutyS());
    assertEquals(1, span.duty());
    ConstantSpan on = span.next(40, 2, 1, false);
    assertEquals(4, on.ageS());
    assertEquals(16, on.sum());
    assertEquals(0.5, on.duty());
    assertEquals(3, on.usualS());
    assertEquals(1e6, aged(1e6, 3).next(40, 1, 0, false).ageS(), "saturates");
    assertEquals(0, aged(0, 3).duty(), "no time, no duty");
  }

  @Test
  void aNewValueRemembersTheCourseBefore() {
    ConstantSpan span = aged(0, 3).next(40, 2, 7, true).next(40, 2, 7, false);
    ConstantSpan now = span.next(40.5, 1, 7, true);
    double share = 1 - Math.exp(-5 / 30.0);
    assertEquals(share * 0.1, now.slope(), 1e-12);
    assertEquals(share * 3 / 5, now.dutyBefore(), 1e-12);
    assertEquals(3 + 0.1 * (5 - 3), now.usualS(), 1e-12);
    assertEquals(0, now.ageS());
    assertEquals(0, now.dutyS());
    assertEquals(0, now.sum());
    ConstantSpan then = now.next(40.25, 5, 7, false);
    assertEquals(now.slope() + share * (-0.05 - now.slope()), then.slope(), 1e-12);
    assertEquals(now.dutyBefore() * (1 - share), then.dutyBefore(), 1e-12);
  }

  @Test
  void theScanThatBringsTheNewValueCountsAsHeatBefore() {
    ConstantSpan now = aged(2, 3).next(41, 2, 0, true);
    assertEquals((1 - Math.exp(-4 / 30.0)) * 0.5, now.dutyBefore(), 1e-12);
  }

  @Test
  void anEntryIsKeptAtEveryWholeStep() {
    ConstantSpan span = aged(0, 1).next(40, 0.5, 4, false);
    assertEquals(1, span.entries());
    span = span.next(40, 0.5, 4, false);
    assertEquals(2, span.entries());
    assertEquals(4, span.sums().at(1));
  }

  /** Given g(t) = t, the integral over the second half exceeds that over the first by T²/4. */
  @Test
  void theSecondHalfOfALongSpanIsComparedWithTheFirst() {
    for (int seconds : new int[] {20, 40, 62, 100, 200, 400}) {
      ConstantSpan span = aged(0, 1);
      for (int s = 0; s < seconds; s++) {
        span = span.next(40, 1, s + 0.5, false);
      }
      double judgedS = span.stepS() * ((span.entries() - 1) / 2 * 2);
      assertEquals(judgedS * judgedS / 4, span.more(), 1e-6, seconds + " s");
      assertEquals(seconds, judgedS, 2 * span.stepS(), "nearly all of it");
      assertEquals(seconds < 64 ? 1 : seconds < 128 ? 2 : seconds < 256 ? 4 : 8, span.stepS());
    }
  }

  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void aSpanFarLongerThanTheProbesHabitOutlastsIt() {
    assertEquals(true, aged(50, 1).outlasts());
    assertEquals(true, aged(80, 10).outlasts());
  }

  @Test
  @Verifies(value = "SR-08", side = Side.ALLOWS)
  void aShortSpanOrAnUnknownHabitDoesNot() {
    assertEquals(false, aged(49.9, 1).outlasts());
    assertEquals(false, aged(80, 10.1).outlasts());
    assertEquals(false, aged(80, 0).outlasts());
  }

  private static ConstantSpan stood(double celsius, double slope, double flips) {
    return new ConstantSpan(celsius, 80, slope, 0, 1, 0, flips, 0, 1, Row.of(64, 0), 1, 0);
  }

  /** Rooms go to 30 °C; what comes to rest in their air within 100 s steps on from 0.003 K/s. */
  @Test
  @Verifies(value = "SR-08", side = Side.ALLOWS)
  void aQuietProbeThatCameToRestInRoomAirIsNotFrozenByItsHabit() {
    assertEquals(false, stood(31.9, 0.0029, 0.24).outlasts());
    assertEquals(true, stood(32, 0, 0).outlasts());
    assertEquals(true, stood(20, 0.003, 0).outlasts());
    assertEquals(true, stood(20, -0.003, 0).outlasts());
    assertEquals(true, stood(20, 0, 0.25).outlasts());
  }

  @Test
  void aFirstChangeTakesNothingBack() {
    ConstantSpan first = ConstantSpan.START.next(40, 1, 0, false);
    assertEquals(0, first.next(39.5, 1, 0, false).flips());
    assertEquals(0, first.next(40.5, 1, 0, false).flips());
  }

  @Test
  void changesThatTakeBackTheOneBeforeAreCountedAsNoise() {
    ConstantSpan up = ConstantSpan.START.next(40, 1, 0, false).next(40.5, 1, 0, false);
    assertEquals(0.5, up.lastK());
    assertEquals(0, up.flips());
    ConstantSpan on = up.next(40.75, 1, 0, false);
    assertEquals(0, on.flips());
    assertEquals(0.25, on.next(40.75, 1, 0, false).lastK());
    ConstantSpan back = on.next(40.5, 1, 0, false);
    assertEquals(0.1, back.flips(), 1e-12);
    assertEquals(0.19, back.next(40.75, 1, 0, false).flips(), 1e-12);
    assertEquals(0.09, back.next(40.25, 1, 0, false).flips(), 1e-12);
    ConstantSpan held = back;
    for (int s = 0; s < 70; s++) {
      held = held.next(40.5, 1, 0, false);
    }
    assertEquals(0.1, held.flips(), 1e-12);
    assertEquals(-0.25, held.lastK());
  }

  /** The step response of a first-order lag: 1 - exp(-t/lag) of the step. */
  @Test
  void aBodyWithALagFollowsAStepAsFirstOrderBodiesDo() {
    for (int seconds : new int[] {20, 47, 100, 300}) {
      ConstantSpan span = ConstantSpan.START.next(20, 1, 0, true);
      for (int s = 0; s < 16; s++) {
        span = span.next(20, 1, 5, true);
      }
      assertEquals(0, span.followed(150), "it rests");
      for (int s = 0; s < seconds; s++) {
        span = span.next(20, 1, 7, true);
      }
      double kept = (span.entries() - 1) * span.stepS() - 16; // the newest may lack in its entries
      assertEquals(seconds, kept, span.stepS());
      assertEquals(2 * -Math.expm1(-kept / 150), span.followed(150), 1e-9, seconds + " s");
    }
    assertEquals(0, ConstantSpan.START.followed(150));
  }

  @Test
  void anewItKeepsItsHabitAndNothingOfItsTime() {
    ConstantSpan span = ConstantSpan.START.next(20, 1, 0, true);
    for (int s = 1; s <= 30; s++) {
      span = span.next(s % 3 == 0 ? 20 : 20.0625, 1, 5, true);
    }
    ConstantSpan anew = span.next(span.celsius(), 1, 5, true).anew();
    assertEquals(0, anew.ageS());
    assertEquals(0, anew.dutyS());
    assertEquals(0, anew.sum());
    assertEquals(span.usualS(), anew.usualS());
    assertEquals(span.flips(), anew.flips());
  }
}
