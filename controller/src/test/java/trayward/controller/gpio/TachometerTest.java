package trayward.controller.gpio;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** The arithmetic is by hand: revolutions a minute = 60 / (seconds a pulse x pulses a turn). */
class TachometerTest {

  private static final long MS = 1_000_000L;

  private final Tachometer fan = new Tachometer(2, 500);

  /** Pulses {@code gapNanos} apart, the last one at {@code lastNanos}. */
  private static void turn(Tachometer fan, long lastNanos, long gapNanos, int pulses) {
    for (int i = pulses - 1; i >= 0; i--) {
      fan.pulse(lastNanos - i * gapNanos);
    }
  }

  @Test
  void twentyMillisecondsAPulseAndTwoPulsesATurnAre1500RevolutionsAMinute() {
    turn(fan, 5000 * MS, 20 * MS, 100);
    assertEquals(1500, fan.rpm(5000 * MS), 1e-9);
    assertEquals(1500, fan.rpm(5019 * MS), 1e-9, "the next pulse is not due");
  }

  @Test
  void oneOrFourPulsesATurnMeanTwiceOrHalfTheSpeed() {
    Tachometer one = new Tachometer(1, 500);
    Tachometer four = new Tachometer(4, 500);
    turn(one, 5000 * MS, 20 * MS, 50);
    turn(four, 5000 * MS, 20 * MS, 50);
    assertEquals(3000, one.rpm(5000 * MS), 1e-9);
    assertEquals(750, four.rpm(5000 * MS), 1e-9);
  }

  @Test
  void noPulseYetOrOneAloneIsAFanThatStands() {
    assertEquals(0, fan.rpm(0));
    fan.pulse(100 * MS);
    assertEquals(0, fan.rpm(101 * MS));
  }

  @Test
  void afterTheSilenceItStands() {
    turn(fan, 1000 * MS, 20 * MS, 50);
    assertTrue(fan.rpm(1000 * MS + 459 * MS) > 0);
    assertEquals(0, fan.rpm(1000 * MS + 500 * MS));
    assertEquals(0, fan.rpm(60_000 * MS));
  }

  @Test
  void afterASilenceTheOldPulsesDoNotCountAndTwoNewOnesDo() {
    turn(fan, 1000 * MS, 20 * MS, 50);
    fan.pulse(3000 * MS);
    assertEquals(0, fan.rpm(3000 * MS));
    fan.pulse(3040 * MS);
    assertEquals(750, fan.rpm(3040 * MS), 1e-9);
  }

  @Test
  void aFanThatStopsDeadIsBelowHalfItsSpeedBeforeAQuarterOfASecond() {
    turn(fan, 1000 * MS, 20 * MS, 50);
    assertEquals(1500, fan.rpm(1000 * MS + 100 * MS), 1e-9, "edges may be told 0.1 s late");
    double before = 1500;
    for (int ms = 110; ms < 500; ms += 10) {
      double now = fan.rpm((1000L + ms) * MS);
      assertTrue(now <= before, ms + " ms");
      before = now;
    }
    assertTrue(fan.rpm(1000 * MS + 240 * MS) <= 750);
  }

  @Test
  void whatComesLateInABunchIsStillTheRightSpeed() {
    Random random = new Random(7);
    for (int i = 0; i < 200; i++) {
      fan.pulse(20L * i * MS + random.nextInt(8) * MS);
    }
    assertEquals(1500, fan.rpm(20L * 199 * MS + 8 * MS), 1500 * 0.03);
  }

  @Test
  void pulsesAtOneInstantGiveNoSpeedAndNothingInfinite() {
    fan.pulse(5 * MS);
    fan.pulse(5 * MS);
    assertEquals(0, fan.rpm(6 * MS));
  }

  @Test
  void theHistoryIsBoundedAndEveryPulseIsCounted() {
    turn(fan, 10_000 * MS, 1000, 3 * Tachometer.MOST_PULSES);
    assertEquals(3L * Tachometer.MOST_PULSES, fan.pulses());
    assertEquals(60e9 / (1000 * 2), fan.rpm(10_000 * MS), 1e-3);
  }

  @Test
  void timeBeforeTheOriginOfTheClockIsTimeLikeAnyOther() {
    turn(fan, -3 * MS, 20 * MS, 30);
    assertEquals(1500, fan.rpm(-2 * MS), 1e-9);
  }
}
