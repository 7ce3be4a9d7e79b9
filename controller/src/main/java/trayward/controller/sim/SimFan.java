package trayward.controller.sim;

import org.hipparchus.util.FastMath;

/**
 * Fan, duct and their proofs. Speed follows its target exponentially, four time constants within
 * the stated spin-up or spin-down; flow goes with speed. Mutable; one thread.
 */
final class SimFan {

  private static final double TIME_CONSTANTS = 4;

  private final PlantParameters parameters;
  // The steps are all alike: their exponentials are kept.
  private double shareHS = Double.NaN;
  private double upShare;
  private double downShare;
  private double rpm;
  private boolean dead;
  private double slowRpm = Double.NaN;
  private boolean ductBlocked;
  private boolean airflowStuckOn;
  private boolean airflowStuckOff;
  private double stuckRpm = Double.NaN;

  SimFan(PlantParameters parameters) {
    this.parameters = parameters;
  }

  void advance(double hS, boolean commanded) {
    double full = Double.isNaN(slowRpm) ? parameters.rpm() : Math.min(slowRpm, parameters.rpm());
    double target = commanded && !dead ? full : 0;
    if (hS != shareHS) {
      shareHS = hS;
      upShare = 1 - FastMath.exp(-TIME_CONSTANTS * hS / parameters.spinUpS());
      downShare = 1 - FastMath.exp(-TIME_CONSTANTS * hS / parameters.spinDownS());
    }
    rpm += (target - rpm) * (target > rpm ? upShare : downShare);
  }

  double flowM3PerH() {
    return ductBlocked ? 0 : parameters.flowM3PerH() * rpm / parameters.rpm();
  }

  /** The tachometer as read, 1/min. */
  double readRpm() {
    return Double.isNaN(stuckRpm) ? rpm : stuckRpm;
  }

  /** The airflow switch as read: closes above half the rated flow. */
  boolean airflow() {
    boolean moving = flowM3PerH() > parameters.flowM3PerH() / 2;
    return airflowStuckOn || (moving && !airflowStuckOff);
  }

  void dead(boolean on) {
    dead = on;
  }

  void slow(double toRpm) {
    slowRpm = toRpm;
  }

  void ductBlocked(boolean on) {
    ductBlocked = on;
  }

  void airflowStuckOn(boolean on) {
    airflowStuckOn = on;
  }

  void airflowStuckOff(boolean on) {
    airflowStuckOff = on;
  }

  /** The tachometer keeps saying what it says now. */
  void tachometerStuck(boolean on) {
    stuckRpm = on ? rpm : Double.NaN;
  }
}
