package trayward.controller.app;

import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import trayward.controller.gpio.LineUnavailable;
import trayward.controller.gpio.PiLines;
import trayward.controller.modbus.SerialLine;
import trayward.controller.onewire.OneWireProbes;
import trayward.controller.port.LineReader;
import trayward.controller.port.MonotonicClock;
import trayward.controller.port.OutputLines;
import trayward.controller.port.ProbeReader;
import trayward.controller.port.ProbeRole;
import trayward.controller.port.RawReading;
import trayward.controller.rig.RigFolder;
import trayward.controller.rig.RigInputs;
import trayward.controller.sim.SimulatedTray;
import trayward.controller.transmitter.RtuRegisterLine;
import trayward.controller.transmitter.TransmitterProbes;

/**
 * The adapters of a configuration, made and joined to the ports. Every output is off once it is
 * made. Made, started and closed by one thread; the ports belong to the thread that scans.
 *
 * @param lines all digital inputs
 * @param probes the newest reading of each probe
 * @param outputs all outputs
 * @param oneWire the 1-Wire probes' thread, where there is a bus
 * @param transmitter the transmitters' thread, where there is a line
 * @param pi the lines of a Pi, where this is one
 */
record Wiring(
    LineReader lines,
    ProbeReader probes,
    OutputLines outputs,
    Optional<OneWireProbes> oneWire,
    Optional<TransmitterProbes> transmitter,
    Optional<PiLines> pi)
    implements AutoCloseable {

  /** What it is wired for. */
  enum Purpose {
    /** To hold a bath: only what is configured is read. */
    RUN,
    /** To see what is there: every probe on the bus is read. */
    COMMISSIONING
  }

  /**
   * Wires a configuration.
   *
   * @throws ConfigRefused where the lines of a Pi cannot be had
   */
  static Wiring of(Settings settings, Purpose purpose, MonotonicClock clock, long nowNanos)
      throws ConfigRefused {
    if (settings.io() instanceof Settings.Io.Pi pi) {
      PiLines lines = piLines(pi, clock);
      OneWireProbes oneWire = oneWire(pi.onewireRoot(), settings, purpose, clock);
      Optional<TransmitterProbes> transmitter = transmitter(settings.probes(), clock);
      return new Wiring(
          lines,
          byPlace(settings.probes().oneWire(), oneWire, transmitter),
          lines.outputLines(),
          Optional.of(oneWire),
          transmitter,
          Optional.of(lines));
    }
    if (settings.io() instanceof Settings.Io.Files files) {
      OneWireProbes oneWire = oneWire(files.onewireRoot(), settings, purpose, clock);
      Optional<TransmitterProbes> transmitter = transmitter(settings.probes(), clock);
      RigFolder folder = new RigFolder(files.folder());
      RigInputs inputs =
          new RigInputs(folder, byPlace(settings.probes().oneWire(), oneWire, transmitter));
      return new Wiring(
          inputs, inputs, folder.outputs(), Optional.of(oneWire), transmitter, Optional.empty());
    }
    long seed = settings.io() instanceof Settings.Io.Sim sim ? sim.seed() : 1;
    SimulatedTray tray =
        new SimulatedTray(
            settings.plant(),
            settings.bathProbe(),
            settings.secondProbe(),
            settings.plateProbe(),
            seed,
            nowNanos);
    return new Wiring(
        tray, tray, tray.outputs(), Optional.empty(), Optional.empty(), Optional.empty());
  }

  private static OneWireProbes oneWire(
      Path root, Settings settings, Purpose purpose, MonotonicClock clock) {
    return new OneWireProbes(root, settings.probes().oneWire(), reads(purpose), clock);
  }

  private static PiLines piLines(Settings.Io.Pi pi, MonotonicClock clock) throws ConfigRefused {
    try {
      return PiLines.open(pi.wiring(), clock);
    } catch (LineUnavailable e) {
      throw new ConfigRefused("io.kind = \"pi\": " + e.getMessage());
    }
  }

  private static OneWireProbes.Reads reads(Purpose purpose) {
    return switch (purpose) {
      case RUN -> OneWireProbes.Reads.FITTED;
      case COMMISSIONING -> OneWireProbes.Reads.ALL;
    };
  }

  private static Optional<TransmitterProbes> transmitter(ProbeTable probes, MonotonicClock clock) {
    return probes
        .transmitter()
        .map(
            table ->
                new TransmitterProbes(
                    new RtuRegisterLine(() -> SerialLine.open(table.serial())),
                    table.channels(),
                    clock));
  }

  /** Each place is read where its probe is. */
  private static ProbeReader byPlace(
      Map<ProbeRole, String> onBus, ProbeReader oneWire, Optional<TransmitterProbes> transmitter) {
    ProbeReader elsewhere =
        transmitter.isPresent()
            ? transmitter.get()
            : (role, nowNanos) -> RawReading.failed(RawReading.Kind.ABSENT, nowNanos);
    return (role, nowNanos) ->
        (onBus.containsKey(role) ? oneWire : elsewhere).latest(role, nowNanos);
  }

  /** Starts the threads that read probes. */
  void start() {
    oneWire.ifPresent(OneWireProbes::start);
    transmitter.ifPresent(TransmitterProbes::start);
  }

  /**
   * Ends those threads; outputs stay as they are, but for those of a Pi: all but the fan go off.
   */
  @Override
  public void close() {
    pi.ifPresent(PiLines::close);
    oneWire.ifPresent(OneWireProbes::close);
    transmitter.ifPresent(TransmitterProbes::close);
  }
}
