package trayward.controller.regulate;

import java.util.Random;
import trayward.controller.sim.Plant;
import trayward.controller.sim.PlantParameters;

/**
 * A regulator around a simulated plant: probes with their lag, noise of 0.02 K, read once a second,
 * 0.75 s old, rounded to 1/16 K; a relay proportioned over 5 s.
 */
final class TrayBench {

  static final double STEP_S = 0.1;
  static final long STEP_NANOS = 100_000_000L;
  static final double CEILING_C = 68;

  final Plant plant;
  final boolean plateFitted;
  Regulator regulator;
  double setC = 40;
  boolean allowed = true;

  /** What a probe that sees other than the bath adds to its reading, K. */
  double bathOffK;

  double duty;
  double highestBathC = Double.NEGATIVE_INFINITY;
  double highestPlateC = Double.NEGATIVE_INFINITY;
  double highestDuty;
  double outsideUntilS;
  double bathReadC;
  double plateReadC;
  private final Random noise;
  private final double heaterW;
  private TimeProportioner pulses = TimeProportioner.START;
  private long steps;
  private double bathSensedC;
  private double plateSensedC;
  private double bathTakenC;
  private double plateTakenC;
  private long takenNanos;

  TrayBench(PlantParameters tray, TrayModel declared, boolean plateFitted, long seed) {
    this(tray, plateFitted, seed, regulator(declared, plateFitted, Fits.inline()));
  }

  TrayBench(PlantParameters tray, boolean plateFitted, long seed, Regulator regulator) {
    this.plant = new Plant(tray);
    this.plateFitted = plateFitted;
    this.regulator = regulator;
    this.noise = new Random(seed);
    this.heaterW = tray.heaterW();
    double startC = tray.startC();
    bathSensedC = plateSensedC = bathTakenC = plateTakenC = bathReadC = startC;
    plateReadC = plateFitted ? startC : Double.NaN;
  }

  static TrayRegulator regulator(TrayModel declared, boolean plateFitted, Fits fits) {
    return new TrayRegulator(
        TrayBelief.declared(declared),
        TrayDoubt.DECLARED,
        RoomModel.REFERENCE,
        CEILING_C,
        plateFitted,
        fits);
  }

  static TrayBench reference(boolean plateFitted, long seed) {
    return new TrayBench(PlantParameters.REFERENCE, TrayModel.REFERENCE, plateFitted, seed);
  }

  TrayRegulator tray() {
    return (TrayRegulator) regulator;
  }

  TrayBench run(double seconds) {
    for (long end = steps + Math.round(seconds / STEP_S); steps < end; ) {
      step();
    }
    return this;
  }

  /** A scan. */
  void step() {
    duty = regulator.duty(input(bathReadC, plateReadC));
    highestDuty = Math.max(highestDuty, duty);
    pulses = pulses.next(allowed ? duty : 0, STEP_S, 5, 0.5);
    plant.advance(STEP_S, pulses.on() ? heaterW : 0);
    sense();
    steps++;
    highestPlateC = Math.max(highestPlateC, plant.plateC());
    highestBathC = Math.max(highestBathC, plant.bathC());
    if (Math.abs(plant.bathC() - setC) > 0.2) {
      outsideUntilS = steps * STEP_S;
    }
  }

  /** Forgets what was seen: the next is judged by itself. */
  void judge() {
    highestBathC = highestPlateC = Double.NEGATIVE_INFINITY;
    highestDuty = 0;
  }

  double atS() {
    return steps * STEP_S;
  }

  RegulatorInput input(double bathC, double plateC) {
    return new RegulatorInput(
        STEP_S,
        setC,
        bathC,
        takenNanos,
        plateC,
        takenNanos,
        allowed,
        pulses.on(),
        steps * STEP_NANOS);
  }

  private void sense() {
    bathSensedC += (plant.bathC() - bathSensedC) * -Math.expm1(-STEP_S / 5);
    plateSensedC += (plant.plateC() - plateSensedC) * -Math.expm1(-STEP_S / 3);
    if (steps % 10 == 2) {
      bathTakenC = rounded(bathSensedC + bathOffK);
      plateTakenC = rounded(plateSensedC);
    } else if (steps % 10 == 9) {
      bathReadC = bathTakenC;
      plateReadC = plateFitted ? plateTakenC : Double.NaN;
      takenNanos = (steps - 6) * STEP_NANOS; // the plant was advanced to the end of that step
    }
  }

  private double rounded(double celsius) {
    return Math.rint((celsius + 0.02 * noise.nextGaussian()) * 16) / 16;
  }
}
