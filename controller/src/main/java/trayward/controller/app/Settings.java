package trayward.controller.app;

import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import trayward.controller.gpio.PiWiring;
import trayward.controller.keep.UpkeepPlan;
import trayward.controller.port.ProbeRole;
import trayward.controller.quantity.Range;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;
import trayward.controller.safety.Limit;
import trayward.controller.safety.Limits;
import trayward.controller.sim.PlantParameters;
import trayward.controller.sim.ProbeParameters;

/**
 * A checked configuration of {@code run}. Immutable.
 *
 * @param io where inputs and outputs are
 * @param probes which temperature comes from where; the simulated tray has probes of its own
 * @param plant the true tray of the simulation
 * @param bathProbe simulated bath probe
 * @param secondProbe simulated second bath probe
 * @param plateProbe simulated plate probe
 * @param model what is believed of the tray
 * @param room what is believed of the room
 * @param fan the fan and its proofs
 * @param control set temperature and relay
 * @param limits the interlock's limits
 * @param upkeep intervals of maintenance
 * @param server where the page is served, and to whom
 * @param logFolder folder of the log and of the controller's record
 * @param trayName name of the tray, by which what is learned of it is remembered
 * @param link the line between controller and host
 * @param watchdog who outside of the program is told of complete scans
 * @param book what the bath book reckons with
 */
