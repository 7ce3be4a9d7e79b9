package trayward.controller.regulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Rows A5.pos, A5.I, A5.D and A5.vel of the check values. The recurrence is the ISA-form PID of
 * Åström and Hägglund; sequence and values are our own, recomputed three ways (floating point,
 * exact rationals, as a digital filter).
 */
class PidTest {

  private static final double TOLERANCE = 1e-9;
  private static final PidGains GAINS = new PidGains(0.4, 50, 8, 8, 0.6, 20);
  private static final double SET_C = 40;

  private static final double[] Y = {
    30, 30.5, 31.25, 32.5, 34, 36, 38, 39.5, 40.25, 40.5, 40.25, 40.0
  };
  private static final double[] V = {
    7.6,
    6.35,
    5.0585,
    3.225575,
    1.57429625,
    -0.5064185625,
    -1.899097634375,
    -1.913142752656,
    -0.675985615023,
    0.774563665728,
    2.429938665728,
    3.236129232441
  };
  private static final double[] U = {1, 1, 1, 1, 1, 0, 0, 0, 0, 0.774563665728, 1, 1};
  private static final double[] I = {
    10,
    9.75,
    9.5585,
    9.425575,
    9.37429625,
    9.3935814375,
    9.450902365625,
    9.561857247344,
    9.661514384977,
    9.693313665728,
    9.689313665728,
    9.615816732441
  };
  private static final double[] D = {
    0, -0.8, -1.6, -2.8, -3.8, -5.1, -5.75, -5.275, -3.8375, -2.31875, -0.759375, 0.0203125
  };

  /** A5.pos.0 to A5.pos.11, A5.I, A5.D. */
  @Test
  void theLimitedSequenceGivesEveryPublishedPart() {
    Pid pid = Pid.start(10);
    for (int k = 0; k < Y.length; k++) {
      assertEquals(I[k], pid.integral(), TOLERANCE, "I at " + k);
      Pid.Step step = pid.step(GAINS, SET_C, Y[k], 1, 0, 1);
      assertEquals(V[k], step.wanted(), TOLERANCE, "v at " + k);
      assertEquals(U[k], step.given(), TOLERANCE, "u at " + k);
      pid = step.next();
      assertEquals(D[k], pid.derivative(), TOLERANCE, "D at " + k);
      assertEquals(Y[k], pid.measuredC(), "y at " + k);
    }
  }

  /** A5.vel: K 0.05, Ti 50, Td 8, N 8, b 0.6, h 1, no limits, I_0 1.2. */
  @Test
  void withoutLimitsTheSequenceEqualsItsVelocityForm() {
    PidGains gains = new PidGains(0.05, 50, 8, 8, 0.6, 20);
    double[] r = {38, 38, 38, 40, 40, 40, 40, 40, 40, 40};
    double[] y = {37.9, 37.95, 38, 38, 38.1, 38.3, 38.6, 38.9, 39.2, 39.4};
    double[] u = {
      0.445,
      0.4326,
      0.42515,
      0.49265,
      0.4734,
      0.437175,
      0.3898125,
      0.35918125,
      0.336765625,
      0.3433078125
    };
    Pid pid = Pid.start(1.2);
    double velocity = 0.445;
    double dBefore = 0;
    for (int k = 0; k < y.length; k++) {
      Pid.Step step =
          pid.step(gains, r[k], y[k], 1, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
      pid = step.next();
      assertEquals(u[k], step.given(), TOLERANCE, "u at " + k);
      if (k > 0) {
        double d = 8.0 / 16 * dBefore - 0.05 * 8 * 8 / 16 * (y[k] - y[k - 1]);
        velocity +=
            0.05 * (0.6 * (r[k] - r[k - 1]) - (y[k] - y[k - 1]))
                + 0.05 / 50 * (r[k - 1] - y[k - 1])
                + d
                - dBefore;
        dBefore = d;
      }
      assertEquals(velocity, step.given(), 1e-14, "velocity form at " + k);
    }
  }

  @Test
  void theFirstSampleHasNoDerivative() {
    assertTrue(Double.isNaN(Pid.start(0.3).measuredC()));
    assertEquals(0, Pid.start(0.3).step(GAINS, 40, 39, 1, 0, 1).next().derivative());
  }

  @Test
  void withoutDerivativeTimeOldDerivativeIsForgotten() {
    PidGains pi = new PidGains(0.4, 50, 0, 8, 1, 20);
    Pid.Step step = new Pid(0.2, 5, 39).step(pi, 40, 39.5, 1, 0, 1);
    assertEquals(0, step.next().derivative());
    assertEquals(0.4 * 0.5 + 0.2, step.wanted(), 1e-12);
  }

  @Test
  void aLongerGapIntegratesMoreAndFiltersTheDerivativeLess() {
    Pid seen = new Pid(0.2, 0, 39);
    PidGains gains = new PidGains(0.1, 50, 8, 8, 1, 20);
    Pid after = seen.step(gains, 40, 39.5, 2, -10, 10).next();
    assertEquals(0.2 + 0.1 * 2 / 50 * 0.5, after.integral(), 1e-12);
    assertEquals(-0.1 * 8 * 8 / (8 + 8 * 2) * 0.5, after.derivative(), 1e-12);
  }

  /** The output at the last measurement, but for the derivative, is the same either way. */
  @Test
  void newSettingsAndANewSetTemperatureMakeNoJump() {
    Random random = new Random(5);
    for (int i = 0; i < 1000; i++) {
      PidGains from = gains(random);
      PidGains to = gains(random);
      double fromSet = 15 + 35 * random.nextDouble();
      double toSet = 15 + 35 * random.nextDouble();
      Pid pid = new Pid(random.nextGaussian(), random.nextGaussian(), 20 + random.nextInt(30));
      Pid over = pid.carriedOver(from, fromSet, to, toSet);
      assertEquals(output(pid, from, fromSet), output(over, to, toSet), 1e-9);
      assertEquals(pid.derivative(), over.derivative());
      assertEquals(pid.measuredC(), over.measuredC());
    }
  }

  @Test
  void whatHasSeenNothingHasNothingToCarryOver() {
    Pid fresh = Pid.start(0.4);
    assertSame(fresh, fresh.carriedOver(GAINS, 40, new PidGains(1, 9, 1, 3, 1, 9), 30));
  }

  private static double output(Pid pid, PidGains gains, double setC) {
    Pid.Step step = pid.step(gains, setC, pid.measuredC(), 1, -1e6, 1e6);
    return step.wanted() - step.next().derivative();
  }

  private static PidGains gains(Random random) {
    return new PidGains(
        0.01 + random.nextDouble(),
        20 + 300 * random.nextDouble(),
        40 * random.nextDouble(),
        2 + 8 * random.nextDouble(),
        random.nextDouble(),
        20 + 300 * random.nextDouble());
  }
}
