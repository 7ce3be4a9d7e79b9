package trayward.controller.app;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import trayward.controller.keep.LearnedTray;
import trayward.controller.keep.UpkeepItem;
import trayward.controller.keep.UpkeepPlan;
import trayward.controller.quantity.Range;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;
import trayward.controller.safety.Limit;
import trayward.controller.safety.Limits;
import trayward.controller.scan.ScanSettings;
import trayward.controller.sim.PlantParameters;
import trayward.controller.sim.ProbeParameters;

/**
 * The tables that a configuration and a scenario have in common. Each range says what a tray in a
 * darkroom can be; the reason stands beside it. Stateless.
 */
final class TrayTables {

  /** From a film of liquid to the largest trays on a bench. */
  private static final Range LITRES = new Range(0.05, 20, "L");

  private static final Range AREA = new Range(0.001, 2, "m²");
  private static final Range CAPACITY = new Range(20, 50_000, "J/K");
  private static final Range CAPACITY_OR_NONE = new Range(0, 50_000, "J/K");
  private static final Range COUPLING = new Range(0.5, 500, "W/K");
  private static final Range LOSS = new Range(0, 100, "W/K");

  /** Above, no household circuit carries the heater beside the rest of a darkroom. */
  private static final Range WATTS = new Range(10, 2000, "W");

  private static final Range TEMPERATURE = new Range(0, 60, "°C");
  private static final Range FACTOR = new Range(0, 10, "");

  private TrayTables() {}

  /** The true tray of a simulation. */
  static PlantParameters plant(Section tray, Section room, FanTable fan) throws ConfigRefused {
    PlantParameters d = PlantParameters.REFERENCE;
    return new PlantParameters(
        tray.number("liquid_l", d.liquidL(), LITRES),
        tray.number("area_m2", d.areaM2(), AREA),
        tray.number("plate_j_per_k", d.plateJPerK(), CAPACITY),
        tray.number("plate_to_bath_w_per_k", d.plateToBathWPerK(), COUPLING),
        tray.number("bath_loss_w_per_k", d.bathLossWPerK(), LOSS),
        tray.number("plate_loss_w_per_k", d.plateLossWPerK(), LOSS),
        tray.number("heater_w", d.heaterW(), WATTS),
        tray.number("start_c", d.startC(), TEMPERATURE),
        tray.flag("covered", d.covered()),
        tray.number("evaporation_factor", d.evaporationFactor(), FACTOR),
        tray.number("wall_j_per_k", d.wallJPerK(), CAPACITY_OR_NONE),
        tray.number("wall_to_bath_w_per_k", d.wallToBathWPerK(), COUPLING),
        room.number("air_c", d.airC(), new Range(-10, 45, "°C")),
        room.number("relative_humidity", d.relativeHumidity(), new Range(0, 1, "")),
        room.number("draught_m_per_s", d.draughtMPerS(), new Range(0, 5, "m/s")),
        fan.flowM3PerH(),
        fan.rpm(),
        fan.spinUpS(),
        fan.spinDownS());
  }

  /**
   * What the controller believes of the tray: a {@code [model]} table where there is one, else what
   * is declared.
   *
   * @param declared heater power and liquid as declared; the rest where {@code whole}
   * @param whole whether all of the declared tray is a belief, not only watts and litres
   */
  static TrayModel model(Section model, PlantParameters declared, boolean whole)
      throws ConfigRefused {
    TrayModel d = TrayModel.REFERENCE;
    return new TrayModel(
        model.number("liquid_l", declared.liquidL(), LITRES),
        model.number("area_m2", whole ? declared.areaM2() : d.areaM2(), AREA),
        model.number("plate_j_per_k", whole ? declared.plateJPerK() : d.plateJPerK(), CAPACITY),
        model.number(
            "plate_to_bath_w_per_k",
            whole ? declared.plateToBathWPerK() : d.plateToBathWPerK(),
            COUPLING),
        model.number(
            "bath_loss_w_per_k", whole ? declared.bathLossWPerK() : d.bathLossWPerK(), LOSS),
        model.number(
            "plate_loss_w_per_k", whole ? declared.plateLossWPerK() : d.plateLossWPerK(), LOSS),
        model.number("heater_w", declared.heaterW(), WATTS),
        model.number(
            "evaporation_factor",
            whole ? declared.evaporationFactor() : d.evaporationFactor(),
            FACTOR));
  }

