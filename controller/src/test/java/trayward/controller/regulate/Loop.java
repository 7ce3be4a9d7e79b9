package trayward.controller.regulate;

import trayward.controller.sim.Plant;
import trayward.controller.sim.PlantParameters;

/**
 * A regulator around a simulated plant: probes with their lag, read once a second, 0.75 s old,
 * rounded to 1/16 K; a relay proportioned over 5 s. No noise.
 */
final class Loop {

  private static final double STEP_S = 0.1;
  private static final double BATH_LAG_S = 5;
  private static final double PLATE_LAG_S = 3;

  final Plant plant;
  final PidRegulator regulator;
  double setC;
  double duty;
  double highestPlateC = Double.NEGATIVE_INFINITY;
  double highestBathC = Double.NEGATIVE_INFINITY;
  double outsideUntilS;
  private final double heaterW;
  private TimeProportioner pulses = TimeProportioner.START;
  private long steps;
  private double bathLaggedC;
  private double plateLaggedC;
  private double bathTakenC;
  private double plateTakenC;
  private double bathReadC;
  private double plateReadC;
  private long takenNanos;

  Loop(PlantParameters parameters, TrayModel model, double ceilingC, double setC) {
    this.plant = new Plant(parameters);
    this.regulator = new PidRegulator(model, RoomModel.REFERENCE, ceilingC);
    this.heaterW = parameters.heaterW();
    this.setC = setC;
    double startC = parameters.startC();
    bathLaggedC = plateLaggedC = bathTakenC = plateTakenC = bathReadC = plateReadC = startC;
  }

  /** A tray of the given liquid, coupling, heater and evaporation; all else is the reference's. */
  static PlantParameters tray(double litres, double coupling, double heaterW, double evaporation) {
    PlantParameters r = PlantParameters.REFERENCE;
    return new PlantParameters(
        litres,
        r.areaM2(),
        r.plateJPerK(),
        coupling,
        r.bathLossWPerK(),
        r.plateLossWPerK(),
        heaterW,
        r.startC(),
        false,
        evaporation,
        r.wallJPerK(),
        r.wallToBathWPerK(),
        r.airC(),
        r.relativeHumidity(),
        r.draughtMPerS(),
        r.flowM3PerH(),
        r.rpm(),
        r.spinUpS(),
        r.spinDownS());
  }

  /** The tray as it would be declared. */
  static TrayModel declared(PlantParameters p) {
    return new TrayModel(
        p.liquidL(),
        p.areaM2(),
        p.plateJPerK(),
        p.plateToBathWPerK(),
        p.bathLossWPerK(),
        p.plateLossWPerK(),
        p.heaterW(),
        p.evaporationFactor());
  }

  Loop run(double seconds) {
    for (long end = steps + Math.round(seconds / STEP_S); steps < end; steps++) {
      duty = regulator.duty(input(bathReadC, true));
      pulses = pulses.next(duty, STEP_S, 5, 0.5);
      plant.advance(STEP_S, pulses.on() ? heaterW : 0);
      sense();
      highestPlateC = Math.max(highestPlateC, plant.plateC());
      highestBathC = Math.max(highestBathC, plant.bathC());
      if (Math.abs(plant.bathC() - setC) > 0.2) {
        outsideUntilS = (steps + 1) * STEP_S;
      }
    }
    return this;
  }

  /** What the regulator sees now, with another bath temperature or heat withheld where wanted. */
  RegulatorInput input(double bathC, boolean heatAllowed) {
    return new RegulatorInput(
        STEP_S,
        setC,
        bathC,
        takenNanos,
        plateReadC,
        takenNanos,
        heatAllowed,
        pulses.on(),
        steps * 100_000_000L);
  }

  double bathReadC() {
    return bathReadC;
  }

  private void sense() {
    bathLaggedC += (plant.bathC() - bathLaggedC) * -Math.expm1(-STEP_S / BATH_LAG_S);
    plateLaggedC += (plant.plateC() - plateLaggedC) * -Math.expm1(-STEP_S / PLATE_LAG_S);
    if (steps % 10 == 2) {
      bathTakenC = Math.rint(bathLaggedC * 16) / 16;
      plateTakenC = Math.rint(plateLaggedC * 16) / 16;
    } else if (steps % 10 == 9) {
      bathReadC = bathTakenC;
      plateReadC = plateTakenC;
      takenNanos = (steps - 7) * 100_000_000L;
    }
  }
}
