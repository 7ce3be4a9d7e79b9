package trayward.host.app.goals;

import trayward.controller.app.Scenario;
import trayward.controller.regulate.Regulator;
import trayward.controller.regulate.RegulatorInput;

/** To compare with: heat on below the set temperature, off above it. Mutable; one thread. */
final class Thermostat implements Regulator {

  /** Half of its switching differential, K: two steps of a probe, or its noise would switch. */
  private static final double HALF_K = 0.125;

  private final PlateCeiling ceiling;
  private boolean on = true;

  Thermostat(PlateCeiling ceiling) {
    this.ceiling = ceiling;
  }

  static Thermostat of(Scenario scenario) {
    return new Thermostat(PlateCeiling.of(scenario));
  }

  @Override
  public double duty(RegulatorInput in) {
    if (Double.isNaN(in.bathC())) {
      return 0;
    }
    double belowK = in.setC() - in.bathC();
    on = on ? belowK > -HALF_K : belowK > HALF_K;
    return on ? ceiling.most(in.plateC()) : 0;
  }
}
