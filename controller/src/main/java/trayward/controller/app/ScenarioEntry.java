package trayward.controller.app;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import trayward.controller.quantity.Range;
import trayward.controller.safety.LevelTold;
import trayward.controller.safety.Request;
import trayward.controller.sim.SimFault;

/** Something that happens at a time of a scenario. */
public sealed interface ScenarioEntry {

  /** When, s from power-up. */
  double atS();

  /** Its name in the scenario file. */
  String word();

  /** Whether the bath's course is disturbed or redirected by it. */
  default boolean disturbs() {
    return true;
  }

  /** A person asks the interlock for something. */
  record Ask(double atS, Request request) implements ScenarioEntry {
    @Override
    public String word() {
      return request.name().toLowerCase(Locale.ROOT);
    }

    @Override
    public boolean disturbs() {
      return request == Request.START || request == Request.STOP || request == Request.RESET;
    }
  }

  /** A new set temperature, °C. */
  record SetTemperature(double atS, double celsius) implements ScenarioEntry {
    @Override
    public String word() {
      return "set-temperature";
    }
  }

  /** The tray is covered or uncovered. */
  record Cover(double atS, boolean on) implements ScenarioEntry {
    @Override
    public String word() {
      return on ? "cover" : "uncover";
    }
  }

  /** Liquid is poured in; {@code told} where the person also says so to the controller. */
  record Pour(double atS, double litres, double celsius, boolean told) implements ScenarioEntry {
    @Override
    public String word() {
      return "pour";
    }
  }

  /** A person looked at the tray and says how much is in it (SR-28). */
  record ConfirmLevel(double atS, LevelTold told) implements ScenarioEntry {
    @Override
    public String word() {
      return "confirm-level";
    }

    @Override
    public boolean disturbs() {
      return false;
    }
  }

  /** A cold sheet is laid in. */
  record Sheet(double atS, double heatCapacityJPerK, double celsius) implements ScenarioEntry {
    @Override
    public String word() {
      return "sheet";
    }
  }

  /** A moment of a print is marked. */
  record Mark(double atS, String kind) implements ScenarioEntry {
    @Override
    public String word() {
      return "mark";
    }

    @Override
    public boolean disturbs() {
      return false;
    }
  }

  /** A fault of the tray begins or ends; {@code value} is its size where it has one. */
  record TrayFault(double atS, SimFault kind, boolean begins, double value)
      implements ScenarioEntry {
    @Override
    public String word() {
      return kind.words();
    }
  }

  /** The host falls silent, or is back. */
  record HostLost(double atS, boolean begins) implements ScenarioEntry {
    @Override
    public String word() {
      return "host-lost";
    }
  }

  /** The program stalls. */
  record ScanStall(double atS, double seconds) implements ScenarioEntry {
    @Override
    public String word() {
      return "scan-stall";
    }
  }

  /** The wall clock jumps. */
  record WallClockStep(double atS, double seconds) implements ScenarioEntry {
    @Override
    public String word() {
      return "wall-clock-step";
    }

    @Override
    public boolean disturbs() {
      return false;
    }
  }

  /** One {@code [[at]]} table. */
  static ScenarioEntry action(Section at, double durationS) throws ConfigRefused {
    double t = at.number("t_s", new Range(0, durationS, "s"));
    String word =
        at.oneOf(
            "do",
            List.of(
                "start",
                "stop",
                "acknowledge",
                "reset",
                "presence",
                "set-temperature",
                "cover",
                "uncover",
                "pour",
                "sheet",
                "mark",
                "confirm-level"));
    Range celsius = new Range(0, 90, "°C");
    ScenarioEntry entry =
        switch (word) {
          case "start" -> new Ask(t, Request.START);
          case "stop" -> new Ask(t, Request.STOP);
          case "acknowledge" -> new Ask(t, Request.ACKNOWLEDGE);
          case "reset" -> new Ask(t, Request.RESET);
          case "presence" -> new Ask(t, Request.PRESENCE);
          case "set-temperature" -> new SetTemperature(t, at.number("celsius", celsius));
          case "cover" -> new Cover(t, true);
          case "uncover" -> new Cover(t, false);
          case "pour" ->
              new Pour(
                  t,
                  at.number("litres", LevelTold.POURED_L),
                  at.number("temp_c", 20, celsius),
                  at.flag("told", true));
          case "confirm-level" -> new ConfirmLevel(t, level(at));
          case "sheet" ->
              new Sheet(
                  t,
                  at.number("heat_capacity_j_per_k", 210, new Range(1, 20_000, "J/K")),
                  at.number("temp_c", 15, celsius));
          default -> new Mark(t, at.oneOf("kind", List.of("in", "emergence", "pull")));
        };
    at.done();
    return entry;
  }

  private static LevelTold level(Section at) throws ConfigRefused {
    return at.has("litres")
        ? new LevelTold.Holds(at.number("litres", LevelTold.LEVEL_L))
        : new LevelTold.AsSaid();
  }

  /** One {@code [[fault]]} table: its beginning, and its end where it has one. */
  static List<ScenarioEntry> fault(Section fault, double durationS) throws ConfigRefused {
    double t = fault.number("t_s", new Range(0, durationS, "s"));
    Stream<String> ofTray = Arrays.stream(SimFault.values()).map(SimFault::words);
    List<String> words =
        Stream.concat(ofTray, Stream.of("host-lost", "scan-stall", "wall-clock-step")).toList();
    String word = fault.oneOf("kind", words);
    Range lasting = new Range(0.1, 7 * 24 * 3600, "s");
    boolean mends = fault.has("duration_s") || word.equals("power-loss");
    double end = mends ? t + fault.number("duration_s", lasting) : Double.NaN;
    List<ScenarioEntry> entries = new ArrayList<>();
    switch (word) {
      case "host-lost" -> {
        entries.add(new HostLost(t, true));
        if (mends) {
          entries.add(new HostLost(end, false));
        }
      }
      case "scan-stall" ->
          entries.add(new ScanStall(t, fault.number("seconds", new Range(0.1, 3600, "s"))));
      case "wall-clock-step" ->
          entries.add(new WallClockStep(t, fault.number("seconds", new Range(-1e9, 1e9, "s"))));
      default -> {
        SimFault kind = kindOf(word);
        double value = size(fault, kind);
        entries.add(new TrayFault(t, kind, true, value));
        if (mends) {
          entries.add(new TrayFault(end, kind, false, value));
        }
      }
    }
    fault.done();
    return entries;
  }

  private static SimFault kindOf(String word) {
    return Arrays.stream(SimFault.values())
        .filter(kind -> kind.words().equals(word))
        .findFirst()
        .orElseThrow();
  }

  private static double size(Section fault, SimFault kind) throws ConfigRefused {
    return switch (kind.words()) {
      case "fan-slows" -> fault.number("rpm", new Range(0, 20_000, "1/min"));
      case "probe-offset", "second-probe-offset", "plate-probe-offset" ->
          fault.number("kelvin", new Range(-200, 200, "K"));
      default -> 0;
    };
  }
}
