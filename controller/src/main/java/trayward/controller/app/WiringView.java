package trayward.controller.app;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import trayward.controller.onewire.RomId;
import trayward.controller.port.LineReadings;
import trayward.controller.port.ProbeRole;
import trayward.controller.scan.BarredOutputs;
import trayward.controller.sense.Reading;

/**
 * What one look at the wiring found. Immutable.
 *
 * @param lines all digital inputs
 * @param probes each configured probe, in the order of the places
 * @param found each probe on the bus, in order
 * @param doing what became of the output that was wanted
 */
public record WiringView(
    LineReadings lines, List<Probe> probes, List<Found> found, BarredOutputs.Doing doing) {

  /**
   * A configured probe.
   *
   * @param role its place
   * @param name its ROM, or its place on a transmitters' line
   * @param reading what it says, as read, without its calibration
   */
  public record Probe(ProbeRole role, String name, Reading reading) {}

  /**
   * A probe on the bus.
   *
   * @param id its ROM
   * @param role the place it is configured for
   * @param reading what it says, as read
   */
  public record Found(RomId id, Optional<ProbeRole> role, Reading reading) {}

  /** The temperature of each probe that gives a valid one, by its name. */
  public Map<String, Double> temperatures() {
    Map<String, Double> celsius = new TreeMap<>();
    for (Probe probe : probes) {
      if (probe.reading().valid()) {
        celsius.put(probe.name(), probe.reading().celsius());
      }
    }
    for (Found each : found) {
      if (each.reading().valid() && each.role().isEmpty()) {
        celsius.put(each.id().folder(), each.reading().celsius());
      }
    }
    return celsius;
  }
}
