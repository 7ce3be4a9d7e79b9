package trayward.controller.sim;

import java.util.ArrayList;
import java.util.List;
import trayward.controller.port.RawReading;

/** A simulated probe, its clock, and every new reading with the time at which it came. */
final class ProbeBench {

  private static final double STEP_S = 0.1;
  private static final double ROOM_C = 20;

  final SimProbe probe;
  final List<RawReading> readings = new ArrayList<>();
  final List<Double> cameS = new ArrayList<>();
  private long steps;

  ProbeBench(ProbeParameters parameters, double startC, long seed) {
    probe = new SimProbe(parameters, startC, seed);
  }

  ProbeBench run(double seconds, double placeC) {
    for (long end = steps + Math.round(seconds / STEP_S); steps < end; steps++) {
      RawReading before = probe.reading();
      probe.advance(steps * STEP_S, (steps + 1) * STEP_S, placeC, ROOM_C);
      if (!probe.reading().equals(before)) {
        readings.add(probe.reading());
        cameS.add((steps + 1) * STEP_S);
      }
    }
    return this;
  }

  RawReading last() {
    return readings.get(readings.size() - 1);
  }
}
