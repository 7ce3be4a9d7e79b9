package trayward.controller.notes;

/**
 * The charge pump of hardware-notes/pulse-held-relay.md, stepped through time by the laws of Ohm
 * and Kirchhoff: two coupling capacitors, driven in opposite phase through a resistor each, fill
 * one reservoir through diodes; a resistor and leaks empty it. A diode is a fixed drop: the corners
 * of that drop stand for its curve and its temperature. Immutable; shares nothing with the program.
 *
 * @param supplyV supply of the drivers, V
 * @param diodeV drop of each diode, V
 * @param couplingAF coupling capacitor of the one phase, F
 * @param couplingBF coupling capacitor of the other, F
 * @param reservoirF reservoir, F
 * @param bleedOhm resistor across the reservoir, Ω
 * @param gateOhm resistor at the gate, in parallel while it is on, Ω
 * @param leakA leaks of diodes, capacitors and dirt, A
 * @param detectorA what the detector itself takes, A
 * @param thresholdV below this the detector lets the gate go, V
 */
record PulsePump(
    double supplyV,
    double diodeV,
    double couplingAF,
    double couplingBF,
    double reservoirF,
    double bleedOhm,
    double gateOhm,
    double leakA,
    double detectorA,
    double thresholdV) {

  /** As drawn, in the middle of every tolerance. */
  static final PulsePump NOMINAL =
      new PulsePump(5.0, 0.3, 4.7e-6, 4.7e-6, 2.2e-6, 110e3, 1e6, 0.3e-6, 1e-6, 1.6);

  private static final double DRIVER_OHM = 1000;

  /** A fifteenth of the fastest time constant in it: 1 kΩ and 4.7 µF in series with 2.2 µF. */
  private static final double STEP_S = 1e-4;

  /** Enough of them that the first, onto an empty reservoir, has been forgotten. */
  static final int SETTLING_EDGES = 20;

  /** Voltages across the capacitors, and the level of the line. Mutable; one run. */
  private final class Run {
    private double acrossA;
    private double acrossB;
    private double reservoir;
    private boolean line;

    /** Steps on; the lowest voltage of the reservoir on the way. */
    double on(double seconds) {
      double lowest = Double.POSITIVE_INFINITY;
      for (int i = (int) Math.round(seconds / STEP_S); i > 0; i--) {
        double a = ampere((line ? supplyV : 0) - acrossA);
        double b = ampere((line ? 0 : supplyV) - acrossB);
        acrossA += a * STEP_S / couplingAF;
        acrossB += b * STEP_S / couplingBF;
        double in = Math.max(0, a) + Math.max(0, b);
        double out = reservoir / bleedOhm + reservoir / gateOhm + leakA + detectorA;
        reservoir = Math.max(0, reservoir + (in - out) * STEP_S / reservoirF);
        lowest = Math.min(lowest, reservoir);
      }
      return lowest;
    }

    /** Into the coupling capacitor: on to the reservoir where positive, from ground else. */
    private double ampere(double nodeV) {
      if (nodeV > reservoir + diodeV) {
        return (nodeV - reservoir - diodeV) / DRIVER_OHM;
      }
      return nodeV < -diodeV ? (nodeV + diodeV) / DRIVER_OHM : 0;
    }

    void edge() {
      line = !line;
    }

    /** Seconds until the detector lets go, at most so many. */
    double untilLetGo(double mostS) {
      double s = 0;
      while (reservoir >= thresholdV && s < mostS) {
        on(STEP_S);
        s += STEP_S;
      }
      return s;
    }
  }

  private Run running(double periodS, int edges) {
    Run run = new Run();
    for (int i = 0; i < edges; i++) {
      run.edge();
      run.on(periodS);
    }
    return run;
  }

  /** Time from the last edge to the letting go, s; the line stops high or low. */
  double heldS(double periodS, boolean stopsHigh) {
    Run run = running(periodS, SETTLING_EDGES + (stopsHigh ? 0 : 1));
    run.edge();
    run.on(0.01); // the charge of the last edge has come over
    return 0.01 + run.untilLetGo(10);
  }

  /** Lowest voltage of the reservoir from edge to edge, V. */
  double lowestV(double periodS) {
    Run run = running(periodS, SETTLING_EDGES);
    run.edge();
    return run.on(periodS);
  }

  /** Lowest voltage where one edge of many comes late, V, over it and the ten after it. */
  double lowestWithOneLateV(double periodS, double lateS) {
    Run run = running(periodS, SETTLING_EDGES);
    run.edge();
    double lowest = run.on(lateS);
    for (int i = 0; i < 10; i++) {
      run.edge();
      lowest = Math.min(lowest, run.on(periodS));
    }
    return lowest;
  }

  /** How long one single edge after a long rest can hold, s: a stray one at power-up. */
  double heldByOneEdgeS() {
    Run run = new Run();
    run.on(5);
    run.edge();
    run.on(0.01);
    return 0.01 + run.untilLetGo(10);
  }

  /** Voltage of the reservoir after so long without an edge, V. */
  double afterSilenceV(double periodS, double silentS, boolean stopsHigh) {
    Run run = running(periodS, SETTLING_EDGES + (stopsHigh ? 0 : 1));
    run.edge();
    run.on(silentS);
    return run.reservoir;
  }

  /** Voltage that a steady level holds through a coupling capacitor that leaks, V: Ohm's law. */
  double steadyV(double insulationOhm) {
    return (supplyV - diodeV) * dischargeOhm() / (dischargeOhm() + insulationOhm);
  }

  /** Insulation of a coupling capacitor below which a steady level holds, Ω. */
  double holdingInsulationOhm() {
    return dischargeOhm() * ((supplyV - diodeV) / thresholdV - 1);
  }

  private double dischargeOhm() {
    return 1 / (1 / bleedOhm + 1 / gateOhm);
  }
}
