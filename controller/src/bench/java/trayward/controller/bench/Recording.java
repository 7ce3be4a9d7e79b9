package trayward.controller.bench;

import trayward.controller.port.LineReader;
import trayward.controller.port.LineReadings;
import trayward.controller.port.OutputLines;
import trayward.controller.port.ProbeReader;
import trayward.controller.port.ProbeRole;
import trayward.controller.port.RawReading;
import trayward.controller.sim.PlantParameters;
import trayward.controller.sim.ProbeParameters;
import trayward.controller.sim.SimulatedTray;

/**
 * What lines and probes said in a hold of the simulated tray of reference, to be told to a scan
 * again without the cost of the simulation. The same scan asks for the same heat, so that what is
 * told remains its answer. Immutable once made; one thread.
 */
final class Recording implements LineReader, ProbeReader {

  private static final ProbeParameters NO_PLATE = new ProbeParameters(false, 3, 0.02, 0);

  private final LineReadings[] lines;
  private final RawReading[] bath;
  private final RawReading[] plate;

  /** Runs {@code scans} scans and keeps what they read. */
  Recording(int scans, boolean plateFitted) {
    this.lines = new LineReadings[scans];
    this.bath = new RawReading[scans];
    this.plate = new RawReading[scans];
    SimulatedTray tray =
        new SimulatedTray(
            PlantParameters.REFERENCE,
            ProbeParameters.BATH,
            ProbeParameters.NO_SECOND,
            plateFitted ? ProbeParameters.PLATE : NO_PLATE,
            1,
            0);
    Hold hold =
        new Hold(
            now -> kept(lines, now, tray.read(now)),
            (role, now) ->
                kept(role == ProbeRole.PLATE ? plate : bath, now, tray.latest(role, now)),
            tray.outputs(),
            plateFitted);
    for (int k = 0; k < scans; k++) {
      if (hold.attended()) {
        tray.plant().refill(PlantParameters.REFERENCE.liquidL());
      }
      var unused = hold.next();
    }
  }

  /** Keeps {@code now}, and no second one like it. */
  private static <T> T kept(T[] all, long nanos, T now) {
    int k = index(nanos);
    all[k] = k > 0 && now.equals(all[k - 1]) ? all[k - 1] : now;
    return all[k];
  }

  private static int index(long nanos) {
    return (int) (nanos / Hold.PERIOD);
  }

  @Override
  public LineReadings read(long nowNanos) {
    return lines[index(nowNanos)];
  }

  @Override
  public RawReading latest(ProbeRole role, long nowNanos) {
    return (role == ProbeRole.PLATE ? plate : bath)[index(nowNanos)];
  }

  /** Lines that lead nowhere. */
  static OutputLines nowhere() {
    return new OutputLines(on -> {}, on -> {}, on -> {}, on -> {}, on -> {}, on -> {});
  }
}
