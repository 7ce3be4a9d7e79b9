package trayward.controller.safety;

import java.util.Optional;
import java.util.Random;
import trayward.controller.regulate.TrayModel;

/**
 * A tray in a purge with its probes and both contacts, driven scan by scan by the contact test. The
 * equations are those of the two-lump tray, without evaporation.
 */
final class PurgeBench {

  private static final int CLOSED_MS = 25_000;
  private static final double STEP_S = 0.1;

  private final double plateJPerK;
  private final double couplingWPerK;
  private final double bathJPerK;
  private final double heaterW;
  private final boolean plateProbe;
  private final double noiseK;
  private final Random random;

  double plateC = 20;
  double bathC = 20;
  double lossWPerK = 3;
  boolean heaterWelded;
  boolean safetyWelded;
  State state = State.PROVING;
  ContactWatch watch;

  private double plateRead = 20;
  private double bathRead = 20;
  private ThermalInput.Sample plateSample = ThermalInput.Sample.NONE;
  private ThermalInput.Sample bathSample = ThermalInput.Sample.NONE;
  private long scans;

  private PurgeBench(
      double litres, double plateJPerK, double coupling, double heaterW, boolean plate, int seed) {
    this.bathJPerK = TrayModel.LITRE_J_PER_K * litres;
    this.plateJPerK = plateJPerK;
    this.couplingWPerK = coupling;
    this.heaterW = heaterW;
    this.plateProbe = plate;
    this.random = new Random(seed);
    this.noiseK = seed == 0 ? 0.02 : 0.05 * random.nextDouble();
    this.watch = ContactWatch.start(false);
  }

  /** One litre over 250 W and 1100 J/K. */
  static PurgeBench reference(boolean plateProbe) {
    return new PurgeBench(1, 1100, 18, 250, plateProbe, 0);
  }

  /** A tray drawn from the range the design names. */
  static PurgeBench random(int seed, boolean plateProbe) {
    Random r = new Random(seed * 31L);
    return new PurgeBench(
        0.5 + 2.5 * r.nextDouble(),
        700 + 1100 * r.nextDouble(),
        12 + 13 * r.nextDouble(),
        128 + 272 * r.nextDouble(),
        plateProbe,
        seed + 1);
  }

  /** Hotter plate than bath, as right after a stop. */
  PurgeBench hot(double byK) {
    plateC = bathC + byK;
    return this;
  }

  /** One scan of 0.1 s. */
  void scan() {
    Optional<Relay> alone = watch.closes();
    boolean heater = heaterWelded || alone.equals(Optional.of(Relay.HEATER));
    boolean safety = safetyWelded || alone.equals(Optional.of(Relay.SAFETY));
    double flow = couplingWPerK * (plateC - bathC);
    plateC += STEP_S * ((heater && safety ? heaterW : 0) - flow) / plateJPerK;
    bathC += STEP_S * (flow - lossWPerK * (bathC - 20)) / bathJPerK;
    plateRead += (plateC - plateRead) * STEP_S / 3;
    bathRead += (bathC - bathRead) * STEP_S / 5;
    if (scans % 10 == 0) {
      plateSample = plateProbe ? sample(plateRead) : ThermalInput.Sample.NONE;
      bathSample = sample(bathRead);
    }
    scans++;
    watch = watch.next(new ThermalInput(STEP_S, false, state, bathSample, plateSample), CLOSED_MS);
  }

  private ThermalInput.Sample sample(double celsius) {
    double noisy = celsius + noiseK * random.nextGaussian();
    return new ThermalInput.Sample(Math.rint(noisy * 16) / 16, scans * 100_000_000L);
  }

  PurgeBench run(double seconds) {
    for (long left = Math.round(seconds * 10); left > 0; left--) {
      scan();
    }
    return this;
  }

  /** Ten seconds of proving, then a purge until the test is over; its length, s. */
  double purge(double atMostS) {
    run(10);
    state = State.PURGING;
    double time = 0;
    while (!watch.sound() && watch.welded().isEmpty() && time < atMostS) {
      scan();
      time += STEP_S;
    }
    return time;
  }
}