  /** Keys of {@code [model]} that the tray has and no regulator uses yet: read and checked. */
  static void modelRest(Section model) throws ConfigRefused {
    model.number("start_c", 20, TEMPERATURE);
    model.flag("covered", false);
    model.number("wall_j_per_k", 0, CAPACITY_OR_NONE);
    model.number("wall_to_bath_w_per_k", 6, COUPLING);
  }

  /** The room as believed: as declared. */
  static RoomModel roomModel(PlantParameters declared) {
    return new RoomModel(declared.airC(), declared.relativeHumidity(), declared.draughtMPerS());
  }

  /**
   * Reads the size of the room: the air planner's, checked here so that a scenario may carry it.
   */
  static void roomVolume(Section room) throws ConfigRefused {
    room.number("volume_m3", 15, new Range(1, 1000, "m³"));
  }

  static ProbeParameters probe(Section probe, ProbeParameters d, boolean optional)
      throws ConfigRefused {
    ProbeParameters read =
        new ProbeParameters(
            optional ? probe.flag("present", d.present()) : d.present(),
            probe.number("lag_s", d.lagS(), new Range(0, 120, "s")),
            probe.number("noise_k", d.noiseK(), new Range(0, 2, "K")),
            probe.number("offset_k", d.offsetK(), new Range(-10, 10, "K")));
    probe.done();
    return read;
  }

  /** Every limit, from its own row. */
  static Limits limits(Section section) throws ConfigRefused {
    Map<Limit, Double> changed = new EnumMap<>(Limit.class);
    for (Limit limit : Limit.values()) {
      changed.put(limit, section.number(limit.key(), limit.standard(), limit.range()));
    }
    section.done();
    Limits limits = new Limits(changed);
    if (!limits.settable()) {
      throw section.refuse(
          "set_min_c",
          Range.plain(limits.get(Limit.SET_MIN_C)),
          "at most set_max_c, and 2 K under bath_hard_c");
    }
    return limits;
  }

  /** Intervals of maintenance (SR-23). */
  static UpkeepPlan upkeep(Section section) throws ConfigRefused {
    Map<UpkeepItem, Double> days = new EnumMap<>(UpkeepItem.class);
    for (UpkeepItem item : UpkeepItem.values()) {
      days.put(item, section.number(item.key(), item.standardDays(), item.range()));
    }
    double hours =
        section.number(
            UpkeepItem.CARTRIDGE_HOURS_KEY,
            UpkeepItem.CARTRIDGE_HOURS,
            UpkeepItem.CARTRIDGE_HOURS_RANGE);
    section.done();
    return new UpkeepPlan(days, hours);
  }

  /** The control table. */
  static ControlTable control(Section control, Limits limits) throws ConfigRefused {
    Range set = limits.setRange();
    ControlTable table =
        new ControlTable(
            control.number("set_c", Math.max(set.min(), Math.min(40, set.max())), set),
            control.oneOf("regulator", "auto", List.of("auto", "cascade", "pid")),
            control.number("cycle_s", 5, new Range(1, 60, "s")),
            control.number("min_pulse_s", 0.5, new Range(0.1, 5, "s")),
            control.flag("attended", true),
            control.flag("host_required", false));
    if (table.minPulseS() > table.cycleS() / 2) {
      throw control.refuse(
          "min_pulse_s", Range.plain(table.minPulseS()), "at most half of cycle_s");
    }
    control.done();
    return table;
  }

  /** What a scan needs to know, from the tables a configuration and a scenario share. */
  static ScanSettings scanSettings(
      Limits limits,
      FanTable fan,
      ControlTable control,
      boolean secondBathFitted,
      boolean plateFitted,
      TrayModel model,
      RoomModel room,
      TrayModel believed) {
    return new ScanSettings(
        limits,
        fan.rpm(),
        fan.spinDownS(),
        fan.airflowSwitch(),
        fan.tachometer(),
        secondBathFitted,
        plateFitted,
        control.setC(),
        control.cycleS(),
        control.minPulseS(),
        control.hostRequired(),
        model,
        room,
        believed);
  }

  /** What the tray is called: what is learned of it is remembered by that. */
  static String trayName(Section tray) throws ConfigRefused {
    String name = tray.text("name", "tray");
    if (!LearnedTray.named(name)) {
      throw tray.refuse("name", "'" + name + "'", LearnedTray.NAME_WORDS);
    }
    return name;
  }
}
