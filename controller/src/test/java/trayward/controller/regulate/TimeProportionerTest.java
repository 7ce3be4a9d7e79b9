package trayward.controller.regulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TimeProportionerTest {

  private static final double SCAN_S = 0.1;
  private static final double CYCLE_S = 5;
  private static final double MIN_PULSE_S = 0.5;
  private static final double ROUNDING = 1e-6;

  @ParameterizedTest
  @ValueSource(
      doubles = {
        0, 0.0005, 0.001, 0.01, 0.03, 0.05, 0.09, 0.1, 0.11, 0.2, 0.25, 0.3, 1 / 3.0, 0.4, 0.5, 0.6,
        0.7, 0.75, 0.8, 0.89, 0.9, 0.91, 0.95, 0.97, 0.99, 0.999, 0.9995, 1
      })
  void overManyCyclesTheOnTimeIsTheDutyAndNothingIsShort(double duty) {
    Relay relay = new Relay(CYCLE_S, MIN_PULSE_S);
    double hours = 3;
    for (int i = 0; i < hours * 36_000; i++) {
      relay.scan(duty, SCAN_S);
    }
    assertEquals(duty, relay.onS / (hours * 3600), CYCLE_S / (hours * 3600));
    assertTrue(relay.shortestPulseS >= MIN_PULSE_S - ROUNDING, "pulse " + relay.shortestPulseS);
    assertTrue(relay.shortestPauseS >= MIN_PULSE_S - ROUNDING, "pause " + relay.shortestPauseS);
    assertTrue(relay.mostClosures <= 1, "closures " + relay.mostClosures);
  }

  @Test
  void fullDutyIsOnInEveryScanAndNoDutyInNone() {
    TimeProportioner full = TimeProportioner.START;
    TimeProportioner none = TimeProportioner.START;
    for (int i = 0; i < 10_000; i++) {
      full = full.next(1, SCAN_S, CYCLE_S, MIN_PULSE_S);
      none = none.next(0, SCAN_S, CYCLE_S, MIN_PULSE_S);
      assertTrue(full.on());
      assertFalse(none.on());
    }
  }

  @Test
  void theFirstStepBeginsACycleWithItsPulse() {
    TimeProportioner first = TimeProportioner.START.next(0.3, SCAN_S, CYCLE_S, MIN_PULSE_S);
    assertTrue(first.on());
    assertEquals(0, first.phaseS());
    assertEquals(0, first.owedS());
  }

  /** A pulse of 0.05 x 5 s = 0.25 s is too short: two cycles' worth makes one of 0.5 s. */
  @Test
  void whatIsTooShortForAPulseIsCarriedToALaterCycle() {
    boolean[] on = scans(100, 0.05);
    int count = 0;
    for (int i = 0; i < on.length; i++) {
      count += on[i] ? 1 : 0;
      assertEquals(i >= 50 && i < 55, on[i], "scan " + i);
    }
    assertEquals(5, count);
  }

  @ParameterizedTest(name = "{0} for the first second, then {1}: off after {2} s")
  @CsvSource({"0.3, 0.8, 3.5", "0.8, 0.2, 1.6", "0.5, 0.0, 1.0", "0.3, 1.0, 4.3"})
  void aDutyChangedWithinAPulseMovesItsEnd(double first, double then, double offS) {
    TimeProportioner pulses = TimeProportioner.START;
    for (int i = 0; i < 50; i++) {
      pulses = pulses.next(i <= 10 ? first : then, SCAN_S, CYCLE_S, MIN_PULSE_S);
      if (i * SCAN_S < offS - 0.11) {
        assertTrue(pulses.on(), "off in scan " + i);
      } else if (i * SCAN_S > offS + 0.11) {
        assertFalse(pulses.on(), "on in scan " + i);
      }
    }
  }

  @Test
  void aDutyRaisedAfterThePulseWaitsForTheNextCycleAndIsMadeUpThere() {
    TimeProportioner pulses = TimeProportioner.START;
    int first = 0;
    int second = 0;
    for (int i = 0; i < 100; i++) {
      double duty = i <= 20 ? 0.3 : 0.6;
      pulses = pulses.next(duty, SCAN_S, CYCLE_S, MIN_PULSE_S);
      first += i < 50 && pulses.on() ? 1 : 0;
      second += i >= 50 && pulses.on() ? 1 : 0;
    }
    // Asked in the first 5 s: 2 x 0.3 + 3 x 0.6 = 2.4 s; given 1.5 s; then 0.9 + 3.0 s.
    assertEquals(15, first, 1);
    assertEquals(39, second, 1);
  }

  @Test
  void aDutyThatComesInAnIdleCycleBeginsItsPulseAtOnceWhereTheRestIsLongEnough() {
    TimeProportioner early = new TimeProportioner(false, false, 2, 2, 0);
    assertTrue(early.next(0.8, SCAN_S, CYCLE_S, MIN_PULSE_S).on());
    TimeProportioner late = new TimeProportioner(false, false, 4.5, 4.5, 0.4);
    TimeProportioner waiting = late.next(1, SCAN_S, CYCLE_S, MIN_PULSE_S);
    assertFalse(waiting.on(), "0.4 s are left, and 0.9 s are owed");
    for (int i = 0; i < 4; i++) {
      waiting = waiting.next(1, SCAN_S, CYCLE_S, MIN_PULSE_S);
    }
    assertTrue(waiting.on(), "the next cycle has begun");
  }

  @Test
  void aPulseThatBeganIsNotCutBelowTheMinimum() {
    TimeProportioner pulses = TimeProportioner.START.next(1, SCAN_S, CYCLE_S, MIN_PULSE_S);
    int scans = 0;
    while (pulses.on()) {
      scans++;
      pulses = pulses.next(0, SCAN_S, CYCLE_S, MIN_PULSE_S);
    }
    assertEquals(5, scans);
  }

  @Test
  void afterADemandOfNothingAtMostTheDebtOfACycleIsStillGiven() {
    for (int seed = 0; seed < 50; seed++) {
      Random random = new Random(seed);
      Relay relay = new Relay(CYCLE_S, MIN_PULSE_S);
      for (int i = 0; i < 1000; i++) {
        relay.scan(random.nextDouble(), SCAN_S);
      }
      double before = relay.onS;
      for (int i = 0; i < 1000; i++) {
        relay.scan(0, SCAN_S);
      }
      assertTrue(relay.onS - before <= CYCLE_S, "seed " + seed);
      assertFalse(relay.pulses.on(), "seed " + seed);
    }
  }

  @ParameterizedTest(name = "duty changing about every {0} scans")
  @ValueSource(ints = {1, 3, 10, 30, 100, 1000})
  void onRandomDutiesGivenMinusAskedStaysWithinACycle(int each) {
    for (int seed = 0; seed < 40; seed++) {
      Random random = new Random(seed);
      Relay relay = new Relay(CYCLE_S, MIN_PULSE_S);
      double duty = random.nextDouble();
      for (int i = 0; i < 10_000; i++) {
        if (random.nextInt(each) == 0) {
          duty = random.nextInt(8) == 0 ? random.nextInt(2) : walked(duty, random);
        }
        relay.scan(duty, SCAN_S);
        assertTrue(Math.abs(relay.onS - relay.askedS) <= CYCLE_S, "seed " + seed + " scan " + i);
      }
      assertTrue(relay.shortestPulseS >= MIN_PULSE_S - ROUNDING, "pulse, seed " + seed);
      assertTrue(relay.shortestPauseS >= MIN_PULSE_S - ROUNDING, "pause, seed " + seed);
      assertTrue(relay.mostClosures <= 1, "closures, seed " + seed);
    }
  }

  @Test
  void scansOfUnevenLengthKeepTheMeanToo() {
    Random random = new Random(3);
    for (double duty : new double[] {0.02, 0.3, 0.77, 0.96}) {
      Relay relay = new Relay(10, MIN_PULSE_S);
      double totalS = 0;
      while (totalS < 36_000) {
        double elapsedS = 0.07 + 0.06 * random.nextDouble();
        totalS += elapsedS;
        relay.scan(duty, elapsedS);
      }
      assertEquals(duty, relay.onS / totalS, 10 / totalS);
      // A scan may end a pulse half a scan early.
      assertTrue(relay.shortestPulseS >= MIN_PULSE_S - 0.05 - ROUNDING);
    }
  }

  @Test
  void aDebtNeverGrowsBeyondACycle() {
    TimeProportioner starved = new TimeProportioner(false, true, 1, 1, 0);
    assertEquals(CYCLE_S, starved.next(1, 60, CYCLE_S, MIN_PULSE_S).owedS());
    TimeProportioner overfed = new TimeProportioner(true, false, 1, 1, 0);
    assertEquals(-CYCLE_S, overfed.next(0, 60, CYCLE_S, MIN_PULSE_S).owedS());
  }

  private static boolean[] scans(int count, double duty) {
    boolean[] on = new boolean[count];
    TimeProportioner pulses = TimeProportioner.START;
    for (int i = 0; i < count; i++) {
      pulses = pulses.next(duty, SCAN_S, CYCLE_S, MIN_PULSE_S);
      on[i] = pulses.on();
    }
    return on;
  }

  private static double walked(double duty, Random random) {
    return Math.max(0, Math.min(1, duty + 0.3 * random.nextGaussian()));
  }
}
