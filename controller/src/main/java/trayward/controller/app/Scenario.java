package trayward.controller.app;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import trayward.controller.keep.LearnedTray;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;
import trayward.controller.safety.Limits;
import trayward.controller.sim.PlantParameters;
import trayward.controller.sim.ProbeParameters;

/**
 * A checked scenario of a rehearsal. Immutable.
 *
 * @param name what it is called
 * @param seed seed of all noise
 * @param durationS length, s
 * @param plant the true tray
 * @param bathProbe bath probe
 * @param secondProbe second bath probe
 * @param plateProbe plate probe
 * @param model what the controller believes of the tray
 * @param room what it believes of the room
 * @param fan the fan
 * @param control set temperature and relay
 * @param limits the interlock's limits
 * @param entries what happens, in order of time; equal times in the order of the file
 * @param trayName name of the tray
 * @param learned what an earlier rehearsal learned of it
 */
public record Scenario(
    String name,
    long seed,
    double durationS,
    PlantParameters plant,
    ProbeParameters bathProbe,
    ProbeParameters secondProbe,
    ProbeParameters plateProbe,
    TrayModel model,
    RoomModel room,
    FanTable fan,
    ControlTable control,
    Limits limits,
    List<ScenarioEntry> entries,
    String trayName,
    Optional<LearnedTray> learned) {

  /** A rehearsal longer than a week is a soak test, and no file for a person. */
  private static final int MAX_S = 7 * 24 * 3600;

  /** Entries beyond this were not written by a person. */
  private static final int MAX_ENTRIES = 10_000;

  /** Reads and checks a scenario file. */
  public static Scenario read(Path file) throws ConfigRefused {
    Path base = file.toAbsolutePath().getParent();
    String text = TomlText.text(file);
    return read(TomlText.parse(file.toString(), text), order(text), base == null ? file : base);
  }

  /** The same from text; {@code file} is the name for messages. */
  public static Scenario parse(String file, String text) throws ConfigRefused {
    return read(TomlText.parse(file, text), order(text), Path.of(""));
  }

  private static Scenario read(Section top, List<String> order, Path base) throws ConfigRefused {
    String name = top.text("name", "unnamed");
    long seed = top.whole("seed", 1L, 0, Long.MAX_VALUE);
    double duration =
        top.number("duration_s", 3600, new trayward.controller.quantity.Range(1, MAX_S, "s"));
    FanTable fan = FanTable.read(top.table("fan"));
    Section tray = top.table("tray");
    Section room = top.table("room");
    PlantParameters plant = TrayTables.plant(tray, room, fan);
    TrayTables.roomVolume(room);
    String trayName = TrayTables.trayName(tray);
    tray.done();
    room.done();
    Section model = top.table("model");
    TrayModel believed = TrayTables.model(model, plant, false);
    TrayTables.modelRest(model);
    model.done();
    Optional<LearnedTray> learned =
        learned(top.table("learned"), base, trayName, believed.areaM2());
    Limits limits = TrayTables.limits(top.table("limits"));
    ProbeParameters plate = TrayTables.probe(top.table("plate_probe"), ProbeParameters.PLATE, true);
    Scenario scenario =
        new Scenario(
            name,
            seed,
            duration,
            plant,
            TrayTables.probe(top.table("bath_probe"), ProbeParameters.BATH, false),
            TrayTables.probe(top.table("second_bath_probe"), ProbeParameters.NO_SECOND, true),
            plate,
            believed,
            TrayTables.roomModel(plant),
            fan,
            TrayTables.control(top.table("control"), limits),
            limits,
            entries(top, duration, order),
            trayName,
            learned);
    top.done();
    Settings.refuseBlindHeater(tray, plate.present(), plant.heaterW(), limits);
    return scenario;
  }

  /** What an earlier rehearsal learned, its folder seen from the scenario's. */
  private static Optional<LearnedTray> learned(
      Section table, Path base, String trayName, double areaM2) throws ConfigRefused {
    if (!table.present()) {
      return Optional.empty();
    }
    String from = table.text("from");
    table.done();
    try {
      return Optional.of(LearnedToml.read(base.resolve(from), trayName, areaM2));
    } catch (InvalidPathException e) {
      throw table.refuse("from", "'" + from + "'", "the path of a folder");
    }
  }

  private static final Pattern HEADER =
      Pattern.compile("^\\s*\\[\\[\\s*\"?(at|fault)\"?\\s*]]", Pattern.MULTILINE);

  /** In which order the tables stand in the file: the TOML tree keeps the two arrays apart. */
  private static List<String> order(String text) {
    return HEADER.matcher(text).results().map(found -> found.group(1)).toList();
  }

  private static List<ScenarioEntry> entries(Section top, double durationS, List<String> order)
      throws ConfigRefused {
    Iterator<Section> ats = top.tables("at", MAX_ENTRIES).iterator();
    Iterator<Section> faults = top.tables("fault", MAX_ENTRIES).iterator();
    List<ScenarioEntry> entries = new ArrayList<>();
    for (String kind : order) {
      if (kind.equals("at") && ats.hasNext()) {
        entries.add(ScenarioEntry.action(ats.next(), durationS));
      } else if (kind.equals("fault") && faults.hasNext()) {
        entries.addAll(ScenarioEntry.fault(faults.next(), durationS));
      }
    }
    // Tables written in some other way, such as inline, come after those with a header.
    while (ats.hasNext()) {
      entries.add(ScenarioEntry.action(ats.next(), durationS));
    }
    while (faults.hasNext()) {
      entries.addAll(ScenarioEntry.fault(faults.next(), durationS));
    }
    entries.sort(Comparator.comparingDouble(ScenarioEntry::atS)); // stable
    return List.copyOf(entries);
  }
}