public record Settings(
    Io io,
    ProbeTable probes,
    PlantParameters plant,
    ProbeParameters bathProbe,
    ProbeParameters secondProbe,
    ProbeParameters plateProbe,
    TrayModel model,
    RoomModel room,
    FanTable fan,
    ControlTable control,
    Limits limits,
    UpkeepPlan upkeep,
    ServerTable server,
    Path logFolder,
    String trayName,
    LinkTable link,
    WatchdogTable watchdog,
    BookTable book) {

  /** Where inputs and outputs are. */
  public sealed interface Io {
    /** The simulated tray. */
    record Sim(long seed) implements Io {}

    /** The bench rig: line files in one folder, probe files below another. */
    record Files(Path folder, Path onewireRoot) implements Io {}

    /** A Pi: its own lines, probe files of its kernel. */
    record Pi(Path onewireRoot, PiWiring wiring) implements Io {}

    /** Whether there is a tray beyond the program. */
    default boolean outside() {
      return !(this instanceof Sim);
    }
  }

  /** Where the kernel shows the probes of its bus. */
  private static final String KERNEL_PROBES = "/sys/bus/w1/devices";

  private static final String SIMULATED_PROBE = "simulated";

  /** The embedded default: simulated tray, page on loopback, data in the working folder. */
  public static Settings standard() {
    try {
      return read(TomlText.parse("(defaults)", ""), true);
    } catch (ConfigRefused e) {
      throw new IllegalStateException(e);
    }
  }

  /** Reads and checks a configuration file (SR-19). */
  public static Settings read(Path file) throws ConfigRefused {
    return read(TomlText.read(file), true);
  }

  /**
   * The same for an installation that is still being wired: a place without a probe is not refused,
   * nor is what would need one, since nothing is heated with it.
   */
  public static Settings readUnfinished(Path file) throws ConfigRefused {
    return read(TomlText.read(file), false);
  }

  private static Settings read(Section top, boolean finished) throws ConfigRefused {
    Section ioTable = top.table("io");
    Io io = io(ioTable, PiTable.read(top.table("lines")));
    // The simulated tray has probes of its own; the names are read, so that a file may serve both.
    boolean bathNeeded = finished && io.outside();
    ProbeTable probes = ProbeTable.read(top.table("probes"), top.table("transmitter"), bathNeeded);
    FanTable fan = FanTable.read(top.table("fan"));
    Section tray = top.table("tray");
    Section room = top.table("room");
    PlantParameters plant = TrayTables.plant(tray, room, fan);
    TrayTables.roomVolume(room);
    String trayName = TrayTables.trayName(tray);
    tray.done();
    room.done();
    Section model = top.table("model");
    TrayModel believed = TrayTables.model(model, plant, io.outside());
    TrayTables.modelRest(model);
    model.done();
    ProbeParameters plateProbe =
        TrayTables.probe(top.table("plate_probe"), ProbeParameters.PLATE, true);
    ProbeParameters second =
        TrayTables.probe(top.table("second_bath_probe"), ProbeParameters.NO_SECOND, true);
    Limits limits = TrayTables.limits(top.table("limits"));
    Settings settings =
        new Settings(
            io,
            probes,
            plant,
            TrayTables.probe(top.table("bath_probe"), ProbeParameters.BATH, false),
            second,
            plateProbe,
            believed,
            TrayTables.roomModel(plant),
            fan,
            TrayTables.control(top.table("control"), limits),
            limits,
            TrayTables.upkeep(top.table("upkeep")),
            ServerTable.read(top.table("server")),
            logFolder(top.table("log")),
            trayName,
            LinkTable.read(top.table("link")),
            WatchdogTable.read(top.table("watchdog")),
            BookTable.read(top.table("book")));
    top.done();
    if (finished) {
      refuseBlindHeater(tray, settings.plateFitted(), plant.heaterW(), limits);
      refuseBlindHeater(model, settings.plateFitted(), believed.heaterW(), limits);
    }
    return settings;
  }

  /** SR-07: without a plate probe a strong heater could run away unseen. */
  static void refuseBlindHeater(Section table, boolean plateFitted, double heaterW, Limits limits)
      throws ConfigRefused {
    double most = limits.get(Limit.PLATE_BLIND_W);
    if (!plateFitted && heaterW > most) {
      throw table.refuse(
          "heater_w",
          Range.plain(heaterW),
          "at most " + Range.plain(most) + " W where no plate probe is fitted (SR-07)");
    }
  }

  /** The same with log and record in another folder. */
  public Settings inFolder(Path folder) {
    return new Settings(
        io,
        probes,
        plant,
        bathProbe,
        secondProbe,
        plateProbe,
        model,
        room,
        fan,
        control,
        limits,
        upkeep,
        server,
        folder,
        trayName,
        link,
        watchdog,
        book);
  }

  /** Whether a plate probe is fitted. */
  public boolean plateFitted() {
    return io.outside() ? probes.has(ProbeRole.PLATE) : plateProbe.present();
  }

  /** Whether a second bath probe is fitted. */
  public boolean secondBathFitted() {
    return io.outside() ? probes.has(ProbeRole.SECOND_BATH) : secondProbe.present();
  }

  /** Whether a probe is fitted in a place; a bath probe always is, in the simulation. */
  public boolean fitted(ProbeRole role) {
    return switch (role) {
      case BATH -> !io.outside() || probes.has(ProbeRole.BATH);
      case SECOND_BATH -> secondBathFitted();
      case PLATE -> plateFitted();
    };
  }

  /**
   * What tells the probe in each place from another one: its ROM or its place on a line. The
   * simulated tray's have none; their name keeps what was tried in a simulation from a real probe.
   */
  public Map<ProbeRole, String> fittedProbes() {
    if (io.outside()) {
      return probes.names();
    }
    Map<ProbeRole, String> names = new EnumMap<>(ProbeRole.class);
    for (ProbeRole role : ProbeRole.values()) {
      names.put(role, SIMULATED_PROBE);
    }
    return names;
  }

  private static Io io(Section table, PiWiring wiring) throws ConfigRefused {
    String kind = table.oneOf("kind", "sim", List.of("sim", "files", "pi"));
    Io io =
        switch (kind) {
          case "files" -> new Io.Files(folder(table, "folder"), folder(table, "onewire_root"));
          case "pi" -> new Io.Pi(folder(table, "onewire_root", KERNEL_PROBES), wiring);
          default -> new Io.Sim(table.whole("seed", 1L, 0, Long.MAX_VALUE));
        };
    table.done();
    return io;
  }

  private static Path folder(Section table, String key) throws ConfigRefused {
    if (!table.has(key)) {
      throw table.refuse(key, "nothing", "the path of a folder that exists");
    }
    return folder(table, key, "");
  }

  private static Path folder(Section table, String key, String otherwise) throws ConfigRefused {
    String text = table.text(key, otherwise);
    try {
      Path folder = Path.of(text);
      if (java.nio.file.Files.isDirectory(folder)) {
        return folder;
      }
    } catch (java.nio.file.InvalidPathException e) {
      throw table.refuse(key, "'" + text + "'", "the path of a folder");
    }
    throw table.refuse(key, "'" + text + "'", "the path of a folder that exists");
  }

  private static Path logFolder(Section table) throws ConfigRefused {
    String text = table.text("folder", "trayward-data");
    table.done();
    try {
      return Path.of(text);
    } catch (java.nio.file.InvalidPathException e) {
      throw table.refuse("folder", "'" + text + "'", "the path of a folder");
    }
  }
}
