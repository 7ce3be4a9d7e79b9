package trayward.host.app.goals;

import trayward.controller.app.Scenario;
import trayward.controller.regulate.IsaPid;
import trayward.controller.regulate.Pid;
import trayward.controller.regulate.PidGains;
import trayward.controller.regulate.Regulator;
import trayward.controller.regulate.RegulatorInput;
import trayward.controller.regulate.TransferFunction;
import trayward.controller.regulate.TrayBelief;
import trayward.controller.regulate.TrayModel;
import trayward.controller.regulate.UltimatePoint;
import trayward.controller.regulate.ZieglerNichols;

/**
 * To compare with: a PID on the bath with the gains of Ziegler and Nichols for the believed tray,
 * back-calculation against windup, and nothing else. Mutable; one thread.
 */
final class PlainPid implements Regulator {

  /** Derivative filter ratio; 8 to 20 is common practice. */
  private static final double FILTER = 10;

  /** A 12-bit conversion takes 0.75 s, and a reading waits half a second for its sample, s. */
  private static final double READING_S = 1.25;

  private final PidGains gains;
  private final PlateCeiling ceiling;
  private Pid pid = Pid.start(0);
  private long sampleNanos;
  private boolean running;
  private double duty;

  PlainPid(IsaPid tuned, PlateCeiling ceiling) {
    // Back-calculation in sqrt(Ti Td): the rule of thumb of Åström and Hägglund.
    double trackingS = Math.sqrt(tuned.integralS() * tuned.derivativeS());
    this.gains =
        new PidGains(tuned.gain(), tuned.integralS(), tuned.derivativeS(), FILTER, 1, trackingS);
    this.ceiling = ceiling;
  }

  /** Tuned for what {@code scenario} lets a controller believe. */
  static PlainPid of(Scenario scenario) {
    return new PlainPid(tuned(scenario), PlateCeiling.of(scenario));
  }

  /** The ultimate cycle of the believed tray with its probe and relay, and 1942's PID from it. */
  static IsaPid tuned(Scenario scenario) {
    TrayModel.Linear tray = scenario.model().linearAt(scenario.control().setC(), scenario.room());
    TransferFunction seen =
        TransferFunction.lags(
            tray.gainKPerDuty(),
            READING_S + scenario.control().cycleS() / 2,
            tray.slowS(),
            tray.fastS(),
            TrayBelief.BATH_LAG_S);
    return ZieglerNichols.pid(UltimatePoint.of(seen).orElseThrow()); // a delay: there is one
  }

  @Override
  public double duty(RegulatorInput in) {
    if (Double.isNaN(in.bathC()) || (!in.heatAllowed() && in.bathC() <= in.setC())) {
      running = false; // nothing is integrated while heat is withheld
      duty = Double.isNaN(in.bathC()) ? 0 : ceiling.most(in.plateC());
    } else if (!running || in.bathTakenNanos() != sampleNanos) {
      sample(in);
    }
    return duty;
  }

  private void sample(RegulatorInput in) {
    double hS = running ? (in.bathTakenNanos() - sampleNanos) / 1e9 : 1;
    Pid from = running ? pid : Pid.start(pid.integral());
    Pid.Step step = from.step(gains, in.setC(), in.bathC(), hS, 0, ceiling.most(in.plateC()));
    pid = step.next();
    duty = step.given();
    sampleNanos = in.bathTakenNanos();
    running = true;
  }
}
