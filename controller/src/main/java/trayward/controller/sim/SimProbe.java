package trayward.controller.sim;

import java.util.Random;
import trayward.controller.port.RawReading;

/**
 * A 12-bit probe: first-order lag, noise, offset, one reading a second that is 0.75 s old (its
 * conversion time), rounded to 1/16 K. Mutable; one thread.
 */
final class SimProbe {

  private static final double PERIOD_S = 1.0;
  private static final double CONVERSION_S = 0.75;
  private static final double STEPS_PER_K = 16;

  private final ProbeParameters parameters;
  private final Random noise;
  private final StepShares shares = new StepShares();
  private double sensedC;
  private double takenC;
  private double takenS;
  private double nextTakeS;
  private RawReading reading;
  private ProbeFault fault = ProbeFault.NONE;
  private double faultKelvin;

  SimProbe(ProbeParameters parameters, double startC, long seed) {
    this.parameters = parameters;
    this.noise = new Random(seed);
    this.sensedC = startC;
    this.takenC = startC;
    this.takenS = -CONVERSION_S;
    this.reading = convert(0);
    this.nextTakeS = PERIOD_S - CONVERSION_S;
  }

  RawReading reading() {
    return reading;
  }

  void fault(ProbeFault kind, double kelvin) {
    fault = kind;
    faultKelvin = kelvin;
  }

  /** Advances from {@code fromS} to {@code toS} with the place it hangs in at {@code placeC}. */
  void advance(double fromS, double toS, double placeC, double airC) {
    boolean inAir = fault == ProbeFault.IN_AIR;
    double target = inAir ? airC : placeC;
    double before = sensedC;
    // In air a probe follows about ten times more slowly than in liquid (common practice).
    double lag = parameters.lagS() * (inAir ? 10 : 1);
    sensedC += (target - sensedC) * (lag > 0 ? shares.of(-(toS - fromS) / lag) : 1);
    // After a leap of time (a computer that slept) the conversion begins now, not in the past.
    nextTakeS = Math.max(nextTakeS, fromS);
    if (toS >= nextTakeS && !Double.isNaN(nextTakeS)) {
      double share = (nextTakeS - fromS) / (toS - fromS);
      takenC = before + share * (sensedC - before);
      takenS = nextTakeS;
      nextTakeS = Double.NaN;
    }
    if (toS >= takenS + CONVERSION_S - 1e-9 && Double.isNaN(nextTakeS)) {
      reading = convert(toS);
      nextTakeS = takenS + PERIOD_S;
    }
  }

  private RawReading convert(double nowS) {
    long takenNanos = Math.round(takenS * 1e9);
    double gaussian = noise.nextGaussian(); // drawn always: a fault must not shift later noise
    double celsius =
        takenC
            + parameters.offsetK()
            + parameters.noiseK() * gaussian
            + (fault == ProbeFault.OFFSET ? faultKelvin : 0);
    double rounded = Math.rint(celsius * STEPS_PER_K) / STEPS_PER_K;
    return switch (fault) {
      case NONE, OFFSET, IN_AIR -> RawReading.frame(rounded, takenNanos);
      case FROZEN -> RawReading.frame(lastCelsius(rounded), takenNanos);
      case POWER_ON_VALUE -> RawReading.frame(85.0, takenNanos);
      case ABSENT -> RawReading.failed(RawReading.Kind.ABSENT, Math.round(nowS * 1e9));
      case CRC -> RawReading.failed(RawReading.Kind.CRC_ERROR, Math.round(nowS * 1e9));
      case ALL_ZERO -> RawReading.failed(RawReading.Kind.ALL_ZERO_FRAME, Math.round(nowS * 1e9));
    };
  }

  private double lastCelsius(double otherwise) {
    return reading.kind() == RawReading.Kind.FRAME ? reading.celsius() : otherwise;
  }
}
