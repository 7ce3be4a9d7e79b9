package trayward.controller.safety;

import java.util.EnumSet;
import java.util.Set;
import trayward.controller.event.TripCause;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;

/**
 * Two lumps and two lagging probes in a room of 20 °C, driven by full heat up to a set temperature:
 * just enough of a tray to show the watch each fault. A minute of purge comes first.
 */
final class TinyTray {

  private final double liquidL;
  private final double plateJPerK;
  private final double plateToBathWPerK;
  private final double heaterW;
  private final boolean seesPlate;
  TrayWatch watch;
  double plateC = 20;
  double bathC = 20;
  double setC = 40;
  boolean open;
  boolean welded;
  boolean dry;
  boolean bathFrozen;
  boolean plateFrozen;
  boolean bathOut;
  boolean plateOff;
  State resting = State.PURGING;
  double commandedS;
  private double plateFelt = 20;
  private double bathFelt = 20;
  private ThermalInput.Sample bath = ThermalInput.Sample.NONE;
  private ThermalInput.Sample plate = ThermalInput.Sample.NONE;
  private boolean heat;
  private long tenths;

  TinyTray(double liquidL, double jPerK, double wPerK, double heaterW, boolean seesPlate) {
    this.liquidL = liquidL;
    this.plateJPerK = jPerK;
    this.plateToBathWPerK = wPerK;
    this.heaterW = heaterW;
    this.seesPlate = seesPlate;
    TrayModel r = TrayModel.REFERENCE;
    this.watch =
        TrayWatch.start(
            new TrayModel(
                liquidL,
                r.areaM2(),
                r.plateJPerK(),
                r.plateToBathWPerK(),
                r.bathLossWPerK(),
                r.plateLossWPerK(),
                heaterW,
                1),
            RoomModel.REFERENCE);
  }

  /** One litre over 250 W: the reference tray. */
  static TinyTray reference(boolean seesPlate) {
    return new TinyTray(1, 1100, 18, 250, seesPlate);
  }

  double seconds() {
    return tenths / 10.0;
  }

  /** Runs for some time, or until the watch tells something. */
  TinyTray run(double seconds) {
    long until = tenths + Math.round(10 * seconds);
    while (tenths < until && watch.findings().isEmpty()) {
      step();
    }
    return this;
  }

  /** Everything told in some time. */
  Set<TripCause> told(double seconds) {
    EnumSet<TripCause> told = EnumSet.noneOf(TripCause.class);
    for (long n = Math.round(10 * seconds); n > 0; n--) {
      step();
      told.addAll(watch.findings());
    }
    return told;
  }

  State state() {
    return tenths < 600 || resting != State.PURGING ? resting : State.HEATING;
  }

  private void step() {
    double powerW = !open && (heat || welded) ? heaterW : 0;
    double passedW = dry ? 0 : plateToBathWPerK * (plateC - bathC);
    double lossW = (dry ? 0 : 0.01 * bathC * bathC) + 2.5 * (bathC - 20); // a vapour of sorts
    plateC += 0.1 * (powerW - passedW - 0.5 * (plateC - 20)) / plateJPerK;
    bathC += 0.1 * (passedW - lossW * Math.min(1, liquidL)) / (4180 * liquidL);
    plateFelt += ((plateOff ? 20 : plateC) - plateFelt) * 0.1 / 3;
    bathFelt += ((bathOut ? 20 : bathC) - bathFelt) * 0.1 / (bathOut ? 50 : 5);
    tenths++;
    if (tenths % 10 == 0) {
      long taken = tenths * 100_000_000L;
      bath = new ThermalInput.Sample(bathFrozen ? bath.celsius() : rounded(bathFelt), taken);
      if (seesPlate) {
        plate = new ThermalInput.Sample(plateFrozen ? plate.celsius() : rounded(plateFelt), taken);
      }
    }
    watch = watch.next(new ThermalInput(0.1, heat, state(), bath, plate));
    heat = state().purged() && !watch.looking() && bath.celsius() < setC;
    commandedS += heat ? 0.1 : 0;
  }

  private static double rounded(double celsius) {
    return Math.rint(celsius * 16) / 16;
  }
}
