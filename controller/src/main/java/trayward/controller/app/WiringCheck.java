package trayward.controller.app;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import trayward.controller.keep.FolderClaim;
import trayward.controller.onewire.OneWireProbes;
import trayward.controller.onewire.RomId;
import trayward.controller.port.LineReadings;
import trayward.controller.port.MonotonicClock;
import trayward.controller.port.ProbeRole;
import trayward.controller.port.RawReading;
import trayward.controller.safety.Limits;
import trayward.controller.scan.BarredOutputs;
import trayward.controller.scan.ProbePlaces;
import trayward.controller.sense.ProbeLimits;
import trayward.controller.sense.ProbeTrack;

/**
 * The wiring of an installation for a person who commissions it: every input as it is, every output
 * one at a time, heat barred by {@link BarredOutputs}. There is no scan, no interlock and no
 * regulator beside it, and nothing is kept. One thread looks; another may close.
 */
public final class WiringCheck implements AutoCloseable {

  private final FolderClaim claim;
  private final Settings settings;
  private final MonotonicClock clock;
  private final Wiring wiring;
  private final BarredOutputs outputs;
  private final Map<ProbeRole, ProbeTrack> placed = new EnumMap<>(ProbeRole.class);
  private final Map<String, ProbeTrack> onBus = new HashMap<>(); // at most what a bus holds

  /**
   * Takes the data folder, as a controller does, and wires an installation; every output is off.
   *
   * @param settings checked, but perhaps without its probes
   * @param clock monotonic time
   * @throws ConfigRefused where a controller has the folder, and so the outputs; nothing is touched
   */
  public WiringCheck(Settings settings, MonotonicClock clock) throws ConfigRefused {
    this.claim = ControllerRuntime.claim(ControllerRuntime.dataFolder(settings.logFolder()));
    this.settings = settings;
    this.clock = clock;
    long now = clock.nanos();
    try {
      this.wiring = Wiring.of(settings, Wiring.Purpose.COMMISSIONING, clock, now);
      this.outputs = new BarredOutputs(wiring.outputs(), now);
    } catch (ConfigRefused | RuntimeException e) { // a line that is held or broken
      claim.close();
      throw e;
    }
  }

  /** Starts the threads that read probes. */
  public void start() {
    wiring.start();
  }

  /**
   * Looks at everything once and drives the outputs; to be called ten times a second while an
   * output is wanted.
   *
   * @param wanted the one output that is to be on, or none
   */
  public WiringView look(Optional<BarredOutputs.Output> wanted) {
    long now = clock.nanos();
    LineReadings lines = wiring.lines().read(now);
    BarredOutputs.Doing doing = outputs.step(wanted, lines, now);
    return new WiringView(lines, probes(now), found(now), doing);
  }

  private List<WiringView.Probe> probes(long now) {
    List<WiringView.Probe> all = new ArrayList<>();
    settings
        .fittedProbes()
        .forEach(
            (role, name) -> {
              if (settings.fitted(role)) {
                ProbeTrack track =
                    next(
                        placed.get(role),
                        wiring.probes().latest(role, now),
                        ProbePlaces.of(role, settings.limits()),
                        now);
                placed.put(role, track);
                all.add(new WiringView.Probe(role, name, track.reading()));
              }
            });
    return all;
  }

  private List<WiringView.Found> found(long now) {
    Map<String, RawReading> newest = wiring.oneWire().map(OneWireProbes::newest).orElse(Map.of());
    onBus.keySet().retainAll(newest.keySet());
    List<WiringView.Found> all = new ArrayList<>();
    newest.forEach(
        (name, raw) -> {
          Optional<RomId> id = RomId.ofFolder(name);
          Optional<ProbeRole> role = place(id);
          if (id.isPresent() && (role.isEmpty() || raw.kind() != RawReading.Kind.ABSENT)) {
            Limits limits = settings.limits();
            ProbeLimits bounds =
                role.map(r -> ProbePlaces.of(r, limits)).orElse(ProbePlaces.anywhere(limits));
            ProbeTrack track = next(onBus.get(name), raw, bounds, now);
            onBus.put(name, track);
            all.add(new WiringView.Found(id.get(), role, track.reading()));
          }
        });
    return all;
  }

  private Optional<ProbeRole> place(Optional<RomId> id) {
    return settings.probes().oneWire().entrySet().stream()
        .filter(e -> RomId.ofFolder(e.getValue()).equals(id))
        .map(Map.Entry::getKey)
        .findFirst();
  }

  private static ProbeTrack next(
      @Nullable ProbeTrack before, RawReading raw, ProbeLimits limits, long now) {
    return (before == null ? ProbeTrack.start(now) : before).next(raw, now, limits);
  }

  /** Every output off, then the ends of the threads; the folder is given back. */
  @Override
  public void close() {
    try {
      outputs.close();
    } finally {
      wiring.close();
      claim.close();
    }
  }
}
