package trayward.controller.app;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
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
    List<ScenarioEntry> entries) {

  /** A rehearsal longer than a week is a soak test, and no file for a person. */
  private static final int MAX_S = 7 * 24 * 3600;

  /** Entries beyond this were not written by a person. */
  private static final int MAX_ENTRIES = 10_000;

  /** Reads and checks a scenario file. */
  public static Scenario read(Path file) throws ConfigRefused {
    return read(TomlText.read(file));
  }

  /** The same from text; {@code file} is the name for messages. */
  static Scenario parse(String file, String text) throws ConfigRefused {
    return read(TomlText.parse(file, text));
  }

  private static Scenario read(Section top) throws ConfigRefused {
    String name = top.text("name", "unnamed");
    long seed = top.whole("seed", 1L, 0, Long.MAX_VALUE);
    double duration =
        top.number("duration_s", 3600, new trayward.controller.quantity.Range(1, MAX_S, "s"));
    FanTable fan = FanTable.read(top.table("fan"));
    Section tray = top.table("tray");
    Section room = top.table("room");
    PlantParameters plant = TrayTables.plant(tray, room, fan);
    TrayTables.roomVolume(room);
    tray.done();
    room.done();
    Section model = top.table("model");
    TrayModel believed = TrayTables.model(model, plant, false);
    TrayTables.modelRest(model);
    model.done();
    Section learned = top.table("learned");
    if (learned.present()) {
      throw top.refuse("learned", "a table", "nothing yet: this version learns nothing");
    }
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
            entries(top, duration));
    top.done();
    Settings.refuseBlindHeater(tray, plate.present(), plant.heaterW(), limits);
    return scenario;
  }

  private static List<ScenarioEntry> entries(Section top, double durationS) throws ConfigRefused {
    List<ScenarioEntry> entries = new ArrayList<>();
    for (Section at : top.tables("at", MAX_ENTRIES)) {
      entries.add(ScenarioEntry.action(at, durationS));
    }
    for (Section fault : top.tables("fault", MAX_ENTRIES)) {
      entries.addAll(ScenarioEntry.fault(fault, durationS));
    }
    entries.sort(java.util.Comparator.comparingDouble(ScenarioEntry::atS)); // stable
    return List.copyOf(entries);
  }
}
