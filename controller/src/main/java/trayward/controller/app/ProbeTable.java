package trayward.controller.app;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import trayward.controller.onewire.RomId;
import trayward.controller.port.ProbeRole;
import trayward.controller.transmitter.Channel;
import trayward.controller.transmitter.RegisterType;

/**
 * The {@code [probes]} and {@code [transmitter]} tables: which temperature comes from where.
 * Immutable.
 *
 * @param oneWire folder name of each 1-Wire probe
 * @param transmitter the transmitters' line, where a probe is on one
 */
public record ProbeTable(Map<ProbeRole, String> oneWire, Optional<TransmitterTable> transmitter) {

  /** The word that stands in the place of a ROM. */
  private static final String TRANSMITTER = "transmitter";

  /**
   * Reads both tables.
   *
   * @param bathNeeded whether a configuration without a bath probe is refused
   */
  static ProbeTable read(Section probes, Section line, boolean bathNeeded) throws ConfigRefused {
    Map<ProbeRole, String> roms = new EnumMap<>(ProbeRole.class);
    Map<ProbeRole, RomId> ids = new EnumMap<>(ProbeRole.class);
    Map<ProbeRole, Channel> channels = new EnumMap<>(ProbeRole.class);
    for (ProbeRole role : ProbeRole.values()) {
      String key = role.word();
      if (!probes.has(key) && !(bathNeeded && role == ProbeRole.BATH)) {
        probes.text(key, "");
        continue;
      }
      String text = probes.text(key);
      if (text.equals(TRANSMITTER)) {
        channels.put(role, TransmitterTable.channel(line, key));
        continue;
      }
      RomId id = rom(probes, key, text);
      if (ids.containsValue(id)) {
        throw probes.refuse(key, "'" + text + "'", "a probe not used for another place");
      }
      ids.put(role, id);
      // A folder's name stays as typed, so that a bench rig may write it in capitals.
      roms.put(role, RomId.ofFolder(text).isPresent() ? text : id.folder());
    }
    probes.done();
    Optional<TransmitterTable> transmitter =
        channels.isEmpty() ? Optional.empty() : Optional.of(TransmitterTable.read(line, channels));
    line.done();
    return new ProbeTable(Map.copyOf(roms), transmitter);
  }

  private static RomId rom(Section probes, String key, String text) throws ConfigRefused {
    RomId.Typed typed = RomId.typed(text);
    if (typed instanceof RomId.Typed.Rom rom && rom.id().family() == RomId.THERMOMETER) {
      return rom.id();
    }
    String accepted =
        "28- and twelve hexadecimal digits, all sixteen digits of a ROM that begins with 28, or '"
            + TRANSMITTER
            + "'";
    throw typed instanceof RomId.Typed.WrongCheckSum wrong
        ? probes.refuse(key, "'" + text + "' (" + wrong.words() + ")", accepted)
        : probes.refuse(key, "'" + text + "'", accepted);
  }

  /** Whether a probe is configured for a place. */
  public boolean has(ProbeRole role) {
    return names().containsKey(role);
  }

  /** What tells the probe of each place from another one. */
  public Map<ProbeRole, String> names() {
    Map<ProbeRole, String> names = new EnumMap<>(ProbeRole.class);
    names.putAll(oneWire);
    transmitter.ifPresent(
        table -> table.channels().forEach((role, channel) -> names.put(role, channel.name())));
    return names;
  }

  /** Words for how a number lies in registers. */
  static List<String> types() {
    return java.util.Arrays.stream(RegisterType.values()).map(RegisterType::word).toList();
  }
}
